"""The roll call after practice: who of a team was there, and what everybody threw."""

from dataclasses import replace
from typing import Any

from slack_sdk.models.blocks import Block

from bot.forms import arms, inputs
from bot.forms.form import Carried, Filled, Form, FormError, modal
from bot.forms.one_outing import Sheet, counts_of, places_of, today_of, written
from bot.forms.written import write_line
from bot.wording.forms import ERRORS, FIELDS, LEFT_EMPTY
from core.audience import Relation, Subject
from core.ledger import Notice
from core.ledger.by_hand import Hand, check
from core.ledger.dictation import Wanted
from core.ledger.who import Arm
from core.ledger.whom import EVERYONE
from core.model import Team, key
from core.reading import Entry
from core.reading.writing import write

SHEET = Sheet("roll_call", Subject.PRACTICE, ("catch",), ("throws", "spins", "effort"))


def _view(hand: Hand, _carried: Carried) -> dict[str, Any] | None:
    form = arms.offered(hand, SHEET.subject, whole_staff=True)
    if form is None:
        return None
    groups = {
        team.name: [(f"{key(team)}/{arm.pitcher_id}", arm.name) for arm in _of(form, team)[:100]]
        for team in form.crew.teams
        if _of(form, team)
    }
    everybody = [stored for stored, _ in next(iter(groups.values()))] if len(groups) == 1 else []
    blocks: list[Block] = [
        inputs.choices("there", FIELDS["there"], groups, everybody),
        inputs.day(FIELDS["on"], today_of(form)),
        *(inputs.number(name, FIELDS[name], most=_most(name)) for name in SHEET.counts),
        inputs.note(LEFT_EMPTY, "note"),
        *arms.missing(form.no_consent),
    ]
    return modal(SHEET.name, {}, blocks)


def _most(name: str) -> int:
    return 100 if name == "effort" else 200


def _of(form: arms.Offered, team: Team) -> list[Arm]:
    """The pitchers of a team for whom its coach logs."""
    return [
        arm
        for arm in form.arms
        if key(team) in form.crew.teams_of[arm.pitcher_id]
        and Relation.STAFF in form.crew.relations[arm.pitcher_id]
    ]


def _save(hand: Hand, filled: Filled) -> list[Notice]:
    form = arms.need(hand, SHEET.subject, whole_staff=True)
    team_id, there = _chosen(form, inputs.read_choices(filled.values, "there"))
    team = next(team for team in form.crew.teams if key(team) == team_id)
    crew = replace(form.crew, here=team)
    counts = counts_of(SHEET, filled.values)
    on = inputs.read_day(filled.values)
    check({**counts, "kind": "catch", "on": on}, form.posted.date())
    entry = Entry(kind="catch", **counts)
    local = replace(form, crew=crew)
    absent = [arm.name for arm in crew.local_arms() if arm not in there]
    everyone = Entry(who=EVERYONE, except_=tuple(absent), kind="catch", **counts)
    text = written(
        local,
        [Wanted(arm, on, entry) for arm in there],
        lambda _entries: write(everyone, on),
        places_of(SHEET),
    )
    return write_line(hand, filled, text, team_id)


def _chosen(form: arms.Offered, stored: list[str]) -> tuple[int, list[Arm]]:
    """The team and the pitchers who were there. Raises `FormError`."""
    pairs = {tuple(map(int, one.split("/"))) for one in stored}
    teams = {team for team, _ in pairs}
    if len(teams) != 1:
        raise FormError("there", ERRORS["teams" if teams else "nobody"])
    (team_id,) = teams
    team = next((one for one in form.crew.teams if key(one) == team_id), None)
    there = [arm for arm in _of(form, team) if (team_id, arm.pitcher_id) in pairs] if team else []
    if not there:
        raise FormError("there", ERRORS["nobody"])
    return team_id, there


FORM = Form(SHEET.name, _view, _save, places_of(SHEET))
