"""Every change keeps who, when, before and after; what was put right by hand stays right."""

from collections import defaultdict
from typing import Any

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from core.model import AuditAction, Line, Outing, PainReport, key
from core.store import Store
from tests.support.ledger_desk import MATEO, NOW, Desk, Event, deleted, desk_on, edited, said

TEXTS = (
    "62p 11cb vs Summit",
    "26p 11cb 4.1ip vs Summit no pain",
    "pen 24 pitches",
    "nice game",
    "elbow hurts 5/10",
    "30p vs Summit, elbow pain 7/10",
)
one_database = settings(
    max_examples=25, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)


def edits(texts: list[str]) -> list[Event]:
    first, *others = texts
    return [said(first), *(edited(text, second) for second, text in enumerate(others, start=1))]


def stored(row: Outing | PainReport | Line) -> dict[str, Any]:
    return row.model_dump(mode="json")


def subjects(desk: Desk) -> dict[tuple[str, int], dict[str, Any]]:
    rows: list[Outing | PainReport | Line] = [*desk.all_outings(), *desk.pain(), desk.line]
    return {(type(row).__name__.lower(), key(row)): stored(row) for row in rows}


@one_database
@given(st.lists(st.sampled_from(TEXTS), min_size=1, max_size=5), st.booleans())
def test_the_audit_explains_every_difference_between_versions(
    store: Store, texts: list[str], gone: bool
) -> None:
    with desk_on(store) as desk:
        desk.hear(*edits(texts), *([deleted()] if gone else []))

        told: defaultdict[tuple[str, int], dict[str, Any]] = defaultdict(dict)
        for entry in desk.audit():
            known = told[entry.subject, entry.subject_id]
            assert all(known.get(name, value) == value for name, value in entry.before.items())
            known.update(entry.after)

        for subject, row in subjects(desk).items():
            explained = told[subject]
            assert {name: comparable(row[name]) for name in explained} == {
                name: comparable(value) for name, value in explained.items()
            }


def comparable(value: Any) -> Any:
    """Pydantic writes UTC as Z, Python as +00:00."""
    return value.replace("Z", "+00:00") if isinstance(value, str) else value


@one_database
@given(st.data())
def test_a_field_put_right_by_hand_survives_an_edit_of_another(
    store: Store, data: st.DataObject
) -> None:
    counts = st.tuples(st.integers(30, 60), st.integers(0, 20))
    (pitches, breaking), (new_pitches, new_breaking) = data.draw(counts), data.draw(counts)
    new_pitches = data.draw(st.sampled_from([pitches, new_pitches]))
    with desk_on(store) as desk:
        desk.hear(said(f"{pitches}p {breaking}cb vs Summit"))
        desk.outings()[0].pitches = 99

        desk.hear(edited(f"{new_pitches}p {new_breaking}cb vs Summit", 5))

        (outing,) = desk.outings()
        assert outing.pitches == (99 if new_pitches == pitches else new_pitches)
        assert outing.breaking == new_breaking


def test_a_correction_keeps_who_when_before_and_after(desk: Desk) -> None:
    desk.hear(said("26p 11cb vs Summit"), edited("62p 11cb vs Summit", 5))

    correction = desk.audit()[-1]
    assert (correction.by_slack_id, correction.at) == (MATEO, NOW)
    assert (correction.action, correction.subject) == (AuditAction.CORRECTED, "outing")
    assert (correction.before, correction.after) == ({"pitches": 26}, {"pitches": 62})


def test_the_words_before_an_edit_are_kept(desk: Desk) -> None:
    desk.hear(said("elbow hurts 5/10"), edited("62p vs Summit", 5))

    (rewording,) = [one for one in desk.audit() if one.subject == "line"]
    assert rewording.before == {"text": "elbow hurts 5/10"}
    assert rewording.after == {"text": "62p vs Summit"}


def test_a_hand_put_right_value_is_what_the_audit_calls_before(desk: Desk) -> None:
    desk.hear(said("26p 11cb vs Summit"))
    desk.outings()[0].pitches = 28

    desk.hear(edited("30p 11cb vs Summit", 5))

    assert desk.audit()[-1].before == {"pitches": 28}


def test_a_row_that_comes_back_says_so(desk: Desk) -> None:
    desk.hear(said("62p vs Summit"), edited("nice game", 5), edited("62p vs Summit", 9))

    assert [one.pitches for one in desk.outings()] == [62]
    assert desk.audit()[-1].before["withdrawn_at"] is not None
    assert desk.audit()[-1].after["withdrawn_at"] is None
