"""The answers to "is the pain gone?"."""

from dataclasses import replace
from datetime import datetime, timedelta

from sqlmodel import select

from bot.forms.written import write_once
from bot.presses.press import Carried, Press
from core.ledger import Notice, NoticeKind
from core.ledger.answers import GONE, Answer
from core.ledger.by_hand import ByHandError, Hand, Refusal, choose, standing_line
from core.ledger.crew import load_crew
from core.ledger.lines import owed_after
from core.ledger.question import Question, QuestionCode
from core.ledger.still_hurts import questions_about, say_not_yet, who_may_say
from core.ledger.unplaced import (
    answer_for,
    mark_placed,
    settled_by,
    who_may_it_be,
    words_of,
)
from core.model import FORM_TS, Line, PainReport, Pitcher, key

GONE_PRESS, NOT_YET_PRESS = "pain_gone", "pain_not_yet"
#: The staff say whose pain it is that a line speaks of.
PLACE_PRESS = "place_pain"
AFTER = timedelta(seconds=1)


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


def _place(hand: Hand, carried: Carried) -> list[Notice]:
    """Put the pain of somebody's line on a pitcher's record: by that line where it asks for the
    name alone, else as the staff's own line. What is settled already is shown and stands.
    """
    line_id, pitcher, team = (int(carried[one]) for one in ("line", "pitcher", "team"))
    line = hand.session.get(Line, line_id)
    if line is not None and settled_by(hand.session, line):
        told = owed_after(hand.session, standing_line(hand, line_id), hand.now)
        return [one for one in told if one.kind is NoticeKind.PAIN_UNPLACED]
    among = who_may_it_be(hand.session, line, team) if line is not None else []
    line, text = words_of(hand, line_id, pitcher, {key(one) for one in among})
    notices = answer_for(hand, line, pitcher)
    if notices is None:
        notices = write_once(hand, f"placed/{line_id}/{pitcher}", text, team)
    mark_placed(hand, line, pitcher)
    told = [*notices, *owed_after(hand.session, line, hand.now)]
    return [_in_turn(one, hand.now) for one in told]


def _in_turn(notice: Notice, now: datetime) -> Notice:
    """What the author sees comes after what stands before whoever pressed, and what is new."""
    if notice.kind not in {NoticeKind.ANSWER, NoticeKind.REACTION}:
        return notice
    return replace(notice, not_before=max(notice.not_before, now + AFTER))


def _allowed(hand: Hand, carried: Carried) -> tuple[Pitcher, PainReport]:
    report = hand.session.get(PainReport, int(carried["report"]))
    if report is None or report.workspace_id != hand.person.workspace_id:
        raise ByHandError(Refusal.GONE)
    pitcher = hand.session.get_one(Pitcher, report.pitcher_id)
    allowed = {key(one) for one in who_may_say(hand.session, pitcher, hand.now.date())}
    if key(hand.person) not in allowed:
        raise ByHandError(Refusal.NOT_ALLOWED)
    return pitcher, report


PRESSES = (
    Press(GONE_PRESS, _gone),
    Press(NOT_YET_PRESS, _not_yet),
    Press(PLACE_PRESS, _place),
)
