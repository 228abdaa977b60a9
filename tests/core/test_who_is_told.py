"""Who is told of what, as one table that a parent could read; every cell allowed or refused."""

import pytest

from core.alerts import THRESHOLDS, Key
from core.audience import Occasion, Told, who_is_told

STAFF, FAMILY, HIMSELF = Told.STAFF_CHANNEL, Told.GUARDIANS, Told.PITCHER
LOG, ONE_OR_FAMILY = Told.LOG_CHANNEL, Told.PITCHER_OR_GUARDIANS
#: For each occasion: who hears of it, and whether families sleep.
TABLE: dict[Occasion, tuple[set[Told], bool]] = {
    Occasion.PAIN: ({STAFF, FAMILY, Told.SECOND_ADULT}, False),
    Occasion.PAIN_WITHDRAWN: ({STAFF, FAMILY}, True),
    Occasion.PAIN_UNPLACED: ({STAFF, FAMILY}, False),
    Occasion.DANGER: ({STAFF}, False),
    Occasion.DANGER_NAMING_STAFF: ({FAMILY}, False),
    Occasion.SORE_OR_TIRED: ({STAFF}, False),
    Occasion.COUNTED_BY_SCOREKEEPER: ({STAFF}, False),
    Occasion.RULE_BROKEN: ({STAFF}, False),
    Occasion.TWO_COUNTS: ({STAFF}, False),
    Occasion.KEPT_BACK: ({STAFF}, False),
    Occasion.CONSENT: ({Told.WHO_CONSENTS}, True),
    Occasion.CONSENT_SAID: ({STAFF}, False),
    Occasion.DELETION: ({STAFF}, False),
    Occasion.MOVED: ({STAFF}, False),
    Occasion.CLEARANCE: ({STAFF, FAMILY}, True),
    Occasion.THROWN_ON_HOLD: ({STAFF, FAMILY}, False),
    Occasion.ALERT_FOR_STAFF: ({STAFF}, False),
    Occasion.ALERT_OWN_CHOICE: ({STAFF, HIMSELF}, True),
    Occasion.ALERT_HEALTH: ({STAFF, FAMILY}, True),
    Occasion.NO_CONTACT: ({STAFF}, False),
    Occasion.STAFF_WRITES: ({Told.FAMILY_GROUP}, True),
    Occasion.PAIN_GONE: ({STAFF}, False),
    Occasion.SORE_GONE: ({STAFF, FAMILY}, True),
    Occasion.STILL_HURTS: ({Told.WHO_CLEARS}, True),
    Occasion.MONDAY_SUMMARY: ({STAFF}, False),
    Occasion.REST_DAYS: ({FAMILY}, True),
    Occasion.LAST_REST_DAY: ({FAMILY}, True),
    Occasion.SPIN: ({LOG}, True),
    Occasion.SPIN_REPS: ({ONE_OR_FAMILY}, True),
    Occasion.SPIN_SILENT: ({STAFF}, False),
    Occasion.POST_GAME: ({Told.SCOREKEEPER_OR_STAFF}, True),
    Occasion.CALENDAR: ({STAFF}, False),
}


@pytest.mark.parametrize("occasion", Occasion)
@pytest.mark.parametrize("reader", Told)
def test_who_is_told_of_what(occasion: Occasion, reader: Told) -> None:
    assert (reader in who_is_told(occasion).told) is (reader in TABLE[occasion][0])


@pytest.mark.parametrize("occasion", Occasion)
def test_which_messages_let_families_sleep(occasion: Occasion) -> None:
    assert who_is_told(occasion).waits_for_morning is TABLE[occasion][1]


def test_whatever_goes_to_a_pitcher_alone_waits_for_the_morning_and_goes_to_the_staff_too() -> None:
    for occasion in Occasion:
        row = who_is_told(occasion)
        if HIMSELF in row.told:
            assert row.waits_for_morning
            assert STAFF in row.told


def test_pain_holds_and_clearances_are_never_told_to_a_pitcher_alone() -> None:
    for occasion in (Occasion.PAIN, Occasion.THROWN_ON_HOLD, Occasion.CLEARANCE):
        assert HIMSELF not in who_is_told(occasion).told


@pytest.mark.parametrize(
    ("occasion", "keys"),
    [
        (Occasion.ALERT_OWN_CHOICE, {Key.MIX, Key.GAME_BREAKING, Key.URGENT_BREAKING}),
        (
            Occasion.ALERT_HEALTH,
            {
                Key.PAIN_REPORTS,
                Key.TIRED_REPORTS,
                Key.WEEK_PITCHES,
                Key.INNINGS,
                Key.ALL_INNINGS,
                Key.DAYS_IN_ROW,
                Key.GAMES_A_DAY,
                Key.CATCHING,
                Key.TWO_TEAMS,
            },
        ),
    ],
)
def test_a_family_hears_of_health_and_rest_and_a_pitcher_of_his_own_choice(
    occasion: Occasion, keys: set[Key]
) -> None:
    assert {row.key for row in THRESHOLDS if row.told is occasion} == keys
