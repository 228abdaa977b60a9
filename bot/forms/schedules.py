"""The schedules of a team: what stands, with its default; what is changed is written as lines."""

from datetime import time
from typing import Any

from slack_sdk.models.blocks import Block, InputBlock, TimePickerElement
from sqlmodel import Session

from bot.forms import inputs
from bot.forms.form import Carried, Filled, Form, FormError, Setting, Values, modal
from bot.forms.written import write_line
from bot.wording import schedules as say
from bot.wording.calendar import clock
from bot.wording.settings import SCHEDULES
from core.ledger import Notice
from core.ledger.by_hand import ByHandError, Hand, Refusal
from core.ledger.crew import load_crew
from core.ledger.schedule_rows import Timing, timings
from core.ledger.schedules import BY_DAY, is_by_day
from core.ledger.settings import coached_teams
from core.model import DAILY, FOR_AN_OUTING, ScheduleKind, Team, key
from core.reading.coach_words import speaks_of_pain
from core.reading.schedule_lines import LONGEST_BEFORE, LONGEST_CUE

NAME = "schedules"
ON, OFF = "on", "off"
MOST_CUES = 10


def _view(hand: Hand, carried: Carried) -> dict[str, Any] | None:
    team = _team(hand, carried)
    if team is None:
        return None
    stands = timings(hand.session, key(team))
    blocks: list[Block] = [inputs.note(say.form_note(team.name, team.time_zone), "note")]
    for kind, timing in stands.items():
        blocks += _inputs(kind, timing)
    cues = "\n".join(stands[ScheduleKind.SPIN].cues)
    most = MOST_CUES * (LONGEST_CUE + 1)
    blocks.append(inputs.text("cues", say.CUES_LABEL, cues, lines=True, most=most))
    return modal(NAME, {"team": key(team)}, blocks)


def _team(hand: Hand, carried: Carried) -> Team | None:
    """The team that is carried, for whoever coaches it; else the first that the person coaches."""
    coached = sorted(coached_teams(hand.session, load_crew(hand.session, hand.person, None)))
    wanted = [one for one in coached if one == int(carried.get("team", one))]
    return hand.session.get(Team, wanted[0]) if wanted else None


def _inputs(kind: ScheduleKind, timing: Timing) -> list[Block]:
    mark = kind.name.lower()
    switch = [(ON, say.SWITCH[True]), (OFF, say.SWITCH[False])]
    label = say.form_label(kind)
    blocks: list[Block] = [inputs.choice(f"{mark}_is", label, switch, ON if timing.is_on else OFF)]
    if kind not in DAILY | FOR_AN_OUTING:
        days = [(str(number), name) for number, name in enumerate(say.WEEKDAYS)]
        blocks.append(inputs.choice(f"{mark}_day", say.day_label(kind), days, str(timing.weekday)))
    blocks.append(_time(f"{mark}_at", say.time_label(kind), timing.at))
    if kind is ScheduleKind.SPIN:
        blocks.append(
            inputs.number(
                f"{mark}_before", say.BEFORE_LABEL, timing.before_practice, LONGEST_BEFORE
            )
        )
    return blocks


def _time(name: str, label: str, at: time) -> InputBlock:
    element = TimePickerElement(action_id=name, initial_time=f"{at:%H:%M}")
    return InputBlock(block_id=name, label=label, element=element)


def _save(hand: Hand, filled: Filled) -> list[Notice]:
    team = _team(hand, filled.carried)
    if team is None:
        raise ByHandError(Refusal.NOT_ALLOWED)
    lines = _lines(hand.session, team, filled.values)
    return write_line(hand, filled, "\n".join(lines)) if lines else []


def _lines(session: Session, team: Team, values: Values) -> list[str]:
    """The order lines for what differs from what stands. Raises `FormError`."""
    stands = timings(session, key(team))
    lines: list[str] = []
    for kind, timing in stands.items():
        lines += _line(kind, timing, values, team)
    named = [f"{line} for {team.name}" for line in lines]
    return [*named, *_cues(stands[ScheduleKind.SPIN], team.name, values)]


def _line(kind: ScheduleKind, timing: Timing, values: Values, team: Team) -> list[str]:
    mark, name = kind.name.lower(), say.TYPED[kind]
    lines: list[str] = []
    is_on = inputs.read_choice(values, f"{mark}_is") == ON
    picked = values[f"{mark}_at"][f"{mark}_at"].get("selected_time")
    at = time.fromisoformat(picked) if picked else timing.at
    if kind in BY_DAY and at != timing.at and not is_by_day(at, team):
        raise FormError(f"{mark}_at", say.AT_NIGHT)
    weekday = timing.weekday
    if f"{mark}_day" in values:
        weekday = int(inputs.read_choice(values, f"{mark}_day") or weekday)
    moved = (weekday, at) != (timing.weekday, timing.at)
    if moved:
        day = f"{say.WEEKDAYS[weekday][:3].lower()} " if f"{mark}_day" in values else ""
        lines.append(f"{name} {day}{clock(at).replace(' ', '')}")
    if kind is ScheduleKind.SPIN:
        lines += _before(timing, inputs.read_number(values, f"{mark}_before"), moved=moved)
    if is_on != timing.is_on:
        lines.append(f"{name} {ON if is_on else OFF}")
    return lines


def _before(timing: Timing, minutes: int | None, *, moved: bool) -> list[str]:
    """A day or time of its own ends "before practice", so it is said again where it stays."""
    name = say.TYPED[ScheduleKind.SPIN]
    stands = None if moved else timing.before_practice
    if (minutes or None) == stands:
        return []
    if not minutes:
        return [f"{name} not before practice"]
    if not 5 <= minutes <= LONGEST_BEFORE:
        raise FormError("spin_before", say.BEFORE_WRONG)
    return [f"{name} {minutes} minutes before practice"]


def _cues(timing: Timing, team: str, values: Values) -> list[str]:
    wanted = [" ".join(one.split()) for one in inputs.read_text(values, "cues").splitlines()]
    wanted = [one for one in dict.fromkeys(wanted) if one]
    if len(wanted) > MOST_CUES or any(len(one) > LONGEST_CUE for one in wanted):
        raise FormError("cues", say.CUES_WRONG)
    new = [one for one in wanted if one not in timing.cues]
    if any(speaks_of_pain(one) for one in new):
        raise FormError("cues", say.CUES_PAIN)
    gone = [f"remove cue for {team}: {one}" for one in timing.cues if one not in wanted]
    return [*gone, *(f"add cue for {team}: {one}" for one in new)]


def _now(session: Session, team: Team) -> str:
    """Every schedule with its time, in a few words."""
    return say.shortly(timings(session, key(team)))


FORM = Form(NAME, _view, _save, {"": "monday_summary_is"}, setting=Setting(SCHEDULES, _now))
