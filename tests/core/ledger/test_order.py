"""Slack redelivers, duplicates and reorders: the record ends the same."""

from collections.abc import Sequence

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from core.ledger import Deleted, NoticeKind
from core.model import LineState
from core.store import Store
from tests.support.ledger_desk import MATEO, Desk, Event, deleted, desk_on, edited, said

TEXTS = (
    "62p 11cb vs Summit",
    "26p 11cb 4.1ip vs Summit no pain",
    "pen 24 pitches 6 changeups",
    "nice game everybody",
    "elbow hurts 5/10",
    "62p 11cb vs Summit, shoulder pain 3/10",
    "62p 70cb",
    "",
)
texts = st.sampled_from(TEXTS)


@st.composite
def histories(draw: st.DrawFn) -> list[Event]:
    """What an author does to one message, in the order in which he does it."""
    versions = draw(st.lists(texts, min_size=1, max_size=4))
    events: list[Event] = [said(versions[0])]
    events += [edited(text, second) for second, text in enumerate(versions[1:], start=1)]
    if draw(st.booleans()):
        full = draw(st.booleans())
        events.append(deleted(versions[-1], MATEO) if full else deleted())
    return events


@st.composite
def deliveries(draw: st.DrawFn) -> tuple[list[Event], list[Event]]:
    """A history, and the same events in any order with any of them repeated."""
    history = draw(histories())
    again = draw(st.lists(st.sampled_from(history), max_size=3))
    return history, draw(st.permutations([*history, *again]))


def standing(desk: Desk) -> tuple[object, ...]:
    """What the record says now, without ids and times."""
    line = desk.line
    gone = line.deleted_at is not None
    outings = [
        one.model_dump(exclude={"id", "line_id", "pitcher_id", "slot"}) for one in desk.outings()
    ]
    hurts = [(one.feeling, one.site, one.severity) for one in desk.pain() if not one.withdrawn_at]
    return gone, None if gone else (line.text, line.state, line.questions), outings, hurts


def after(store: Store, events: Sequence[Event]) -> tuple[object, ...]:
    with desk_on(store) as desk:
        desk.hear(*events)
        return standing(desk)


def complaints(store: Store, events: Sequence[Event]) -> set[tuple[str, str | None]]:
    with desk_on(store) as desk:
        desk.hear(*events)
        return {(one.feeling, one.site) for one in desk.pain() if one.feeling != "no pain"}


one_database = settings(
    max_examples=25, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)


@one_database
@given(deliveries())
def test_any_order_and_any_repetition_end_in_the_same_record(
    store: Store, delivered: tuple[list[Event], list[Event]]
) -> None:
    history, shuffled = delivered

    assert after(store, shuffled) == after(store, history)


def test_no_pain_is_asked_about_when_a_report_comes_late(store: Store) -> None:
    first, hurt = said("62p 11cb vs Summit"), edited("elbow hurts 5/10", 1)
    gone = edited("26p 11cb 4.1ip vs Summit no pain", 2)

    in_order = after(store, [first, hurt, gone])

    assert "pain open" in str(in_order)
    assert after(store, [first, gone, hurt]) == in_order


@one_database
@given(deliveries())
def test_pain_in_any_version_is_on_file_whatever_the_order(
    store: Store, delivered: tuple[list[Event], list[Event]]
) -> None:
    history, shuffled = delivered

    assert complaints(store, shuffled) == complaints(store, history)


@one_database
@given(histories())
def test_withdrawn_rows_are_never_counted(store: Store, history: list[Event]) -> None:
    with desk_on(store) as desk:
        desk.hear(*history)
        gone = any(isinstance(event, Deleted) for event in history)

        assert not (gone and desk.outings())
        assert not (gone and [one for one in desk.pain() if one.withdrawn_at is None])
        assert len(desk.outings()) <= 1


def test_a_line_heard_twice_is_one_line(desk: Desk) -> None:
    desk.hear(said("62p 11cb vs Summit"))

    assert desk.hear(said("62p 11cb vs Summit")) == []
    assert [one.pitches for one in desk.outings()] == [62]


def test_an_edit_before_its_original_stands(desk: Desk) -> None:
    desk.hear(edited("62p 11cb vs Summit", 5), said("26p 11cb vs Summit"))

    assert [one.pitches for one in desk.outings()] == [62]
    assert desk.line.text == "62p 11cb vs Summit"


def test_the_newest_edit_wins_even_when_it_brings_the_first_words_back(desk: Desk) -> None:
    desk.hear(said("62p vs Summit"), edited("62p vs Summit", 9), edited("26p vs Summit", 5))

    assert [one.pitches for one in desk.outings()] == [62]


def test_stamps_are_compared_as_numbers(desk: Desk) -> None:
    early, late = edited("26p vs Summit", 1), edited("62p vs Summit", 2)
    odd = type(early)(early.said, "999999999.000000")  # fewer digits, greater as text

    desk.hear(said("40p vs Summit"), late, odd)

    assert [one.pitches for one in desk.outings()] == [62]


def test_a_deletion_is_final(desk: Desk) -> None:
    desk.hear(said("62p vs Summit"), deleted("62p vs Summit", MATEO))

    desk.hear(edited("64p vs Summit", 9), said("62p vs Summit"))

    assert desk.outings() == []
    assert desk.line.deleted_at is not None


def test_a_deletion_before_its_original_is_final_too(desk: Desk) -> None:
    desk.hear(deleted(), said("62p 11cb vs Summit"))

    assert desk.outings() == []
    assert (desk.line.author_slack_id, desk.line.text) == (MATEO, "62p 11cb vs Summit")


def test_pain_that_was_deleted_before_it_was_heard_is_told_as_taken_back(desk: Desk) -> None:
    notices = desk.hear(deleted(), said("elbow hurts 5/10"))

    told = {one.kind for one in notices if not one.only_if_shown}
    assert told == {NoticeKind.PAIN_WITHDRAWN}
    assert [(one.site, one.withdrawn_at is None) for one in desk.pain()] == [("elbow", False)]


def test_pain_edited_away_before_it_was_heard_is_told_as_taken_back(desk: Desk) -> None:
    notices = desk.hear(edited("62p 11cb vs Summit", 5), said("62p vs Summit, elbow hurts 5/10"))

    assert NoticeKind.PAIN_WITHDRAWN in {one.kind for one in notices if not one.only_if_shown}
    assert [one.pitches for one in desk.outings()] == [62]
    assert desk.line.state == LineState.READ
