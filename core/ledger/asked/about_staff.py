"""Questions about a whole staff: who can throw, who is left, how to cover a weekend."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import date, time

from core.audience import Relation
from core.ledger.asked.answers import NotUnderstood, PlanAnswer, Reply, SheetAnswer
from core.ledger.asked.arms import Gathered, gather, on_days
from core.ledger.asked.meaning import find_one
from core.ledger.asked.question import Question
from core.ledger.who import Arm
from core.model import Pitcher, key
from core.reading.asking import PlannedGame, Topic
from core.rest.breakpoints import per_inning
from core.rest.plan import expected_pitches, weekend_plan
from core.rest.schedules import Game

#: Innings of a game whose length nobody said: seven, the usual length of youth games from 13 up
#: (common practice, no source).
INNINGS = 7


def answer(question: Question) -> Reply:
    """The answer to a question about the staff of the channel's team, or of the asker's teams."""
    staff = _staff(question)
    if isinstance(staff, NotUnderstood):
        return staff
    asked = question.asked
    if asked.topic is Topic.PLAN:
        return _plan(question, staff)
    left = asked.topic is Topic.LEFT
    days = [question.today] if left else question.days
    inning = per_inning(_oldest(staff, days[0]))
    sheet = on_days(question.session, staff, days, question.books, inning)
    need = asked.pitches or (asked.innings * inning if asked.innings else None)
    without = _no_record(question)
    return SheetAnswer(
        tuple(sheet),
        left,
        tuple(arm.name for arm in without),
        tuple(arm.pitcher_id for arm in without),
        need,
    )


def _staff(question: Question) -> list[Pitcher] | NotUnderstood:
    """The arms with consent that the asker coaches, those named as left out excepted."""
    crew, asked = question.crew, question.asked
    left_out = set()
    for name in asked.without:
        found = find_one(question, name)
        if isinstance(found, NotUnderstood):
            return found
        left_out.add(found.pitcher_id)
    arms = [
        arm
        for arm in (crew.arms if asked.team else crew.local_arms())
        if Relation.STAFF in crew.relations[arm.pitcher_id]
        and arm.consented
        and arm.pitcher_id not in left_out
        and _is_of(question, arm.pitcher_id)
    ]
    return question.pitchers(arms)


def _no_record(question: Question) -> list[Arm]:
    crew = question.crew
    return [
        arm
        for arm in (crew.arms if question.asked.team else crew.local_arms())
        if Relation.STAFF in crew.relations[arm.pitcher_id]
        and not arm.consented
        and _is_of(question, arm.pitcher_id)
    ]


def _is_of(question: Question, pitcher_id: int) -> bool:
    """Whether a pitcher throws for the team that the question names ("14u"), if it names one."""
    named = question.asked.team
    if named is None:
        return True
    teams = [team for team in question.crew.teams if named.casefold() in team.name.casefold()]
    return any(key(team) in question.crew.teams_of[pitcher_id] for team in teams)


def _oldest(staff: list[Pitcher], on: date) -> int:
    """The oldest age in whole years; 18 for an empty staff."""
    ages = [
        on.year - one.birth_date.year
        - ((on.month, on.day) < (one.birth_date.month, one.birth_date.day))
        for one in staff
    ]  # fmt: skip
    return max(ages, default=18)


def _plan(question: Question, staff: list[Pitcher]) -> Reply:
    asked = question.asked
    if not asked.games:
        return NotUnderstood(asked, unclear=("games",))
    past = [
        one for one in asked.games if one.on == question.today and one.at and one.at < question.time
    ]
    asked = replace(asked, games=tuple(one for one in asked.games if one not in past))
    if not asked.games:
        return NotUnderstood(asked, unclear=("past games",), past=_when(past))
    guests: list[Pitcher] = []
    for name in asked.guests:
        found = find_one(question, name)
        if isinstance(found, NotUnderstood):
            return found
        guests += question.pitchers([found])
    age = _oldest(staff, asked.games[0].on)
    games = _games(asked.games, age)
    first = asked.games[0].on
    own = [gather(question.session, one, first, question.books) for one in staff]
    extra = [gather(question.session, one, first, question.books) for one in guests]
    plan = weekend_plan(
        games,
        [one.arm for one in own if _usable(one) and one.arm is not None],
        inning=per_inning(age),
        guests=[one.arm for one in extra if _usable(one) and one.arm is not None],
    )
    return PlanAnswer(
        plan,
        names={str(key(one)): one.name for one in [*staff, *guests]},
        games={
            game.key: (game.on, planned.at.strftime("%H:%M") if planned.at else "", game.pitches)
            for game, planned in zip(games, asked.games, strict=True)
        },
        past=_when(past),
        not_cleared=tuple(one.pitcher.name for one in [*own, *extra] if one.status.bars_pitching),
    )


def _when(games: Sequence[PlannedGame]) -> tuple[tuple[date, time], ...]:
    return tuple((one.on, one.at) for one in games if one.at is not None)


def _usable(one: Gathered) -> bool:
    return not one.status.bars_pitching


def _games(planned: tuple[PlannedGame, ...], age: int) -> list[Game]:
    """The games in order, numbered within their day, with what each is expected to take."""
    games: list[Game] = []
    for place, one in enumerate(planned):
        number = 1 + sum(game.on == one.on for game in games)
        pitches = one.pitches or expected_pitches(one.innings or INNINGS, age)
        games.append(Game(f"g{place}", one.on, number, pitches, one.only_after_win))
    return games
