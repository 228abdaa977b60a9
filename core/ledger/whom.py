"""Who an entry is about: the author, a child, a name as typed, or everybody."""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass

from core.audience import Relation
from core.ledger.answers import Answers
from core.ledger.crew import Crew
from core.ledger.question import Question, QuestionCode
from core.ledger.who import Arm, find, near
from core.reading import Entry

EVERYONE = "everyone"


@dataclass(frozen=True, slots=True)
class Finder:
    """Finds the pitchers of an entry for one author; what is open goes to `ask`."""

    crew: Crew
    answers: Answers
    ask: Callable[[Question], None]

    def find(self, entry: Entry) -> list[Arm]:
        """The pitchers an entry is about; none where that must be asked first."""
        if entry.who is None:
            return self._unnamed()
        if entry.who == EVERYONE:
            return self._everyone(entry.except_)
        return self._named(entry.who, self.crew.local_arms()) or []

    def _unnamed(self) -> list[Arm]:
        crew = self.crew
        own, children = crew.related(Relation.SELF), crew.related(Relation.GUARDIAN)
        if own and not crew.is_staff:
            return own[:1]
        if len(children) == 1 and not crew.is_staff:
            return children
        offered = children if children and not crew.is_staff else []
        return self._choose(QuestionCode.WHO, "", offered) or []

    def _everyone(self, left_out: Iterable[str]) -> list[Arm]:
        crew = self.crew
        counted = {Relation.STAFF, Relation.SCOREKEEPER}
        arms = [arm for arm in crew.local_arms() if crew.relations[arm.pitcher_id] & counted]
        absent = self.answers.left_out()
        for name in left_out:
            found = self._named(name, arms)
            if found is None:
                return []  # an exception that is open: nobody is logged until it is answered
            absent |= {arm.pitcher_id for arm in found}
        if not arms:
            self.ask(Question(QuestionCode.NOT_ALLOWED, about=EVERYONE))
        return [arm for arm in arms if arm.pitcher_id not in absent]

    def _named(self, typed: str, preferred: Sequence[Arm]) -> list[Arm] | None:
        found = find(typed, preferred) or find(typed, self.crew.arms)
        if len(found) == 1:
            return found
        mine = [arm for arm in found if self.crew.relations[arm.pitcher_id]]
        if len(mine) == 1:
            return mine
        if found:
            return self._choose(QuestionCode.TWO_PEOPLE, typed, found)
        return self._choose(QuestionCode.UNKNOWN_NAME, typed, near(typed, self.crew.arms))

    def _choose(self, code: QuestionCode, typed: str, offered: Sequence[Arm]) -> list[Arm] | None:
        """The pitcher who was chosen for a name, else none, and the question is asked."""
        question = Question(
            code,
            about=typed,
            choices=tuple(arm.name for arm in offered),
            values=tuple(str(arm.pitcher_id) for arm in offered),
        )
        chosen = self.answers.value(question)
        arms = [arm for arm in self.crew.arms if str(arm.pitcher_id) == chosen]
        if not arms:
            self.ask(question)
        return arms or None
