"""The thresholds that a coach sets: each with its default, unit, range and meaning.

The defaults are common practice, no source, unless a row says otherwise; they are the
coach's to change, for a team and for one pitcher. What they say about a mix is the coach's
wish; it is no statement about what an arm bears.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum

from core.audience import Occasion


class Key(StrEnum):
    """What is watched; stored with settings and alerts, so never renamed."""

    MIX = "mix"
    LOW_MIX = "low mix"
    GAME_BREAKING = "breaking balls"
    URGENT_BREAKING = "urgent breaking balls"
    CHANGEUP = "changeup"
    PAIN = "pain"
    PAIN_REPORTS = "pain reports"
    TIRED_REPORTS = "tired reports"
    WEEK_PITCHES = "week pitches"
    MORE_THROWS = "more than usual"
    SPIN_REPS = "spin reps"
    SPIN_EFFORT = "spin effort"
    SPIN_WEEK = "spin week"
    SILENT_DAYS = "silent days"
    MONTHS = "months"
    INNINGS = "innings"
    ALL_INNINGS = "innings cap"
    DAYS_IN_ROW = "days in a row"
    GAMES_A_DAY = "games in a day"
    CATCHING = "pitcher and catcher"
    TWO_TEAMS = "two teams"


@dataclass(frozen=True, slots=True)
class Threshold:
    """One row: what it means, what it is set to unless the coach says otherwise, and its range.

    `starts_off` thresholds watch nothing until they are switched on; then `default` holds.
    `default` none means that the coach must name a number. Both ends of the range belong to it.
    """

    key: Key
    unit: str
    default: int | None
    low: int
    high: int
    meaning: str
    told: Occasion = Occasion.ALERT_FOR_STAFF
    starts_off: bool = False
    may_be_off: bool = True
    also_called: tuple[str, ...] = ()

    @property
    def at_first(self) -> int | None:
        """The value before anybody sets one; none while it is off."""
        return None if self.starts_off else self.default


#: The share of game pitches that is spoken of only from so many typed pitches on.
TYPED_IN_WINDOW, TYPED_IN_GAME, GAMES_IN_WINDOW = 60, 20, 3
#: In one game these alert whatever is set (common practice, no source).
ALWAYS_BREAKING, ALWAYS_SHARE = 40, 0.5
WITHIN_DAYS = 14

THRESHOLDS: tuple[Threshold, ...] = (
    Threshold(
        Key.MIX, "%", 20, 5, 60,
        "Breaking balls are more than this share of the typed pitches of the last 3 games "
        "(60 typed pitches or more).",
        Occasion.ALERT_OWN_CHOICE,
        also_called=("breaking-ball share", "breaking share", "share", "mix high"),
    ),
    Threshold(
        Key.LOW_MIX, "%", 8, 1, 20,
        "Breaking balls are less than this share of the last 3 games, for a pitcher who is past "
        "learning the pitch (60 typed pitches or more).",
        starts_off=True,
        also_called=("mix low",),
    ),
    Threshold(
        Key.GAME_BREAKING, "in a game", 16, 5, 39,
        "More breaking balls in one game than this, and more than the mix allows of its pitches; "
        "40, or half of 20 pitches or more, always alert.",
        Occasion.ALERT_OWN_CHOICE,
        also_called=("breaking balls in a game", "game breaking balls", "breaking", "cb"),
    ),
    Threshold(
        Key.URGENT_BREAKING, "in a game", 25, 10, 40,
        "So many breaking balls in one game, or more, alert whatever its pitches.",
        Occasion.ALERT_OWN_CHOICE,
        also_called=("urgent",),
    ),
    Threshold(
        Key.CHANGEUP, "%", 8, 1, 40,
        "Changeups are less than this share of the last 3 games where they were counted (60 "
        "pitches or more).",
        also_called=("changeups", "changeup share"),
    ),
    Threshold(
        Key.PAIN, "of 10", 3, 1, 3,
        "Arm pain of this much or more puts the arm on hold; any pain stops it for the day.",
        may_be_off=False,
        also_called=("pain threshold", "pain severity"),
    ),
    Threshold(
        Key.PAIN_REPORTS, "in 14 days", 2, 1, 10,
        "So many days with a report of pain or soreness within 14 days.",
        Occasion.ALERT_HEALTH,
    ),
    Threshold(
        Key.TIRED_REPORTS, "in 14 days", 2, 1, 10,
        "So many days with a tired arm within 14 days.",
        Occasion.ALERT_HEALTH,
        also_called=("tired", "tired arm"),
    ),
    Threshold(
        Key.WEEK_PITCHES, "in 7 days", None, 20, 400,
        "More pitches than this in games, bullpens and live at-bats within 7 days.",
        Occasion.ALERT_HEALTH,
        starts_off=True,
        also_called=("pitches in 7 days", "weekly pitches", "week"),
    ),
    Threshold(
        Key.MORE_THROWS, "throws more", 60, 20, 300,
        "So many throws more in 7 days than the weekly average of the three weeks before, and at "
        "least half as much again (with 28 days of record, not in build-up).",
        also_called=("more throws", "load"),
    ),
    Threshold(
        Key.SPIN_REPS, "in a session", 20, 5, 60,
        "More spin reps than this in one catch-play session.",
        also_called=("spins",),
    ),
    Threshold(
        Key.SPIN_EFFORT, "%", 60, 30, 100,
        "Spin reps at more than this effort.",
        also_called=("effort",),
    ),
    Threshold(
        Key.SPIN_WEEK, "in a week", 36, 5, 120,
        "Fewer spin reps than this in the last full week, Monday to Sunday, in which catch play "
        "was logged (36 is the week's plan; the Monday summary counts them in any case).",
        starts_off=True,
        also_called=("weekly spins", "spin reps in a week", "plan"),
    ),
    Threshold(
        Key.SILENT_DAYS, "days", 7, 2, 60,
        "So many days in season without any line: unknown, not rest.",
        also_called=("days without a line", "no line"),
    ),
    Threshold(
        Key.MONTHS, "months", 8, 4, 11,
        "Games in more than this many of the last twelve months (pitching competitively in more "
        "than 8 months of a year: Olsen et al., Am J Sports Med 34 (2006) 905-912).",
    ),
    Threshold(
        Key.INNINGS, "% of the cap", 80, 40, 100,
        "So much of the most innings that a rule book allows in twelve months, or more.",
        Occasion.ALERT_HEALTH,
        also_called=("innings share", "innings warning"),
    ),
    Threshold(
        Key.ALL_INNINGS, "% of the cap", 100, 80, 100,
        "The most innings that a rule book allows in twelve months, used up to this share (over "
        "100 innings in a year went with 3.5 times the injuries: Fleisig et al., Am J Sports Med "
        "39 (2011) 253-257).",
        Occasion.ALERT_HEALTH,
        may_be_off=False,
    ),
    Threshold(
        Key.DAYS_IN_ROW, "days", 3, 2, 7,
        "So many days in a row with pitches in games, bullpens or live at-bats (consecutive days "
        "went with more arm pain: Yang et al., Am J Sports Med 42 (2014) 1456-1463).",
        Occasion.ALERT_HEALTH,
        also_called=("third day in a row", "consecutive days"),
    ),
    Threshold(
        Key.GAMES_A_DAY, "games", 2, 2, 4,
        "Pitched in so many games on one day (several games a day went with more arm pain: Yang "
        "et al. 2014).",
        Occasion.ALERT_HEALTH,
        also_called=("two games in a day", "games per day"),
    ),
    Threshold(
        Key.CATCHING, "outs caught", 1, 1, 27,
        "Caught so many outs, or more, on a day on which he pitched in a game.",
        Occasion.ALERT_HEALTH,
        also_called=("catcher", "catching"),
    ),
    Threshold(
        Key.TWO_TEAMS, "days", 2, 1, 5,
        "Games for two teams within so many days: 1 is the same day, 2 also the day after "
        "(overlapping teams went with more arm pain: Yang et al. 2014).",
        Occasion.ALERT_HEALTH,
        also_called=("several teams",),
    ),
)  # fmt: skip

#: What is watched for one pitcher now: a number, or none where it is off.
Limits = Mapping[Key, int | None]

DEFAULTS: Limits = {row.key: row.at_first for row in THRESHOLDS}


def threshold(key: Key) -> Threshold:
    """The row of a key."""
    return {row.key: row for row in THRESHOLDS}[key]
