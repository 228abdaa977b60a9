"""Whatever is typed is kept as typed, by whomever, and never raises."""

from dataclasses import replace

import pytest
from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st

from core.model import LineState
from core.store import Store
from tests.support.ledger_desk import DANA, ELENA, LOG, MATEO, STAFF, Desk, desk_on, edited, said

WORDS = (
    "62p", "11cb", "4.1ip", "vs", "Summit", "elbow", "hurts", "5/10", "Mateo", "everyone",
    "except", "no", "pain", "and", "yesterday", "pen", "catch", "30", "-", "½", "0", "99999999999",
    "::", "<@UMATEO>", "<!channel>", "&", "*", "`", "?", "rest", "who", "can", "pitch", "Sat", "\n",
    "\u202e", "👍", "(", ")", "%", "of", "to", "5/2", "31/31", "24:70", "mañana", "dolor", "codo",
)  # fmt: skip
lines = st.lists(st.sampled_from(WORDS) | st.text(max_size=6), max_size=14).map(" ".join)
any_text = lines | st.text(max_size=40)
one_database = settings(
    max_examples=50, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)


@one_database
@given(any_text, st.sampled_from([MATEO, ELENA, DANA, "USTRANGER"]), st.sampled_from([LOG, STAFF]))
@example("elbow hurts <@UNOBODY> everyone except", DANA, STAFF)
def test_any_line_is_kept_as_typed(store: Store, text: str, author: str, channel: str) -> None:
    with desk_on(store) as desk:
        desk.hear(said(text, author=author, channel=channel))

        assert (desk.line.text, desk.line.author_slack_id) == (text, author)
        assert desk.line.state != LineState.NOT_READ


@one_database
@given(any_text)
def test_any_direct_message_is_kept_as_typed(store: Store, text: str) -> None:
    with desk_on(store) as desk:
        desk.hear(replace(said(text, channel="DMATEO"), direct=True))

        assert desk.line.text == text


@one_database
@given(any_text, any_text)
def test_any_edit_is_kept_as_typed(store: Store, first: str, second: str) -> None:
    with desk_on(store) as desk:
        desk.hear(said(first), edited(second, 5))

        assert desk.line.text == second


@pytest.mark.parametrize("name", ["...", "\u200b", "👍", "-"])
def test_a_pitcher_of_an_odd_name_keeps_no_line_from_the_record(desk: Desk, name: str) -> None:
    desk.pitcher.name = name

    desk.hear(said("Mateo 62p 11cb vs Summit", author=DANA, channel=STAFF))

    assert desk.line.state == LineState.ASKED
