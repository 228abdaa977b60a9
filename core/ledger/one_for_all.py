"""The kind and the day of a roll call, asked once of the whole line and answered for everybody."""

from dataclasses import replace

from core.ledger.decide import Decision
from core.ledger.question import Question, QuestionCode

#: From so many pitchers on, the same question about the same counts is asked once.
MANY = 3
#: What one word of the line answers for everybody in it.
ONCE = (QuestionCode.KIND, QuestionCode.DAY)


def with_one_question(decision: Decision) -> Decision:
    """The decision with the questions that many pitchers share asked once, in the first's place.

    The question is about no single pitcher then, and its answer holds for all of the line.
    """
    alike = {replace(one.entry, who=None, except_=()) for one in decision.kept}
    if len(alike) > 1:
        return decision
    questions: list[Question] = list(decision.questions)
    for code in ONCE:
        same = [one for one in questions if one.code is code]
        if len(same) >= MANY:
            first = questions.index(same[0])
            questions[first] = replace(same[0], about="", pitcher_id=None)
            questions = [one for one in questions if one not in same]
    return replace(decision, questions=tuple(questions))
