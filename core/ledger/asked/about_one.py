"""Questions about one pitcher: when, how many, what if, the season so far."""

from collections.abc import Sequence
from datetime import date, timedelta

from core.audience import Relation
from core.ledger.asked.answers import (
    ArmDay,
    Counts,
    MostAnswer,
    NotUnderstood,
    Reply,
    SeasonAnswer,
    ThrownAnswer,
    WhatIfAnswer,
    WhenAnswer,
)
from core.ledger.asked.arms import gather, on_days
from core.ledger.asked.period import period
from core.ledger.asked.question import Question
from core.ledger.clearance import arm_status
from core.ledger.history import days_of_throws, games, standing_outings
from core.ledger.logged import Logged
from core.ledger.people import teams_of
from core.ledger.rest_day_words import rest_day_words
from core.ledger.who import Arm
from core.load import WeekLoad, week_load
from core.mix import windows
from core.model import Pitcher, key
from core.reading.asking import Topic
from core.rest import RestError, Thrown
from core.rest.breakpoints import PER_INNING_ABOVE
from core.rest.standing import standing
from core.rest.whatif import most_leaving, what_if
from core.rulebooks import RuleBookError


def answer(question: Question, arms: list[Arm]) -> Reply:
    """The answer about these pitchers; every one of them may be asked about."""
    pitchers = question.pitchers(arms)
    topic = question.asked.topic
    if topic is Topic.THROWN:
        return _thrown(question, pitchers)
    if topic in {Topic.INNINGS, Topic.MIX}:
        return _season(question, pitchers[0])
    if topic is Topic.WHAT_IF or (topic is Topic.REST and question.asked.pitches is not None):
        return _what_if(question, pitchers[0])
    if topic is Topic.MOST:
        return _most(question, pitchers[0])
    return _when(question, arms, pitchers)


def _when(question: Question, arms: list[Arm], pitchers: list[Pitcher]) -> WhenAnswer:
    found: list[ArmDay] = []
    for _day, line in on_days(
        question.session, pitchers, question.days, question.books, PER_INNING_ABOVE
    ):
        found += line
    teams = teams_of(question.session, {key(one) for one in pitchers})
    own, staffs = (question.crew.related(one) for one in (Relation.SELF, Relation.STAFF))
    return WhenAnswer(
        tuple(found),
        question.asked.activity,
        rest_day_words(question.session, teams),
        own=all(arm in own for arm in arms),
        of_the_arm=question.asked.topic is Topic.ARM,
        for_family=not all(arm in staffs for arm in arms),
    )


def _thrown(question: Question, pitchers: list[Pitcher]) -> ThrownAnswer:
    counts = []
    first, last = question.today, question.today
    for pitcher in pitchers:
        outings = standing_outings(question.session, key(pitcher))
        latest = max((o.on for o in outings if o.on <= question.today), default=None)
        start = _season_start(question, pitcher)
        first, last = period(question.asked, question.today, start, latest)
        status = arm_status(question.session, pitcher, question.today)
        chosen = [outing for outing in outings if first <= outing.on <= last]
        counts.append(Counts(pitcher, tuple(chosen), _load(question, pitcher, outings), status))
    return ThrownAnswer(first, last, tuple(counts))


def _load(question: Question, pitcher: Pitcher, outings: Sequence[Logged]) -> WeekLoad | None:
    """This week's throws beside the weeks before: for the staff alone."""
    if Relation.STAFF not in question.crew.relations[key(pitcher)]:
        return None
    return week_load(days_of_throws(outings), question.today)


def _season_start(question: Question, pitcher: Pitcher) -> date | None:
    starts = [team.season_start for team in teams_of(question.session, {key(pitcher)})]
    return min((start for start in starts if start is not None), default=None)


def _season(question: Question, pitcher: Pitcher) -> SeasonAnswer:
    one = gather(question.session, pitcher, question.today, question.books)
    start = _season_start(question, pitcher)
    mix = windows(games(one.outings), question.today, start)
    load = _load(question, pitcher, one.outings)
    if one.arm is None:
        return SeasonAnswer(pitcher, question.today, (), mix, one.problem, load, one.status)
    try:
        so_far = standing(one.arm.books, one.arm.thrower, one.arm.outings, question.today)
    except (RestError, RuleBookError) as problem:
        return SeasonAnswer(pitcher, question.today, (), mix, str(problem), load, one.status)
    return SeasonAnswer(pitcher, question.today, so_far.totals, mix, load=load, status=one.status)


def _what_if(question: Question, pitcher: Pitcher) -> Reply:
    if question.asked.pitches is None:
        return NotUnderstood(question.asked, unclear=("pitches",))
    on = question.days[0]
    one = gather(question.session, pitcher, on, question.books)
    if one.arm is None:
        return WhatIfAnswer(pitcher, None, one.problem, one.status)
    planned = Thrown(on, pitches=question.asked.pitches)
    record = one.arm.outings
    if question.asked.topic is Topic.REST:  # a count that was thrown: it may be on record already
        record = [outing for outing in record if outing.on < on]
    try:
        found = what_if(one.arm.books, one.arm.thrower, record, planned)
    except (RestError, RuleBookError) as problem:
        return WhatIfAnswer(pitcher, None, str(problem), one.status)
    return WhatIfAnswer(pitcher, found, status=one.status)


def _most(question: Question, pitcher: Pitcher) -> Reply:
    on = question.days[0]
    later = question.asked.later or on + timedelta(days=1)
    one = gather(question.session, pitcher, on, question.books)
    if one.arm is None:
        return MostAnswer(pitcher, on, later, None, one.problem, one.status)
    try:
        most = most_leaving(one.arm.books, one.arm.thrower, one.arm.outings, on, later)
    except (RestError, RuleBookError) as problem:
        return MostAnswer(pitcher, on, later, None, str(problem), one.status)
    return MostAnswer(pitcher, on, later, most, status=one.status)
