"""Questions about a record as a whole: at a glance, what is kept, how it is deleted."""

from sqlmodel import Session, col, func, select

from core.audience import Relation
from core.consent.standing import may_consent
from core.ledger.asked.answers import (
    ConsentAnswer,
    DataAnswer,
    DeleteAnswer,
    Glance,
    KeptOf,
    NotUnderstood,
    Refused,
    Reply,
    StatsAnswer,
)
from core.ledger.asked.arms import on_days
from core.ledger.asked.meaning import meant
from core.ledger.asked.question import Question
from core.ledger.history import games, standing_outings
from core.ledger.holds import HURTS
from core.ledger.people import guardians_of, teams_of
from core.ledger.who import Arm
from core.mix import Window, windows
from core.model import Feeling, PainReport, Pitcher, key
from core.reading.asking import Topic
from core.rest.breakpoints import PER_INNING_ABOVE

#: So many outings are shown at a glance.
LAST = 5


def answer(question: Question, arms: list[Arm]) -> Reply:
    """The record of these pitchers at a glance, or what is kept of them."""
    own = all(arm in question.crew.related(Relation.SELF) for arm in arms)
    pitchers = question.pitchers(arms)
    if question.asked.topic is Topic.STATS:
        return StatsAnswer(tuple(_glance(question, one) for one in pitchers), own)
    return DataAnswer(tuple(_kept(question, one) for one in pitchers), own)


def _glance(question: Question, pitcher: Pitcher) -> Glance:
    ((_day, (today,)),) = on_days(
        question.session, [pitcher], [question.today], question.books, PER_INNING_ABOVE
    )
    outings = standing_outings(question.session, key(pitcher))
    starts = [team.season_start for team in teams_of(question.session, {key(pitcher)})]
    first = min((start for start in starts if start is not None), default=None)
    season = windows(games(outings), question.today, first)[Window.SEASON]
    return Glance(today, tuple(reversed(outings[-LAST:])), len(outings), season)


def _kept(question: Question, pitcher: Pitcher) -> KeptOf:
    session, one = question.session, key(pitcher)
    outings = standing_outings(session, one)
    reports = session.exec(
        select(func.count())
        .select_from(PainReport)
        .where(
            PainReport.pitcher_id == one,
            col(PainReport.feeling).in_([*HURTS, Feeling.TIRED]),
        )
    ).one()
    return KeptOf(
        pitcher,
        len(outings),
        outings[0].on if outings else None,
        reports,
        tuple(person.name for person in guardians_of(session, {one})),
        tuple(team.name for team in teams_of(session, {one})),
        may_delete=_speaks_for(question, pitcher),
    )


def _speaks_for(question: Question, pitcher: Pitcher) -> bool:
    asker = key(question.crew.person)
    return asker in {key(one) for one in may_consent(question.session, pitcher, question.today)}


def how_to_delete(question: Question) -> Reply:
    """Whose record the asker may have deleted; a minor is told who may, the staff whom to ask.

    It holds without consent too: a record that is shut can still be deleted.
    """
    people = meant(question)
    if isinstance(people, NotUnderstood) and question.crew.is_staff and not people.typed:
        return DeleteAnswer((), is_staff=True)
    if isinstance(people, Refused | NotUnderstood):
        return people
    pitchers = question.pitchers(people)
    mine = tuple((key(one), one.name) for one in pitchers if _speaks_for(question, one))
    own = {arm.pitcher_id for arm in question.crew.related(Relation.SELF)}
    asked = {key(one) for one in pitchers}
    named = _guardians(question.session, own) if not mine and asked <= own else ()
    return DeleteAnswer(mine, named, question.crew.is_staff)


def consent(question: Question) -> Reply:
    """The records to which the asker may agree, those without consent first."""
    people = meant(question)
    if isinstance(people, Refused | NotUnderstood):
        return people
    open_first = sorted(people, key=lambda arm: arm.consented)
    pitchers = question.pitchers(open_first)
    mine = tuple(key(one) for one in pitchers if _speaks_for(question, one))
    return ConsentAnswer(mine, question.today)


def _guardians(session: Session, pitcher_ids: set[int]) -> tuple[str, ...]:
    return tuple(person.name for person in guardians_of(session, pitcher_ids))
