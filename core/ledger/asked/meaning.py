"""Who a question is about, and whether the asker may know."""

from core.audience import Relation, View, may_see
from core.ledger.asked.answers import NotUnderstood, Refused
from core.ledger.asked.question import Question
from core.ledger.crew import Crew
from core.ledger.who import Arm, find, near
from core.model import key

ME, CHILD = "me", "child"


def meant(question: Question) -> list[Arm] | Refused | NotUnderstood:
    """The pitchers a question is about.

    Somebody who may not know is refused in the same words whether that pitcher exists or not.
    """
    crew, who = question.crew, question.asked.who
    own, children = crew.related(Relation.SELF), crew.related(Relation.GUARDIAN)
    if who == (ME,):
        return own or children or refused(question)
    if who == (CHILD,):
        return children or (_ask_who(question) if crew.is_staff else own or refused(question))
    if not who:
        return own or children or (_ask_who(question) if crew.is_staff else refused(question))
    found: list[Arm] = []
    for typed in who:
        one = find_one(question, typed)
        if isinstance(one, NotUnderstood):
            return one if crew.is_staff else refused(question)
        found.append(one)
    return found


def find_one(question: Question, typed: str) -> Arm | NotUnderstood:
    """The one pitcher in the asker's sight whom a name as typed means."""
    crew = question.crew
    seen = [arm for arm in crew.arms if may_see(crew.relations[arm.pitcher_id], View.RECORD)]
    here = [arm for arm in crew.local_arms() if arm in seen]
    found = find(typed, here) or find(typed, seen)
    if len(found) == 1:
        return found[0]
    picked = [arm for arm in seen if arm.pitcher_id == question.chosen.get(typed)]
    if picked:
        return picked[0]
    # In a channel of one team no pitcher of another one is offered.
    choices = found or near(typed, here if crew.here is not None else seen)
    offered = tuple((arm.pitcher_id, arm.name) for arm in choices)
    may_add = bool(crew.coaches) and not found
    return NotUnderstood(question.asked, typed=typed, offered=offered, may_add=may_add)


def refused(question: Question, *, staff_only: bool = False) -> Refused:
    """The refusal, naming only those whom the asker may ask about."""
    crew = question.crew
    seen = [arm.name for arm in crew.arms if may_see(crew.relations[arm.pitcher_id], View.RECORD)]
    return Refused(tuple(seen), staff_only, empty_roster=has_empty_roster(crew))


def has_empty_roster(crew: Crew) -> bool:
    """Whether a coach's teams, or the team in whose channel he asks, hold no pitcher yet."""
    arms = [arm for arm in crew.local_arms() if Relation.STAFF in crew.relations[arm.pitcher_id]]
    here = {key(crew.here)} if crew.here is not None else crew.coaches
    return bool(here & crew.coaches) and not arms


def _ask_who(question: Question) -> NotUnderstood:
    return NotUnderstood(question.asked, unclear=("who",))
