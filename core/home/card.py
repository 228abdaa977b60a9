"""One arm as his own, or his parents', Home tab tells of it."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from sqlmodel import Session

from core.alerts import Key
from core.due.spin import SpinWeek, WeekPlan, plan_among, spin_week, team_plans
from core.home.sent import Sent
from core.ledger.asked.answers import ArmDay
from core.ledger.asked.arms import Gathered, Staff, staff_of, two_counts_on
from core.ledger.binding import Books
from core.ledger.history import games
from core.ledger.logged import Logged
from core.ledger.settings import limits_in, settings_of
from core.mix import Mix, Window, windows
from core.model import Pitcher, key
from core.rest import RestAnswer, RestError, answer
from core.rulebooks import RuleBookError

#: So many outings are listed, the newest ones.
LAST = 5


@dataclass(frozen=True, slots=True)
class ArmCard:
    """Rest, spin reps of this week (Monday to today), mix, the coach's line, last outings.

    `line` is the coach's highest share of breaking balls, percent; none while it is off.
    """

    today: ArmDay
    spin: SpinWeek | None
    mix: Mapping[Window, Mix]
    line: int | None
    outings: tuple[Logged, ...]
    sent: Sent | None = None

    @property
    def pitcher(self) -> Pitcher:
        """Whose card it is."""
        return self.today.pitcher


def cards(
    session: Session,
    pitchers: Sequence[Pitcher],
    today: date,
    books: Books,
    sent: Mapping[int, Sent],
) -> tuple[ArmCard, ...]:
    """The cards of these pitchers on a local day; `sent` is what went to each of them lately."""
    if not pitchers:
        return ()
    staff = staff_of(session, pitchers, today, today)
    teams = {key(team): team for of in staff.bindings.teams.values() for team in of}
    settings = settings_of(session, teams)
    plans = {one: team_plans(session, one) for one in teams}
    made = []
    for pitcher in pitchers:
        one = staff.on(pitcher, today, books)
        own_teams = staff.bindings.teams[key(pitcher)]
        lines = [limits_in(settings[key(team)], key(pitcher))[Key.MIX] for team in own_teams]
        starts = [team.season_start for team in own_teams if team.season_start is not None]
        made.append(
            ArmCard(
                arm_day(staff, one, today),
                _this_week(
                    one, today, plan_among(plans, [key(team) for team in own_teams], pitcher)
                ),
                windows(games(one.outings), today, min(starts, default=None)),
                min((line for line in lines if line is not None), default=None),
                tuple(reversed([o for o in one.outings if o.on <= today][-LAST:])),
                sent.get(key(pitcher)),
            )
        )
    return tuple(made)


def arm_day(staff: Staff, one: Gathered, on: date) -> ArmDay:
    """What the books and the pain on record say of an arm on a day."""
    rest: RestAnswer | None = None
    problem = one.problem
    if one.arm is not None:
        try:
            rest = answer(one.arm.books, one.arm.thrower, one.arm.outings, on)
        except (RestError, RuleBookError) as wrong:
            problem = str(wrong)
    return ArmDay(
        one.pitcher,
        on,
        rest,
        problem,
        status=one.status,
        limit=staff.bindings.limit(one.pitcher, on),
        has_record=bool(one.outings),
        two_counts_on=two_counts_on(one.outings, on),
    )


def _this_week(one: Gathered, today: date, plan: WeekPlan) -> SpinWeek | None:
    monday = today - timedelta(days=today.weekday())
    return spin_week(one.pitcher, [o for o in one.outings if monday <= o.on <= today], plan)
