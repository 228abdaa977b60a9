"""Which of a coach's teams an order is for: asked with a button for each, answered once."""

from collections.abc import Sequence

from core.ledger.answers import Answer, Answers
from core.ledger.question import Question, QuestionCode
from core.model import Line, Team, key

#: The reason of the question, whatever the order is about.
TEAM = "team"


def ask_which(code: QuestionCode, teams: Sequence[Team]) -> Question:
    """The question that offers these teams."""
    return Question(
        code,
        reason=TEAM,
        choices=tuple(team.name for team in teams),
        values=tuple(str(key(team)) for team in teams),
    )


def chosen_team(line: Line, question: Question) -> int | None:
    """The id of the team that was chosen for an order, none where that is still open."""
    given = Answers(tuple(Answer.from_json(one) for one in line.answers or ())).value(question)
    return int(given) if given in question.values else None
