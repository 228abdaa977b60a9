"""The answers to "is the pain gone?"."""

from sqlmodel import select

from bot.forms.written import write_once
from bot.presses.press import Carried, Press
from core.ledger import Notice
from core.ledger.answers import GONE, Answer
from core.ledger.by_hand import ByHandError, Hand, Refusal, choose
from core.ledger.crew import load_crew
from core.ledger.question import Question, QuestionCode
from core.ledger.still_hurts import questions_about, say_not_yet, who_may_say
from core.model import FORM_TS, Line, PainReport, Pitcher, key

GONE_PRESS, NOT_YET_PRESS = "pain_gone", "pain_not_yet"


def _gone(hand: Hand, carried: Carried) -> list[Notice]:
    """Write "no pain" as the person's own line, with the answer to what it is asked."""
    pitcher, report = _allowed(hand, carried)
    origin = f"gone/{key(report)}/{int(carried['step'])}/{key(hand.person)}"
    notices = write_once(hand, origin, f"{pitcher.name}: no pain")
    line = hand.session.exec(select(Line).where(Line.ts == f"{FORM_TS}{origin}")).one()
    asked = [Question.from_json(one) for one in line.questions]
    for question in asked:
        if question.code is QuestionCode.PAIN_FREE and question.pitcher_id == key(pitcher):
            answer = Answer(question.code, GONE, question.about, question.pitcher_id)
            return [*notices, *choose(hand, key(line), answer)]
    # It is gone or on hold by now: the question is brought up to that.
    return questions_about(hand.session, {key(pitcher)}, hand.now)


def _not_yet(hand: Hand, carried: Carried) -> list[Notice]:
    pitcher, report = _allowed(hand, carried)
    on = load_crew(hand.session, hand.person, None).local(hand.now).date()
    say_not_yet(hand.session, report, int(carried["step"]), hand.person, hand.now, on)
    return questions_about(hand.session, {key(pitcher)}, hand.now)


def _allowed(hand: Hand, carried: Carried) -> tuple[Pitcher, PainReport]:
    report = hand.session.get(PainReport, int(carried["report"]))
    if report is None or report.workspace_id != hand.person.workspace_id:
        raise ByHandError(Refusal.GONE)
    pitcher = hand.session.get_one(Pitcher, report.pitcher_id)
    allowed = {key(one) for one in who_may_say(hand.session, pitcher, hand.now.date())}
    if key(hand.person) not in allowed:
        raise ByHandError(Refusal.NOT_ALLOWED)
    return pitcher, report


PRESSES = (Press(GONE_PRESS, _gone), Press(NOT_YET_PRESS, _not_yet))
