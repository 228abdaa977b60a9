"""A season's worth of trouble, and not one forbidden word in anything that was sent."""

import json
from datetime import timedelta

from tests.support.club import Club
from tests.support.forbidden import faults

STAFF_LINES = (
    "limit Mateo 45",
    "set mix 15% for Mateo",
    "thresholds",
    "alerts",
    "who can throw saturday",
    "can Mateo throw saturday",
    "can Mateo play catch today",
    "how many did Mateo throw this week",
    "how many innings has Mateo this year",
    "if Mateo throws 40 sat when is he back",
    "how many can Mateo throw thu and still go sat",
    "plan sat 9am 80, sat 2pm 70",
)
LINES = (
    ("mateo", "62p 18cb vs Summit, elbow pain 2/10"),
    ("mateo", "arm tired, catch 40 throws 24 spins 80%"),
    ("carmen", "Leo shoulder sore after 45 pitches vs Summit"),
    ("priya", "Leo 80p 40cb, Mateo 30p 3cb"),
    ("mateo", "elbow pain 5/10, numb fingers, don't tell coach"),
    ("mateo", "my arm went numb"),
    ("mateo", "catch 30 throws"),
    ("elena", "no pain today"),
)


def test_nothing_that_leaves_says_what_must_not_be_said(club: Club) -> None:
    for who, text in LINES:
        club.say(who, text)
        club.clock.advance(timedelta(days=1))
        for asked in STAFF_LINES:
            club.say("dana", asked, club.staff)
    club.say("dana", "cleared Mateo by Dr. Reyes yesterday, no games until 6/1", club.staff)
    for asked in STAFF_LINES:
        club.say("dana", asked, club.staff)
    club.tell_bot("mateo", "when can I pitch")
    club.tell_bot("elena", "when can he pitch")

    texts = {
        text
        for call in club.ws.calls.all()
        if (text := json.loads(json.dumps(call.args)).get("text"))
    }
    assert len(texts) > 60
    assert [fault for text in sorted(texts) for fault in faults(text)] == []


def test_pain_and_holds_stay_out_of_the_log_channel_and_of_other_families(club: Club) -> None:
    for who, text in LINES:
        club.say(who, text)
        club.clock.advance(timedelta(days=1))

    assert club.in_log_channel() == []
    others = [*club.heard("joan"), *club.heard("sam_o"), *club.heard("priya")]
    assert not any("pain" in one or "hold" in one for one in others)
    assert not any("Mateo" in one for one in club.heard("carmen"))
    assert not any("Leo" in one for one in [*club.heard("elena"), *club.heard("mateo")])
