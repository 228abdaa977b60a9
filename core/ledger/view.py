"""What a line put into the record, as one viewer may read it."""

from collections.abc import Set
from dataclasses import dataclass, replace
from datetime import timedelta

from sqlmodel import Session, col, select

from core.audience import Relation, View, may_see
from core.ledger.binding import Books, books_for
from core.ledger.clearance import arm_status
from core.ledger.corrections import Correction, corrections
from core.ledger.crew import load_crew
from core.ledger.firsts import is_first_read
from core.ledger.history import (
    game_of,
    games,
    standing_outings,
    thrower_of,
    thrown,
)
from core.ledger.joined import whole_of
from core.ledger.logged import Logged
from core.ledger.people import teams_of
from core.ledger.question import Question, asked_about
from core.mix import Mix, Window, mix_of, windows
from core.model import Line, Outing, PainReport, Person, Pitcher, Team, key
from core.pain.status import NOTHING_STANDS, ArmStatus
from core.rest import Reason, RestAnswer, RestError, answer, breaches
from core.rulebooks import RuleBookError


@dataclass(frozen=True, slots=True)
class Standing:
    """Where an arm stands after one outing: its mix and the rest it owes by rule."""

    outing_mix: Mix
    windows: dict[Window, Mix]
    rest: RestAnswer | None
    #: Why no rest could be worked out, in the rule books' words.
    rest_problem: str | None
    #: The rules that this day's outings went over; such an outing is stored all the same.
    broken: tuple[Reason, ...] = ()
    #: A larger count of what may be the same outing, which owes the rest until that is answered.
    larger: int | None = None
    #: Whether its count is no larger than that of an earlier line about the same outing, so
    #: that it went over nothing that the earlier one did not.
    told_before: bool = False


@dataclass(frozen=True, slots=True)
class PitcherView:
    """One pitcher's part of a line; what the viewer may not see is absent."""

    pitcher: Pitcher
    outings: tuple[tuple[Outing, Standing | None], ...]
    reports: tuple[PainReport, ...]
    #: What stands against throwing on the day of the line.
    status: ArmStatus = NOTHING_STANDS
    corrections: tuple[Correction, ...] = ()


@dataclass(frozen=True, slots=True)
class LineView:
    """A line as one viewer may read it."""

    line: Line
    team: Team | None
    pitchers: tuple[PitcherView, ...]
    questions: tuple[Question, ...]
    #: Whether it is the first line of its author that was read.
    is_first: bool


def line_view(
    session: Session, line: Line, viewer: Person | None, books: Books, of: Set[int] | None = None
) -> LineView:
    """The line for `viewer`; for the staff of the team when no viewer is given.

    With `of` it shows these pitchers alone, and no question that is about or offers another.
    """
    rows = _standing_rows(session, line)
    pitchers = []
    for pitcher_id, (outings, reports) in rows.items():
        if of is not None and pitcher_id not in of:
            continue
        relations = _relations(session, viewer, pitcher_id)
        pitcher = session.get_one(Pitcher, pitcher_id)
        record, arm = may_see(relations, View.RECORD), may_see(relations, View.ARM)
        seen = outings if record or may_see(relations, View.OWN_LINE) else []
        standing = {}
        if record:
            counted = standing_outings(session, pitcher_id)
            before = {key(outing) for outing in seen if _told_before(session, outing)}
            seen = [whole_of(outing, counted) for outing in seen]
            standing = _standings(session, pitcher, seen, counted, books)
            standing = {
                one: replace(found, told_before=one in before) for one, found in standing.items()
            }
        pitchers.append(
            PitcherView(
                pitcher,
                tuple((outing, standing.get(key(outing))) for outing in seen),
                tuple(reports) if arm and pitcher.consent_on is not None else (),
                _status(session, pitcher, line) if arm else NOTHING_STANDS,
                corrections(session, line, pitcher_id) if record else (),
            )
        )
    asked = [one for one in line.questions if of is None or asked_about(one) <= of]
    questions = tuple(Question.from_json(stored) for stored in asked)
    first = is_first_read(session, line)
    return LineView(line, line_team(session, line), tuple(pitchers), questions, first)


