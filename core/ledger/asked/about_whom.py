"""Of which pitchers the answer to a question, or a list, speaks: who may read it follows."""

from collections.abc import Mapping

from sqlmodel import Session

from core.audience import Relation
from core.ledger.asked.from_line import asked_here, chosen_in, says_a_word
from core.ledger.asked.last_line import speaks_of_last
from core.ledger.asked.meaning import CHILD, ME
from core.ledger.crew import Crew, crew_of
from core.ledger.settings import listed_here
from core.ledger.who import find
from core.model import Line, LineState, key
from core.reading.asking import Asked, Topic


def arms_asked_about(session: Session, line: Line) -> set[int]:
    """The pitchers (ids) whom the answer to a line names beside those of the line's team."""
    crew = crew_of(session, line)
    if crew is None:
        return set()
    if line.state == LineState.ORDER:
        arms = [arm for _, _, arm in listed_here(session, line, crew)]
        return {arm.pitcher_id for arm in arms if arm is not None}
    if speaks_of_last(session, line) or says_a_word(session, line, crew) is not None:
        return set()
    found: set[int] = set()
    asked = asked_here(session, line, crew)
    while asked is not None:
        found |= _named(asked, crew, chosen_in(line))
        asked = asked.then
    return found


def _named(asked: Asked, crew: Crew, chosen: Mapping[str, int]) -> set[int]:
    found: set[int] = set()
    for typed in (*asked.who, *asked.guests):
        if typed in {ME, CHILD}:
            related = crew.related(Relation.SELF) + crew.related(Relation.GUARDIAN)
            found |= {arm.pitcher_id for arm in related}
            continue
        if typed in chosen:
            found.add(chosen[typed])
            continue
        arms = find(typed, crew.local_arms()) or find(typed, crew.arms)
        found |= {arm.pitcher_id for arm in arms}
    if asked.topic is Topic.STAFF and asked.team:
        named = {key(one) for one in crew.teams if asked.team.casefold() in one.name.casefold()}
        found |= {one for one, teams in crew.teams_of.items() if named.intersection(teams)}
    return found
