"""The week before a day, for one arm: what was thrown, the mix, the spin reps, the rest."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from sqlmodel import Session, col, func, select

from core.due.spin import SpinWeek, spin_week
from core.ledger.asked.arms import Gathered, Staff, staff_of
from core.ledger.binding import Books
from core.ledger.history import games
from core.ledger.logged import Logged
from core.mix import Mix, mix_of
from core.model import PainReport, Pitcher, key
from core.pain.status import ArmStatus
from core.rest import Outlook, RestError, TimeOff, Total, standing
from core.rulebooks import RuleBook, RuleBookError

DAYS = timedelta(days=7)
#: Kinds of outing that are thrown from the mound; of unknown kind counts until it is known.
MOUND = frozenset({"game", "bullpen", "live", None})
#: A cap is near from this share of it on; no source, the coach reads the numbers beside it.
NEAR = 0.9
#: A break that must begin within this time is mentioned.
BREAK_AHEAD = timedelta(days=28)


@dataclass(frozen=True, slots=True)
class ArmWeek:
    """One pitcher's week; `mix` and `before` are last week's games and those of the week before.

    `free_on` are the days of the coming week on which nothing on record speaks against him,
    `next_eligible` the first date by rule, `problem` why no book answers for today.
    """

    pitcher: Pitcher
    on: date
    status: ArmStatus
    outings: int
    pitches: int
    uncounted: int
    mix: Mix
    before: Mix
    spin: SpinWeek | None
    #: The newest day that any line speaks of; null where none does.
    last_line: date | None
    lines_last_week: bool
    free_on: frozenset[date]
    next_eligible: date | None = None
    problem: str | None = None
    near_caps: tuple[Total, ...] = ()
    breaks: tuple[TimeOff, ...] = ()

    @property
    def may_throw(self) -> bool:
        """Whether nothing on record speaks against it today; the coach decides all the same."""
        return self.on in self.free_on


def arm_weeks(
    session: Session, pitchers: Sequence[Pitcher], today: date, books: Books
) -> tuple[ArmWeek, ...]:
    """Of each pitcher the seven days before `today` (local) and the seven from it on."""
    staff = staff_of(session, pitchers, today, today + DAYS)
    felt = _newest_reports(session, pitchers, today)
    return tuple(_arm_week(staff, one, today, felt.get(key(one)), books) for one in pitchers)


def _arm_week(
    staff: Staff, pitcher: Pitcher, today: date, felt: date | None, books: Books
) -> ArmWeek:
    one = staff.on(pitcher, today, books)
    recent = [o for o in one.outings if today - 2 * DAYS <= o.on < today]
    last = [o for o in recent if today - DAYS <= o.on]
    mound = [outing for outing in last if outing.kind in MOUND]
    last_line = _last_line(one.outings, felt, today)
    ahead = _ahead(staff, one, today, books)
    totals, breaks = _near(one, today)
    return ArmWeek(
        pitcher,
        today,
        one.status,
        outings=len(mound),
        pitches=sum(outing.pitches or 0 for outing in mound),
        uncounted=sum(outing.pitches is None for outing in mound),
        mix=mix_of(games(last)),
        before=mix_of(games([o for o in recent if o.on < today - DAYS])),
        spin=spin_week(pitcher, last),
        last_line=last_line,
        lines_last_week=last_line is not None and last_line >= today - DAYS,
        free_on=frozenset() if one.status.bars_pitching else ahead.allowed,
        next_eligible=ahead.next_eligible,
        problem=ahead.problem,
        near_caps=totals,
        breaks=breaks,
    )


@dataclass(frozen=True, slots=True)
class _Ahead:
    """What the books say of the coming days."""

    allowed: frozenset[date]
    next_eligible: date | None
    problem: str | None


def _ahead(staff: Staff, one: Gathered, today: date, books: Books) -> _Ahead:
    """The coming week if nothing is thrown until then; other books may bind on other days."""
    binding: Sequence[RuleBook] = ()
    outlook: Outlook | None = None
    allowed: set[date] = set()
    following, problem = None, None
    for day in (today + timedelta(days=n) for n in range(7)):
        arm = one.arm if day == today else staff.on(one.pitcher, day, books).arm
        try:
            if arm is not None and (outlook is None or arm.books != binding):
                binding, outlook = arm.books, Outlook(arm.books, arm.thrower, arm.outings)
            if arm is not None and outlook is not None and outlook.allows(day):
                allowed.add(day)
            elif day == today and outlook is not None:
                following = outlook.next_eligible(day)
        except (RestError, RuleBookError) as wrong:
            outlook = None
            problem = str(wrong) if day == today else problem
    return _Ahead(frozenset(allowed), following, one.problem if one.arm is None else problem)


def _newest_reports(session: Session, pitchers: Sequence[Pitcher], today: date) -> dict[int, date]:
    """The newest day of which each pitcher's body was spoken of."""
    rows = (
        select(PainReport.pitcher_id, func.max(col(PainReport.on)))
        .where(
            col(PainReport.pitcher_id).in_([key(one) for one in pitchers]),
            col(PainReport.withdrawn_at).is_(None),
            col(PainReport.on) <= today,
        )
        .group_by(col(PainReport.pitcher_id))
    )
    return dict(session.exec(rows).all())


def _last_line(outings: Sequence[Logged], felt: date | None, today: date) -> date | None:
    days = [outing.on for outing in outings if outing.on <= today]
    return max([*days, *([felt] if felt is not None else [])], default=None)


def _near(one: Gathered, today: date) -> tuple[tuple[Total, ...], tuple[TimeOff, ...]]:
    """The caps of the year that are nearly used up, and the breaks that must begin soon."""
    if one.arm is None:
        return (), ()
    try:
        found = standing(one.arm.books, one.arm.thrower, one.arm.outings, today)
    except (RestError, RuleBookError):
        return (), ()  # the line of the pitcher says that no book answers
    caps = [t for t in found.totals if t.maximum is not None and t.used >= NEAR * t.maximum]
    breaks = [
        off
        for off in found.time_off
        if not off.done and off.start_by is not None and off.start_by <= today + BREAK_AHEAD
    ]
    return tuple(caps), tuple(breaks)
