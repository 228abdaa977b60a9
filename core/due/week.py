"""The week before a day, for one arm: what was thrown, the mix, the spin reps, the rest."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from sqlmodel import Session, col, func, select

from core.due.spin import SpinWeek, spin_week
from core.ledger.asked import ArmDay
from core.ledger.asked.arms import Gathered, gather
from core.ledger.binding import Books, books_for
from core.ledger.history import games
from core.mix import Mix, mix_of
from core.model import Outing, PainReport, Pitcher, key
from core.rest import RestAnswer, RestError, TimeOff, Total, answer, standing
from core.rulebooks import RuleBookError

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

    `free_on` are the days of the coming week on which nothing on record speaks against him.
    """

    today: ArmDay
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
    near_caps: tuple[Total, ...] = ()
    breaks: tuple[TimeOff, ...] = ()

    @property
    def pitcher(self) -> Pitcher:
        """Whose week it is."""
        return self.today.pitcher


def arm_week(session: Session, pitcher: Pitcher, today: date, books: Books) -> ArmWeek:
    """The seven days before `today` (local) and the seven from it on."""
    one = gather(session, pitcher, today, books)
    last = [o for o in one.outings if today - DAYS <= o.on < today]
    mound = [outing for outing in last if outing.kind in MOUND]
    last_line = _last_line(session, pitcher, one.outings, today)
    totals, breaks = _near(one, today)
    return ArmWeek(
        today=_on(session, one, today, books),
        outings=len(mound),
        pitches=sum(outing.pitches or 0 for outing in mound),
        uncounted=sum(outing.pitches is None for outing in mound),
        mix=mix_of(games(last)),
        before=mix_of(games([o for o in one.outings if today - 2 * DAYS <= o.on < today - DAYS])),
        spin=spin_week(pitcher, last),
        last_line=last_line,
        lines_last_week=last_line is not None and last_line >= today - DAYS,
        free_on=frozenset(
            day
            for day in (today + timedelta(days=n) for n in range(7))
            if _on(session, one, day, books).may_throw
        ),
        near_caps=totals,
        breaks=breaks,
    )


def _on(session: Session, one: Gathered, day: date, books: Books) -> ArmDay:
    """The pitcher on a day, if nothing is thrown until then."""
    rest: RestAnswer | None = None
    problem = one.problem
    if one.arm is not None:
        try:
            binding = books_for(session, one.pitcher, day, books)
            rest = answer(binding, one.arm.thrower, one.arm.outings, day)
        except (RestError, RuleBookError) as wrong:
            problem = str(wrong)
    return ArmDay(one.pitcher, day, rest, problem, status=one.status)


def _last_line(
    session: Session, pitcher: Pitcher, outings: Sequence[Outing], today: date
) -> date | None:
    reports = select(func.max(col(PainReport.on))).where(
        PainReport.pitcher_id == key(pitcher),
        col(PainReport.withdrawn_at).is_(None),
        col(PainReport.on) <= today,
    )
    days = [outing.on for outing in outings if outing.on <= today]
    felt: date | None = session.exec(reports).one()
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
