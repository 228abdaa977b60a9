"""The one pitcher whom an order means: by the name as typed, or as chosen by a button since."""

from collections.abc import Sequence

from core.ledger.answers import Answer, Answers
from core.ledger.question import Question
from core.ledger.who import Arm, find_one
from core.model import Line


def one_meant(line: Line, typed: str, arms: Sequence[Arm]) -> Arm | Question:
    """The pitcher, or the question that offers those whom the name may mean."""
    found = find_one(typed, arms)
    if isinstance(found, Arm):
        return found
    chosen = Answers(tuple(Answer.from_json(one) for one in line.answers or ())).value(found)
    return next((arm for arm in arms if str(arm.pitcher_id) == chosen), found)