def _status(session: Session, pitcher: Pitcher, line: Line) -> ArmStatus:
    return arm_status(session, pitcher, line.posted_at.date())


def line_team(session: Session, line: Line) -> Team | None:
    """The team whose channel a line stands in, else the first of its author's teams."""
    if line.team_id is not None:
        return session.get(Team, line.team_id)
    author = session.get(Person, line.author_id) if line.author_id is not None else None
    teams = load_crew(session, author, None).teams if author is not None else ()
    return teams[0] if teams else None


def _standing_rows(
    session: Session, line: Line
) -> dict[int, tuple[list[Outing], list[PainReport]]]:
    rows: dict[int, tuple[list[Outing], list[PainReport]]] = {}
    for outing in session.exec(
        select(Outing).where(Outing.line_id == key(line), col(Outing.withdrawn_at).is_(None))
        .order_by(col(Outing.on), col(Outing.id))
    ):  # fmt: skip
        rows.setdefault(outing.pitcher_id, ([], []))[0].append(outing)
    for report in session.exec(
        select(PainReport).where(
            PainReport.line_id == key(line), col(PainReport.withdrawn_at).is_(None)
        ).order_by(col(PainReport.id))
    ):  # fmt: skip
        rows.setdefault(report.pitcher_id, ([], []))[1].append(report)
    return rows


def _relations(session: Session, viewer: Person | None, pitcher_id: int) -> frozenset[Relation]:
    if viewer is None:
        return frozenset({Relation.STAFF})
    return load_crew(session, viewer, None).relations.get(pitcher_id, frozenset())


def _standings(
    session: Session, pitcher: Pitcher, seen: list[Outing], record: list[Logged], books: Books
) -> dict[int, Standing]:
    starts = [team.season_start for team in teams_of(session, {key(pitcher)})]
    season_start = min((start for start in starts if start is not None), default=None)
    standings = {}
    for outing in seen:
        rest, problem = rest_after(session, outing, record, pitcher, books)
        standings[key(outing)] = Standing(
            outing_mix=mix_of([game_of(outing)]),
            windows=windows(games(record), outing.on, season_start),
            rest=rest,
            rest_problem=problem,
            broken=broken_rules(session, outing, record, pitcher, books)
            if outing is _last_of_day(outing, seen)
            else (),
            larger=_larger(outing, record),
        )
    return standings


def _told_before(session: Session, outing: Outing) -> bool:
    first = session.get(Outing, outing.joins) if outing.joins is not None else None
    return first is not None and (outing.pitches or 0) <= (first.pitches or 0)


def _larger(outing: Outing, record: list[Logged]) -> int | None:
    """The largest count that another log of this outing may have, where it is larger."""
    beside = [other for one in record if one.id == key(outing) for other in one.open_logs]
    most = max((other.pitches or 0 for other in beside), default=0)
    return most if outing.pitches is not None and most > outing.pitches else None


def _last_of_day(outing: Outing, seen: list[Outing]) -> Outing:
    """Of a day's outings in one line the last tells what the day went over."""
    return [one for one in seen if one.on == outing.on][-1]


def broken_rules(
    session: Session, outing: Outing, record: list[Logged], pitcher: Pitcher, books: Books
) -> tuple[Reason, ...]:
    """The rules that the outings of this one's day went over; none where no book answers."""
    so_far = thrown([one for one in record if one.on <= outing.on])
    try:
        binding = books_for(session, pitcher, outing.on, books)
        return breaches(binding, thrower_of(pitcher), so_far, outing.on)
    except (RestError, RuleBookError):
        return ()  # the answer says why, where it speaks of rest


def rest_after(
    session: Session, outing: Outing, record: list[Logged], pitcher: Pitcher, books: Books
) -> tuple[RestAnswer | None, str | None]:
    """The rest owed by the record up to the day of an outing, asked for the day after it.

    The second value says, in words, why there is no answer.
    """
    day_after = outing.on + timedelta(days=1)
    so_far = thrown([one for one in record if one.on <= outing.on])
    try:
        binding = books_for(session, pitcher, day_after, books)
        return answer(binding, thrower_of(pitcher), so_far, day_after), None
    except (RestError, RuleBookError) as problem:
        return None, str(problem)
