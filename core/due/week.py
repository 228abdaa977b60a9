"""The week before a day, for one arm: what was thrown, the mix, the spin reps, the rest."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from sqlmodel import Session, col, func, select

from core.due.spin import SpinWeek, TeamPlans, spin_week
from core.ledger.asked.arms import Staff, staff_of
from core.ledger.binding import Books
from core.ledger.history import games
from core.ledger.logged import Logged
from core.mix import Mix, mix_of
from core.model import PainReport, Pitcher, key
from core.pain.status import ArmStatus
from core.rest import Outlook, RestError, TimeOff, Total
from core.rulebooks import RuleBook, RuleBookError

DAYS = timedelta(days=7)
#: Kinds of outing that are thrown from the mound; of unknown kind counts until it is known.
MOUND = frozenset({"game", "bullpen", "live", None})
#: A cap is near from this share of it on; no source, the coach reads the numbers beside it.
NEAR = 0.9
#: A break that must begin within this time is mentioned.
BREAK_AHEAD = timedelta(days=28)


@dataclass(frozen=True, slots=True)
class Rest:
    """Today by the books: the first date by rule, or why no book answers (`problem`).

    `near_caps` are caps of the year that are nearly used up, `breaks` those that must begin soon.
    """

    next_eligible: date | None = None
    problem: str | None = None
    near_caps: tuple[Total, ...] = ()
    breaks: tuple[TimeOff, ...] = ()


@dataclass(frozen=True, slots=True)
class ArmWeek:
    """One pitcher's week; `mix` and `before` are last week's games and those of the week before.

    `free_on` are the days of the coming week on which nothing on record speaks against him.
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
    rest: Rest

    @property
    def may_throw(self) -> bool:
        """Whether nothing on record speaks against it today; the coach decides all the same."""
        return self.on in self.free_on


def arm_weeks(
    session: Session,
    pitchers: Sequence[Pitcher],
    today: date,
    books: Books,
    plans: TeamPlans,
) -> tuple[ArmWeek, ...]:
    """Of each pitcher the seven days before `today` (local) and the seven from it on."""
    staff = staff_of(session, pitchers, today, today + DAYS)
    felt = _newest_reports(session, pitchers, today)
    return tuple(_arm_week(staff, one, today, felt.get(key(one)), books, plans) for one in pitchers)


def _arm_week(
    staff: Staff,
    pitcher: Pitcher,
    today: date,
    felt: date | None,
    books: Books,
    plans: TeamPlans,
) -> ArmWeek:
    one = staff.on(pitcher, today, books)
    recent = [o for o in one.outings if today - 2 * DAYS <= o.on < today]
    last = [o for o in recent if today - DAYS <= o.on]
    mound = [outing for outing in last if outing.kind in MOUND]
    last_line = _last_line(one.outings, felt, today)
    looks = dict(looks_ahead(staff, pitcher, today, books))
    free_on = {day for day, outlook in looks.items() if allows(outlook, day)}
    rest = _rest(looks[today], today)
    return ArmWeek(
        pitcher,
        today,
        one.status,
        outings=len(mound),
        pitches=sum(outing.pitches or 0 for outing in mound),
        uncounted=sum(outing.pitches is None for outing in mound),
        mix=mix_of(games(last)),
        before=mix_of(games([o for o in recent if o.on < today - DAYS])),
        spin=spin_week(pitcher, last, plans.of(pitcher)),
        last_line=last_line,
        lines_last_week=last_line is not None and last_line >= today - DAYS,
        free_on=frozenset() if one.status.bars_pitching else frozenset(free_on),
        rest=rest,
    )


def looks_ahead(
    staff: Staff, pitcher: Pitcher, today: date, books: Books
) -> Iterator[tuple[date, Outlook | str]]:
    """The coming week if nothing is thrown until then: the books' outlook, or why there is none.

    Other books may bind on other days; one outlook serves days alike.
    """
    of: Sequence[RuleBook] = ()
    outlook: Outlook | None = None
    for day in (today + timedelta(days=n) for n in range(7)):
        one = staff.on(pitcher, day, books)
        if one.arm is None:
            yield day, one.problem
            continue
        try:
            if outlook is None or one.arm.books != of:
                of = one.arm.books
                outlook = Outlook(of, one.arm.thrower, one.arm.outings)
            yield day, outlook
        except RestError as wrong:
            outlook = None
            yield day, str(wrong)


def allows(outlook: Outlook | str, day: date) -> bool:
    """Whether the books allow a pitch on a day; where no book answers, they do not."""
    try:
        return isinstance(outlook, Outlook) and outlook.allows(day)
    except (RestError, RuleBookError):
        return False  # where it is today, the line of the pitcher says so


def _rest(outlook: Outlook | str, today: date) -> Rest:
    """Where the books put him, the caps nearly used up and the breaks that must begin soon."""
    if isinstance(outlook, str):
        return Rest(problem=outlook)
    try:
        following, found = outlook.next_eligible(today), outlook.standing(today)
    except (RestError, RuleBookError) as wrong:
        return Rest(problem=str(wrong))
    caps = [t for t in found.totals if t.maximum is not None and t.used >= NEAR * t.maximum]
    breaks = [
        off
        for off in found.time_off
        if not off.done and off.start_by is not None and off.start_by <= today + BREAK_AHEAD
    ]
    return Rest(following, None, tuple(caps), tuple(breaks))


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
