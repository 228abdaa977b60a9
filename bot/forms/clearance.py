"""The form in which an adult records a licensed clinician's clearance: name, day and limits."""

from datetime import date
from typing import Any

from slack_sdk.models.blocks import Block

from bot.forms import inputs
from bot.forms.form import Carried, Filled, Form, FormError, modal
from bot.forms.written import write_line
from bot.wording.forms import CLEARANCE_NOTE, ERRORS, FIELDS, LIMITS_HINT
from core.ledger import Notice
from core.ledger.by_hand import ByHandError, Hand, Refusal
from core.ledger.clearing import may_record, problem_of
from core.ledger.crew import Crew, load_crew
from core.ledger.dictation import name_of
from core.ledger.who import Arm
from core.reading.clearing import ClearanceOrder, clearance_order

NAME = "clearance"
#: The input at which each problem of a clearance is shown, with its sentence.
_PROBLEMS = {
    "name": ("clinician", "clinician"),
    "older": ("cleared_on", "older"),
    "limit": ("limits", "limits"),
}


def _view(hand: Hand, carried: Carried) -> dict[str, Any] | None:
    crew = load_crew(hand.session, hand.person, None)
    today = crew.local(hand.now).date()
    arms = may_record(hand.session, crew, today)
    if not arms:
        return None
    named = [(str(arm.pitcher_id), arm.name) for arm in arms[:100]]
    known = str(carried.get("pitcher") or (named[0][0] if len(named) == 1 else ""))
    blocks: list[Block] = [
        inputs.note(CLEARANCE_NOTE, "note"),
        inputs.choice("who", FIELDS["who"], named, known),
        inputs.needed("clinician", FIELDS["clinician"], most=80),
        inputs.day(FIELDS["cleared_on"], today, "cleared_on"),
        inputs.text("limits", FIELDS["limits"], lines=True, most=500, hint=LIMITS_HINT),
    ]
    return modal(NAME, {}, blocks)


def _save(hand: Hand, filled: Filled) -> list[Notice]:
    crew = load_crew(hand.session, hand.person, None)
    today = crew.local(hand.now).date()
    arms = may_record(hand.session, crew, today)
    chosen = inputs.read_choice(filled.values, "who")
    meant = [arm for arm in arms if str(arm.pitcher_id) == chosen]
    if not arms:
        raise ByHandError(Refusal.NOT_ALLOWED, "who")
    if not meant:
        raise FormError("who", ERRORS["nobody"])
    on = inputs.read_day(filled.values, "cleared_on")
    if on > today:
        raise FormError("cleared_on", ERRORS["ahead"])
    text = _line(crew, meant[0], filled, on)
    order = clearance_order(text, crew.local(hand.now))
    problem = ""
    if order is not None:
        problem, _ = problem_of(hand.session, order, meant[0].pitcher_id, today)
    clinician = inputs.read_text(filled.values, "clinician")
    if problem == "day" or (problem != "name" and not _says(order, clinician, on)):
        # The day is right: the name would be read as something else than what was filled in.
        problem = "name"
    if problem:
        block, error = _PROBLEMS[problem]
        raise FormError(block, ERRORS[error])
    return write_line(hand, filled, text)


def _line(crew: Crew, arm: Arm, filled: Filled, on: date) -> str:
    """The line that somebody would have typed."""
    clinician = inputs.read_text(filled.values, "clinician")
    limits = ", ".join(inputs.read_text(filled.values, "limits").splitlines())
    said = f"cleared {name_of(crew, arm)} by {clinician} {on.month}/{on.day}/{on.year}"
    return f"{said}, {limits}" if limits else said


def _says(order: ClearanceOrder | None, clinician: str, on: date) -> bool:
    return order is not None and (order.clinician, order.on) == (clinician, on)


FORM = Form(NAME, _view, _save, {"": "who"})
