from datetime import UTC, date, datetime, timedelta

import pytest

from core.pain.clearance import Said, not_cleared_since
from core.pain.holds import ClearedBy, Held, HoldReason, covers, end_of, hold_reason

SAT = date(2026, 5, 2)
AT = datetime(2026, 5, 2, 23, tzinfo=UTC)


@pytest.mark.parametrize(("severity", "held"), [(2, False), (3, True), (10, True), (None, False)])
def test_a_report_at_the_threshold_holds_and_one_without_a_number_does_not(
    severity: int | None, held: bool
) -> None:
    reason = hold_reason(severity, SAT, stops=True, be_seen=False)

    assert (reason is HoldReason.SEVERITY) is held


def test_a_team_may_hold_sooner() -> None:
    reason = hold_reason(1, SAT, stops=True, be_seen=False, threshold=1)

    assert reason is HoldReason.SEVERITY


@pytest.mark.parametrize(("days", "held"), [(0, False), (1, True), (14, True), (15, False)])
def test_a_second_report_within_14_days_holds(days: int, held: bool) -> None:
    reason = hold_reason(1, SAT, stops=True, be_seen=False, earlier=[SAT - timedelta(days=days)])

    assert (reason is HoldReason.AGAIN) is held


def test_pain_elsewhere_holds_only_by_a_stop_and_be_seen_word() -> None:
    assert hold_reason(9, SAT, stops=False, be_seen=False) is None
    assert hold_reason(None, SAT, stops=False, be_seen=True) is HoldReason.BE_SEEN


@pytest.mark.parametrize(
    ("on", "said_after", "ends"),
    [(0, 1, True), (1, 1, True), (-1, 1, False), (0, -1, False)],
    ids=["same day", "later", "dated before the report", "written before the hold"],
)
def test_what_ends_a_hold(on: int, said_after: int, ends: bool) -> None:
    clearance = ClearedBy(SAT + timedelta(days=on), AT + timedelta(hours=said_after))

    assert (end_of(Held(SAT, AT), [clearance]) is not None) is ends


def test_a_hold_covers_the_days_after_its_report_up_to_its_clearance() -> None:
    held, cleared = Held(SAT, AT), ClearedBy(SAT + timedelta(days=3), AT + timedelta(days=3))
    days = [SAT + timedelta(days=n) for n in range(5)]

    assert [covers(held, [cleared], day) for day in days] == [False, True, True, False, False]
    assert [covers(held, [], day) for day in days] == [False, True, True, True, True]


def test_no_pain_said_for_a_day_before_the_report_clears_nothing() -> None:
    said = [Said(SAT, stops=True), Said(SAT - timedelta(days=1), pain_free=True)]

    assert not_cleared_since(said) == SAT
    assert not_cleared_since([*said, Said(SAT, pain_free=True)]) is None
