"""Buttons under answers: choose a reading, undo. What a button carries is checked again."""

import json
import re
from collections.abc import Callable
from typing import Any

from slack_bolt import Ack, App, BoltContext

from bot.blocks.alerts import SEEN
from bot.blocks.buttons import CHOOSE, UNDO
from bot.listeners.desk import Desk, presser
from bot.outbox import owe
from core.ledger import Notice, NoticeKind
from core.ledger.answer_notices import answers_again
from core.ledger.answers import Answer
from core.ledger.by_hand import ByHandError, Hand, Refusal, choose, undo
from core.ledger.question import Question, QuestionCode
from core.ledger.seen import mark_seen
from core.ledger.unplaced import settled_by
from core.model import Line

Work = Callable[[Hand], list[Notice]]


def register(app: App, desk: Desk) -> None:
    """Listen to the buttons; each is acknowledged after its commit."""

    @app.action(re.compile(rf"^{CHOOSE}\."))
    def chosen(ack: Ack, body: dict[str, Any], context: BoltContext) -> None:
        carried = carried_by(body)
        press(desk, body, context, lambda hand: _choose(hand, carried))
        ack()

    @app.action(re.compile(rf"^{UNDO}\."))
    def undone(ack: Ack, body: dict[str, Any], context: BoltContext) -> None:
        line_id = carried_by(body)["line"]
        press(desk, body, context, lambda hand: undo(hand, line_id))
        ack()

    @app.action(re.compile(rf"^{SEEN}\."))
    def seen(ack: Ack, body: dict[str, Any], context: BoltContext) -> None:
        alerts = [int(one) for one in carried_by(body)["alerts"]]
        press(desk, body, context, lambda hand: mark_seen(hand, alerts))
        ack()


#: A form that could not be opened: the press took longer than its trigger lives.
TOO_LATE = "too late"


def carried_by(body: dict[str, Any]) -> dict[str, Any]:
    """What the pressed button carries."""
    value: dict[str, Any] = json.loads(body["actions"][0]["value"])
    return value


def press(desk: Desk, body: dict[str, Any], context: BoltContext, work: Work) -> None:
    """Do the work of a button; a refusal is told to whoever pressed, and changes nothing."""
    workspace_id = str(context.team_id)
    try:
        desk.by_hand(workspace_id, presser(body), work)
    except ByHandError as refused:
        tell(desk, workspace_id, body, refused.refusal)


def _choose(hand: Hand, carried: dict[str, Any]) -> list[Notice]:
    if carried["code"] == QuestionCode.LEFT_OUT:
        absent = Answer(QuestionCode.LEFT_OUT, "not there", pitcher_id=carried["pitcher"])
        return choose(hand, carried["line"], absent)
    line = hand.session.get(Line, carried["line"])
    questions = line.questions if line is not None else []
    number = carried["question"]
    asked = Question.from_json(questions[number]) if number < len(questions) else None
    if asked is None or asked.code != carried["code"]:
        if line is not None and settled_by(hand.session, line):
            return answers_again(carried["line"], hand.now)  # it says who settled it
        raise ByHandError(Refusal.GONE)  # it was answered meanwhile, or the line was edited
    answer = Answer(asked.code, str(carried["value"]), asked.about, asked.pitcher_id)
    return choose(hand, carried["line"], answer)


def tell(desk: Desk, workspace_id: str, body: dict[str, Any], what: str) -> None:
    """Tell whoever pressed why nothing came of it: a refusal, or `TOO_LATE`."""
    now = desk.clock.now()
    stamp = body.get("action_ts") or body["actions"][0]["action_ts"]
    notice = Notice(
        slot=f"{NoticeKind.REFUSED}/{what}/{presser(body)}/{stamp}",
        kind=NoticeKind.REFUSED,
        destination=presser(body),
        not_before=now,
    )
    with desk.store.writing() as session:
        owe(session, workspace_id, [notice])
    desk.committed()
