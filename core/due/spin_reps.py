"""What a spin reminder says of each pitcher, as the record stands when it leaves."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from zoneinfo import ZoneInfo

from sqlmodel import Session, col, select

from core.due.spin import SpinWeek, TeamPlans, spin_week, team_plans
from core.due.spin_due import spinners
from core.ledger.asked.arms import Gathered, gather
from core.ledger.binding import Books
from core.ledger.history import counted_outings
from core.ledger.logged import Logged
from core.ledger.rest_day_words import rest_day_words
from core.model import OutboxMessage, Pitcher, Reminder, Team, key
from core.rest import RestError, answer
from core.rulebooks import RuleBookError

#: The words for these activities say whether the coach allows throwing on a rest day.
_THROWING = ("throw", "catch")
#: A coach's words that begin with one of these allow nothing.
_REFUSALS = frozenset({"no", "none", "not", "nothing", "never", "don't", "don’t", "off"})


@dataclass(frozen=True, slots=True)
class SpinSoFar:
    """One pitcher's reps of this week; `own` where he is the reader himself."""

    pitcher: Pitcher
    spin: SpinWeek
    own: bool


def spin_so_far(
    session: Session, row: OutboxMessage, team: Team, now: datetime, books: Books
) -> list[SpinSoFar]:
    """The pitchers of a private line who may spin today and have reps of the plan to go."""
    today = now.astimezone(ZoneInfo(team.time_zone)).date()
    about = select(Reminder).where(
        Reminder.slot == row.slot, Reminder.workspace_id == row.workspace_id
    )
    found, plans = [], team_plans(session, key(team))
    words = rest_day_words(session, [team])
    for one in session.exec(about.order_by(col(Reminder.id))):
        pitcher = session.get_one(Pitcher, one.pitcher_id)
        arm = gather(session, pitcher, today, books)
        spin = _this_week(pitcher, arm.outings, today, plans)
        if spin is not None and not spin.is_done and _may_spin(arm, words, today):
            found.append(SpinSoFar(pitcher, spin, pitcher.person_id == row.person_id))
    return found


def someone_has_reps_to_go(session: Session, team: Team, now: datetime) -> bool:
    """Whether any pitcher of a team has not logged the week's reps yet."""
    today = now.astimezone(ZoneInfo(team.time_zone)).date()
    pitchers, plans = spinners(session, team), team_plans(session, key(team))
    outings = counted_outings(session, [key(one) for one in pitchers])
    weeks = (_this_week(one, outings[key(one)], today, plans) for one in pitchers)
    return any(week is not None and not week.is_done for week in weeks)


def allows_throwing(rest_day: dict[str, str]) -> bool:
    """Whether the coach's words allow catch play on a rest day; silence allows nothing."""
    said = [rest_day[name].split() for name in _THROWING if name in rest_day]
    return bool(said) and not any(
        not words or words[0].casefold().strip(",.;:") in _REFUSALS for words in said
    )


def _this_week(
    pitcher: Pitcher, outings: Sequence[Logged], today: date, plans: TeamPlans
) -> SpinWeek | None:
    monday = today - timedelta(days=today.weekday())
    this_week = [one for one in outings if monday <= one.on <= today]
    return spin_week(pitcher, this_week, plans.of(pitcher))


def _may_spin(one: Gathered, words: dict[str, str], today: date) -> bool:
    """Never on an arm that is not cleared, on a game day, or on a day of full rest."""
    played = any(o.on == today and o.kind in {"game", None} for o in one.outings)
    if one.arm is None or one.status.since is not None or played:
        return False
    try:
        rest = answer(one.arm.books, one.arm.thrower, one.arm.outings, today)
    except (RestError, RuleBookError):
        return False  # nobody knows whether it is a rest day
    return rest.eligible or allows_throwing(words)
