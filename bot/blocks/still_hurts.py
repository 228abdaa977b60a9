"""The question whether pain is gone, as it stands."""

from datetime import datetime

from sqlmodel import Session

from bot.blocks.buttons import sore_gone
from bot.blocks.message import Button, Part
from bot.presses.press import presses
from bot.wording import pain as say
from bot.wording.holds import reported
from core.ledger.clearance import arm_records
from core.ledger.still_hurts import STEPS, said_not_yet
from core.model import OutboxMessage, PainReport, Pitcher, key


def still_hurts_parts(session: Session, row: OutboxMessage, now: datetime) -> list[Part]:
    """The question to a family, or to the staff where no family can be reached."""
    _, pitcher_id, report_id, step = row.slot.split("/")[:4]
    pitcher = session.get(Pitcher, int(pitcher_id))
    report = session.get(PainReport, int(report_id))
    if pitcher is None or report is None:
        return []
    record = arm_records(session, [pitcher])[key(pitcher)]
    status = record.status(now.date())
    if record.has_lapsed(now.date()):
        return [Part(say.answered_lapsed(pitcher.name))] if row.ts else []
    if status.since is None:
        return [Part(say.answered_gone(pitcher.name))] if row.ts else []
    if status.held:
        return [Part(say.answered_held(pitcher.name))] if row.ts else []
    if row.person_id is None:
        told = say.ask_family(pitcher.name, reported(status), status.since)
        return [Part(told, sore_gone(pitcher) if status.sore else ())]
    later = [one for one in STEPS if one > int(step)]
    answered = said_not_yet(session, key(report), int(step))
    if answered:
        told = say.not_yet(answered, pitcher.name, reported(status), asks_again=bool(later))
        return [Part(told)]
    own = pitcher.person_id == row.person_id
    carried = {"report": key(report), "step": int(step)}
    buttons = (
        Button(say.GONE, presses("pain_gone"), carried),
        Button(say.NOT_YET, presses("pain_not_yet"), carried),
    )
    return [Part(say.is_it_gone(pitcher.name, reported(status), status.since, own=own), buttons)]
