"""The audience tables in full: every relation against every subject and view."""

import pytest

from core.audience import (
    TELL,
    Occasion,
    Relation,
    Subject,
    Told,
    View,
    has_own_account,
    may_log,
    may_see,
    who_is_told,
)

LOG_TABLE = {
    (Relation.STAFF, Subject.GAME_COUNTS): True,
    (Relation.STAFF, Subject.PRACTICE): True,
    (Relation.STAFF, Subject.ARM): True,
    (Relation.SELF, Subject.GAME_COUNTS): True,
    (Relation.SELF, Subject.PRACTICE): True,
    (Relation.SELF, Subject.ARM): True,
    (Relation.GUARDIAN, Subject.GAME_COUNTS): True,
    (Relation.GUARDIAN, Subject.PRACTICE): True,
    (Relation.GUARDIAN, Subject.ARM): True,
    (Relation.SCOREKEEPER, Subject.GAME_COUNTS): True,
    (Relation.SCOREKEEPER, Subject.PRACTICE): False,
    (Relation.SCOREKEEPER, Subject.ARM): False,
}
SEE_TABLE = {
    (relation, view): relation is not Relation.SCOREKEEPER or view is View.OWN_LINE
    for relation in Relation
    for view in View
}


@pytest.mark.parametrize("relation", Relation)
@pytest.mark.parametrize("subject", Subject)
def test_who_may_log_what(relation: Relation, subject: Subject) -> None:
    assert may_log([relation], subject) is LOG_TABLE[relation, subject]


@pytest.mark.parametrize("relation", Relation)
@pytest.mark.parametrize("view", View)
def test_who_may_see_what(relation: Relation, view: View) -> None:
    assert may_see([relation], view) is SEE_TABLE[relation, view]


def test_without_a_relation_nothing_is_allowed() -> None:
    assert not any(may_log([], subject) for subject in Subject)
    assert not any(may_see([], view) for view in View)


def test_every_occasion_has_exactly_one_row() -> None:
    assert sorted(row.occasion for row in TELL) == sorted(Occasion)


def test_pain_reaches_staff_and_guardians_at_any_hour() -> None:
    row = who_is_told(Occasion.PAIN)

    assert row.told == (Told.STAFF_CHANNEL, Told.GUARDIANS, Told.SECOND_ADULT)
    assert not row.waits_for_morning


@pytest.mark.parametrize(
    ("age", "account_age", "own"),
    [(15, 16, False), (16, 16, True), (16, 17, False), (17, 17, True), (15, 14, False)],
)
def test_nobody_under_sixteen_has_an_account_whatever_the_club_sets(
    age: int, account_age: int, own: bool
) -> None:
    # Slack's Developer Policy (docs.slack.dev): no use by children under 16.
    assert has_own_account(age, account_age) is own
