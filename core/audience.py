"""Who may log for whom, who may see what, and who is told: rows, read in one place.

Most pitchers are minors. Every question "may this person …" and "who hears of it" is
answered by the tables of this file and by nothing else.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum

#: Slack's Developer Policy does not allow use by children under 16 (docs.slack.dev).
LOWEST_ACCOUNT_AGE = 16


class Relation(StrEnum):
    """What a person is to a pitcher."""

    STAFF = "staff"
    SCOREKEEPER = "scorekeeper"
    SELF = "self"
    GUARDIAN = "guardian"


class Subject(StrEnum):
    """What a line states about a pitcher."""

    GAME_COUNTS = "game counts"
    PRACTICE = "practice"
    ARM = "arm"  # pain, soreness, tiredness


class View(StrEnum):
    """What can be read about a pitcher."""

    OWN_LINE = "own line"  # what was read of a line that the viewer typed, without pain
    RECORD = "record"  # counts, mix, rest and history
    ARM = "arm"


#: Who may log what for a pitcher. Nobody else may log anything for him.
MAY_LOG: dict[Relation, frozenset[Subject]] = {
    Relation.STAFF: frozenset(Subject),
    Relation.SELF: frozenset(Subject),
    Relation.GUARDIAN: frozenset(Subject),
    Relation.SCOREKEEPER: frozenset({Subject.GAME_COUNTS}),
}

#: Who may read what about a pitcher. Nobody else may read anything about him.
MAY_SEE: dict[Relation, frozenset[View]] = {
    Relation.STAFF: frozenset(View),
    Relation.SELF: frozenset(View),
    Relation.GUARDIAN: frozenset(View),
    Relation.SCOREKEEPER: frozenset({View.OWN_LINE}),
}


class Told(StrEnum):
    """Who hears of something without having asked."""

    STAFF_CHANNEL = "staff channel"
    GUARDIANS = "guardians"
    #: The guardians of a minor; an adult pitcher himself, and nobody for him.
    WHO_CONSENTS = "who may consent"
    LOG_CHANNEL = "log channel"
    #: The pitcher himself, or the guardians of one below account age.
    PITCHER_OR_GUARDIANS = "pitcher or guardians"
    #: Whoever keeps the score, or the staff where nobody does.
    SCOREKEEPER_OR_STAFF = "scorekeeper or staff"
    #: The guardians, a pitcher of 18 or more himself; the staff where none of them is reached.
    WHO_CLEARS = "whoever says that pain is gone"
    #: The writer, the guardians and, where he has an account, the pitcher: one conversation.
    FAMILY_GROUP = "family group"
    #: Another of the staff than the coach, where no guardian is on file.
    SECOND_ADULT = "second adult"
    #: Where he has an account of his own, and the pitches were his own choice.
    PITCHER = "pitcher"


class Occasion(StrEnum):
    """What happened that somebody must hear of."""

    PAIN = "pain"
    PAIN_WITHDRAWN = "pain report taken back"
    PAIN_GONE = "pain said to be gone"
    SORE_GONE = "soreness gone, written down by the staff"
    STILL_HURTS = "asked whether pain is gone"
    PAIN_UNPLACED = "pain of nobody in particular"
    DANGER = "words of danger"
    DANGER_NAMING_STAFF = "words of danger that name a coach"
    MONDAY_SUMMARY = "monday summary"
    REST_DAYS = "rest days"
    LAST_REST_DAY = "last rest day"
    SPIN = "spin reminder"
    SPIN_REPS = "spin reps of one pitcher"
    SPIN_SILENT = "spin reminders unanswered"
    POST_GAME = "no line of a game yet"
    CALENDAR = "a calendar address read, or no longer readable"
    SORE_OR_TIRED = "sore or tired"
    COUNTED_BY_SCOREKEEPER = "counted by a scorekeeper"
    RULE_BROKEN = "a rule gone over"
    TWO_COUNTS = "two counts of one outing"
    KEPT_BACK = "kept back"
    CONSENT = "a request for consent"
    CONSENT_SAID = "consent given, refused or withdrawn"
    DELETION = "a record asked to be deleted"
    MOVED = "a pitcher on a further team"
    CLEARANCE = "a clinician's clearance on record"
    THROWN_ON_HOLD = "throwing while on hold"
    ALERT_FOR_STAFF = "an alert for the staff"
    ALERT_OWN_CHOICE = "an alert about the pitcher's own choice of pitches"
    ALERT_HEALTH = "an alert about health and rest"
    NO_CONTACT = "a guardian's wish that a child is not written to"
    STAFF_WRITES = "what the staff write about a report of pain"


@dataclass(frozen=True, slots=True)
class TellRow:
    """One row of the table of messages: who is told, and whether a family is let sleep."""

    occasion: Occasion
    told: tuple[Told, ...]
    #: Whether quiet hours hold it for a family; the staff channel is always exempt.
    waits_for_morning: bool = False


#: Pain goes to adults at any hour.
TELL: tuple[TellRow, ...] = (
    TellRow(Occasion.PAIN, (Told.STAFF_CHANNEL, Told.GUARDIANS, Told.SECOND_ADULT)),
    TellRow(Occasion.PAIN_WITHDRAWN, (Told.STAFF_CHANNEL, Told.GUARDIANS), waits_for_morning=True),
    TellRow(Occasion.PAIN_GONE, (Told.STAFF_CHANNEL,)),
    TellRow(Occasion.SORE_GONE, (Told.STAFF_CHANNEL, Told.GUARDIANS), waits_for_morning=True),
    TellRow(Occasion.STILL_HURTS, (Told.WHO_CLEARS,), waits_for_morning=True),
    TellRow(Occasion.PAIN_UNPLACED, (Told.STAFF_CHANNEL, Told.GUARDIANS)),
    TellRow(Occasion.DANGER, (Told.STAFF_CHANNEL,)),
    TellRow(Occasion.DANGER_NAMING_STAFF, (Told.GUARDIANS,)),
    TellRow(Occasion.MONDAY_SUMMARY, (Told.STAFF_CHANNEL,)),
    TellRow(Occasion.REST_DAYS, (Told.GUARDIANS,), waits_for_morning=True),
    TellRow(Occasion.LAST_REST_DAY, (Told.GUARDIANS,), waits_for_morning=True),
    TellRow(Occasion.SPIN, (Told.LOG_CHANNEL,), waits_for_morning=True),
    TellRow(Occasion.SPIN_REPS, (Told.PITCHER_OR_GUARDIANS,), waits_for_morning=True),
    TellRow(Occasion.SPIN_SILENT, (Told.STAFF_CHANNEL,)),
    TellRow(Occasion.POST_GAME, (Told.SCOREKEEPER_OR_STAFF,), waits_for_morning=True),
    TellRow(Occasion.CALENDAR, (Told.STAFF_CHANNEL,)),
    TellRow(Occasion.SORE_OR_TIRED, (Told.STAFF_CHANNEL,)),
    TellRow(Occasion.COUNTED_BY_SCOREKEEPER, (Told.STAFF_CHANNEL,)),
    TellRow(Occasion.RULE_BROKEN, (Told.STAFF_CHANNEL,)),
    TellRow(Occasion.TWO_COUNTS, (Told.STAFF_CHANNEL,)),
    TellRow(Occasion.KEPT_BACK, (Told.STAFF_CHANNEL,)),
    TellRow(Occasion.CONSENT, (Told.WHO_CONSENTS,), waits_for_morning=True),
    TellRow(Occasion.CONSENT_SAID, (Told.STAFF_CHANNEL,)),
    TellRow(Occasion.DELETION, (Told.STAFF_CHANNEL,)),
    TellRow(Occasion.MOVED, (Told.STAFF_CHANNEL,)),
    TellRow(Occasion.CLEARANCE, (Told.STAFF_CHANNEL, Told.GUARDIANS), waits_for_morning=True),
    TellRow(Occasion.THROWN_ON_HOLD, (Told.STAFF_CHANNEL, Told.GUARDIANS)),
    TellRow(Occasion.ALERT_FOR_STAFF, (Told.STAFF_CHANNEL,)),
    TellRow(Occasion.ALERT_OWN_CHOICE, (Told.STAFF_CHANNEL, Told.PITCHER), waits_for_morning=True),
    TellRow(Occasion.ALERT_HEALTH, (Told.STAFF_CHANNEL, Told.GUARDIANS), waits_for_morning=True),
    TellRow(Occasion.NO_CONTACT, (Told.STAFF_CHANNEL,)),
    TellRow(Occasion.STAFF_WRITES, (Told.FAMILY_GROUP,), waits_for_morning=True),
)


def may_log(relations: Iterable[Relation], subject: Subject) -> bool:
    """Whether somebody with these relations to a pitcher may log this about him."""
    return any(subject in MAY_LOG[relation] for relation in relations)


def may_see(relations: Iterable[Relation], view: View) -> bool:
    """Whether somebody with these relations to a pitcher may read this about him."""
    return any(view in MAY_SEE[relation] for relation in relations)


def who_is_told(occasion: Occasion) -> TellRow:
    """The row for an occasion; `KeyError` for one that the table does not list."""
    return {row.occasion: row for row in TELL}[occasion]


def has_own_account(age: int, account_age: int) -> bool:
    """Whether a pitcher of this age (years) has an account and messages of his own.

    A club may ask for more than Slack's lowest age, never for less.
    """
    return age >= max(account_age, LOWEST_ACCOUNT_AGE)
