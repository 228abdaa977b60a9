"""What must be told after a line changed the record, and to whom: places, not words."""

from dataclasses import dataclass
from datetime import datetime, time, timedelta
from enum import StrEnum
from zoneinfo import ZoneInfo

from core.model import (
    Feeling,
    Line,
    LineState,
    Team,
)

MORNING, EVENING = time(8), time(20)


class NoticeKind(StrEnum):
    """What kind of message is owed; the bot has one renderer for each."""

    REACTION = "reaction"
    ANSWER = "answer"
    #: A question that nobody answered, once more on the next morning.
    ASKED_AGAIN = "asked again"
    STAFF_COUNTS = "staff counts"
    PAIN = "pain"
    PAIN_WITHDRAWN = "pain withdrawn"
    PAIN_UNPLACED = "pain unplaced"
    PAIN_GONE = "pain gone"
    #: The family is asked whether pain is gone, after 1, 3 and 7 days.
    STILL_HURTS = "still hurts"
    #: A pain notice that Slack refused to deliver: told to those who can pass it on.
    UNREACHED = "unreached"
    DANGER = "danger"
    RULE_BROKEN = "rule broken"
    TWO_COUNTS = "two counts"
    KEPT_BACK = "kept back"
    #: The request for consent, and what became of it; what the staff hear of it.
    CONSENT = "consent"
    CONSENT_SAID = "consent said"
    #: Something that waits for a word of whoever reads it, and what became of it.
    MATTER = "matter"
    WELCOME = "welcome"
    #: To whoever put a pitcher on the roster by the form.
    ADDED = "pitcher added"
    CLEARANCE = "clearance"
    THROWN_ON_HOLD = "thrown on hold"
    #: By the clock: see core/due.
    MONDAY_SUMMARY = "monday summary"
    REST_DAYS = "rest days"
    LAST_REST_DAY = "last rest day"
    SPIN = "spin reminder"
    SPIN_REPS = "spin reps"
    SPIN_SILENT = "spin silent"
    POST_GAME = "post-game question"
    #: A calendar address that was read, or that no longer can be.
    CALENDAR = "calendar"
    ALERT = "alert"
    #: What the staff wrote to a family, all of it in one conversation; and that it did not go.
    FAMILY = "family"
    FAMILY_UNSENT = "family unsent"
    #: A guardian's wish that a child is not written to.
    NO_CONTACT = "no contact"
    STRANGER = "stranger"
    #: Told to whoever pressed a button that could do nothing.
    REFUSED = "refused"
    HINT = "hint"
    #: A channel of a team takes no messages any more.
    CHANNEL_TROUBLE = "channel trouble"
    #: A person gets no direct messages any more.
    PERSON_TROUBLE = "person trouble"
    #: No message: somebody's Home tab, brought up to date.
    HOME = "home"


@dataclass(frozen=True, slots=True)
class Notice:
    """One message that is owed: its natural key, its kind and where it goes.

    `destination` is a Slack channel or user id. With `only_if_shown` the message is brought
    up to date where people see it already, and not begun otherwise.
    """

    slot: str
    kind: NoticeKind
    destination: str
    not_before: datetime
    line_id: int | None = None
    team_id: int | None = None
    person_id: int | None = None
    thread_ts: str | None = None
    only_if_shown: bool = False
    #: Post a new message where an older one stands: an edited message alerts nobody.
    anew: bool = False


def quiet_until(
    moment: datetime, time_zone: str, begin: time = EVENING, end: time = MORNING
) -> datetime:
    """The first moment from `moment` on that is outside quiet hours, `begin` to `end` local time.

    The usual ones, 20:00-08:00, are those of youth-sport communication policies (electronic
    contact with minor athletes between 08:00 and 20:00 local time).
    """
    local = moment.astimezone(ZoneInfo(time_zone))
    if end <= local.time() < begin:
        return moment
    day = local.date() + timedelta(days=1 if local.time() >= begin else 0)
    return datetime.combine(day, end, ZoneInfo(time_zone)).astimezone(moment.tzinfo)


@dataclass(frozen=True, slots=True)
class Heard:
    """What the ledger knows of a line when it works out who must hear of it."""

    line: Line
    now: datetime
    #: Whether the answer must come in words (a reaction is enough for most lines).
    in_words: bool
    by_scorekeeper: bool
    #: The teams that answer for the line: the channel's own, else the author's.
    teams: tuple[Team, ...]
    #: The kinds of message about pain that bring news, beside what was told before.
    news: frozenset[NoticeKind] = frozenset()
    #: Whether a line of a staff channel speaks of another team's pitcher.
    answered_elsewhere: bool = False
    #: Outings of other lines that this one was put together with before it was read again.
    joined_before: frozenset[int] = frozenset()

    @property
    def time_zone(self) -> str:
        """The zone of the first team; UTC where there is none."""
        return self.teams[0].time_zone if self.teams else "UTC"


#: A line in one of these states carries no reaction.
SILENT_STATES = frozenset(
    {
        LineState.TALK,
        LineState.QUESTION,
        LineState.ORDER,
        LineState.STRANGER,
        LineState.UNDONE,
    }
)
#: Kinds of outing that may go over a rule; of unknown kind counts as a game until it is known.
PITCHED = frozenset({"game", None})
#: What is told of an arm or body; "no pain" and "not tired" are not.
TOLD_FEELINGS = frozenset({Feeling.PAIN, Feeling.SORE, Feeling.TIRED})
