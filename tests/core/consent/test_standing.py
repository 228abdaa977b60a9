"""Whether consent stands: any guardian's yes is enough, and any guardian's no is stronger."""

from datetime import date, timedelta

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from sqlmodel import select

from core.consent.saying import record_on_paper, say
from core.consent.standing import consent_of, may_consent
from core.ledger.by_hand import ByHandError, Hand
from core.ledger.crew import find_person
from core.model import ConsentAct, ConsentEvent, GuardianLink, Person, key
from core.store import Store
from tests.support.ledger_desk import DANA, ELENA, MATEO, NOW, WORKSPACE, Desk, desk_on

FATHER = "UFATHER"
SAID = st.tuples(st.sampled_from([ELENA, FATHER]), st.sampled_from(ConsentAct))


def with_father(desk: Desk) -> Desk:
    father = Person(workspace_id=WORKSPACE, slack_id=FATHER, name="Iker Cruz")
    desk.session.add(father)
    desk.session.flush()
    link = GuardianLink(workspace_id=WORKSPACE, pitcher_id=key(desk.pitcher), person_id=key(father))
    desk.session.add(link)
    desk.session.flush()
    return desk


def hand(desk: Desk, slack_id: str) -> Hand:
    person = find_person(desk.session, WORKSPACE, slack_id)
    assert person is not None
    return Hand(desk.session, person, NOW)


@settings(
    max_examples=40, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(said=st.lists(SAID, max_size=8))
def test_it_stands_when_somebody_said_yes_last_and_nobody_no(
    store: Store, said: list[tuple[str, ConsentAct]]
) -> None:
    with desk_on(store) as desk:
        with_father(desk)
        last: dict[str, ConsentAct] = {}
        for who, act in said:
            say(hand(desk, who), key(desk.pitcher), act)
            last[who] = act
        yes = [act for act in last.values() if act is ConsentAct.AGREED]

        stands = bool(yes) and len(yes) == len(last) if said else True  # the file's date

        assert (desk.pitcher.consent_on is not None) is stands
        events = desk.session.exec(select(ConsentEvent)).all()
        assert [(one.act) for one in events] == [act for _, act in said]


def test_a_minor_says_nothing_of_his_own_record_and_a_coach_nothing_either(desk: Desk) -> None:
    for who in (MATEO, DANA):
        with pytest.raises(ByHandError):
            say(hand(desk, who), key(desk.pitcher), ConsentAct.AGREED)


def test_from_18_on_the_pitcher_speaks_and_nobody_for_him(desk: Desk) -> None:
    pitcher = desk.pitcher
    birthday = pitcher.birth_date.replace(year=pitcher.birth_date.year + 18)

    before = may_consent(desk.session, pitcher, birthday - timedelta(days=1))
    after = may_consent(desk.session, pitcher, birthday)

    assert [one.slack_id for one in before] == [ELENA]
    assert [one.slack_id for one in after] == [MATEO]


def test_paper_is_recorded_by_the_staff_alone_and_for_no_day_ahead(desk: Desk) -> None:
    pitcher_id, agreed = key(desk.pitcher), ConsentAct.AGREED
    with pytest.raises(ByHandError):
        record_on_paper(hand(desk, ELENA), pitcher_id, agreed, "Elena Cruz", date(2026, 5, 1))
    with pytest.raises(ByHandError):
        record_on_paper(hand(desk, DANA), pitcher_id, agreed, "Elena Cruz", date(2026, 5, 3))

    record_on_paper(hand(desk, DANA), pitcher_id, agreed, "Elena Cruz", date(2026, 5, 1))

    agreed_event = consent_of(desk.session, desk.pitcher, NOW.date()).agreed
    assert agreed_event is not None
    assert (agreed_event.said_by, agreed_event.on) == ("Elena Cruz", date(2026, 5, 1))


def test_who_is_no_guardian_any_more_stops_nothing(desk: Desk) -> None:
    with_father(desk)
    say(hand(desk, ELENA), key(desk.pitcher), ConsentAct.AGREED)
    say(hand(desk, FATHER), key(desk.pitcher), ConsentAct.DECLINED)
    assert desk.pitcher.consent_on is None
    father = find_person(desk.session, WORKSPACE, FATHER)
    assert father is not None
    link = desk.session.get(GuardianLink, (key(father), key(desk.pitcher)))
    desk.session.delete(link)
    desk.session.flush()

    assert consent_of(desk.session, desk.pitcher, NOW.date()).since is not None
