"""The form for one pitcher: to add him, or to change what is on file."""

from datetime import date
from typing import Any

from slack_sdk.models.blocks import Block, DatePickerElement, InputBlock
from sqlmodel import Session, col, select

from bot.forms import inputs, picks
from bot.forms.form import Carried, Filled, Form, FormError, Values, modal
from bot.wording import roster as say
from core.ledger import Notice
from core.ledger.by_hand import Hand
from core.ledger.people import guardians_of, teams_of
from core.model import BreakingPitch, Person, PitchCaller, Pitcher, Team, key
from core.roster.errors import RosterError, Wrong
from core.roster.keep import PitcherEntry, add_pitcher, change_pitcher, staffed_pitcher
from core.roster.people import coached_teams

NAME = "pitcher"
LONGEST_NAME = 80


def _view(hand: Hand, carried: Carried) -> dict[str, Any] | None:
    if carried.get("pitcher") is not None:
        return change_view(hand, int(carried["pitcher"]))
    return add_view(hand, str(carried.get("name", "")), carried.get("team"))


def add_view(hand: Hand, called: str = "", for_team: int | None = None) -> dict[str, Any] | None:
    """The form with nothing but a name, where one is given; none for who coaches no team.

    `for_team` is the team that is chosen at first.
    """
    teams = _coached(hand)
    if not teams:
        return None
    options = [(str(key(team)), team.name) for team in teams]
    first = next((one for one in teams if one.id == for_team), teams[0])
    team = [inputs.choice("team", say.FIELDS["team"], options, str(key(first)))]
    age = max(one.account_age for one in teams)
    inner = _inputs(hand.session, None, age, called[:LONGEST_NAME])
    blocks = [*(team if len(teams) > 1 else []), *inner]
    return modal(NAME, {"team": key(first)}, blocks, title=say.PITCHER_TITLE_NEW)


def change_view(hand: Hand, pitcher_id: int) -> dict[str, Any]:
    """The form with what is on file; the birth date is not shown. Raises `ByHandError`."""
    pitcher = staffed_pitcher(hand, pitcher_id)
    age = max(team.account_age for team in teams_of(hand.session, {pitcher_id}))
    blocks = _inputs(hand.session, pitcher, age)
    return modal(NAME, {"pitcher": pitcher_id}, blocks, title=say.PITCHER_TITLE)


def _coached(hand: Hand) -> list[Team]:
    ids = coached_teams(hand.session, hand.person)
    return list(hand.session.exec(select(Team).where(col(Team.id).in_(ids)).order_by(Team.name)))


def _inputs(
    session: Session, pitcher: Pitcher | None, account_age: int, called: str = ""
) -> list[Block]:
    known = pitcher or Pitcher(workspace_id="", name=called, birth_date=date.min)
    account = session.get(Person, known.person_id) if known.person_id is not None else None
    guardians = guardians_of(session, {key(pitcher)}) if pitcher is not None else []
    ids = [one.slack_id for one in guardians if one.slack_id is not None]
    names = [one.name for one in guardians if one.slack_id is None]
    of = say.FIELDS
    name = inputs.text("name", of["name"], known.name, most=LONGEST_NAME)
    name.optional = False
    return [
        name,
        inputs.text("also_called", of["also_called"], "; ".join(known.also_called), most=200),
        _birth_date(pitcher is None),
        inputs.choice("throws", of["throws"], list(say.THROWS.items()), known.throws),
        inputs.choice(
            "breaking_pitch",
            of["breaking_pitch"],
            list(say.BREAKING.items()),
            str(known.breaking_pitch),
        ),
        inputs.choice(
            "pitch_caller", of["pitch_caller"], list(say.CALLERS.items()), str(known.pitch_caller)
        ),
        picks.person(
            "account",
            of["account"],
            account.slack_id if account is not None else None,
            hint=say.account_hint(account_age),
        ),
        picks.people("guardians", of["guardians"], ids, hint=say.HINTS["guardians"]),
        inputs.text(
            "guardians_on_file",
            of["guardians_on_file"],
            "; ".join(names),
            most=200,
            hint=say.HINTS["guardians_on_file"],
        ),
        inputs.number("grade", of["grade"], known.grade, most=12, hint=say.HINTS["grade"]),
        inputs.text("level", of["level"], known.level, most=30),
    ]


def _birth_date(is_new: bool) -> InputBlock:
    return InputBlock(
        block_id="birth_date",
        label=say.FIELDS["birth_date"],
        element=DatePickerElement(action_id="birth_date"),
        optional=not is_new,
        hint=say.HINTS["birth_date" if is_new else "birth_date_kept"],
    )


def _save(hand: Hand, filled: Filled) -> list[Notice]:
    entry = _entry(filled.values)
    pitcher_id = filled.carried.get("pitcher")
    try:
        if pitcher_id is not None:
            return change_pitcher(hand, int(pitcher_id), entry)
        chosen = inputs.read_choice(filled.values, "team") if "team" in filled.values else None
        team_id = int(chosen or filled.carried["team"])
        return add_pitcher(hand, team_id, entry)
    except RosterError as refused:
        raise FormError(refused.field, say.wrong(refused.wrong, _age(hand))) from refused


def _age(hand: Hand) -> int:
    return max((team.account_age for team in _coached(hand)), default=16)


def _entry(values: Values) -> PitcherEntry:
    name = " ".join(inputs.read_text(values, "name").split())
    if not name:
        raise FormError("name", say.wrong(Wrong.NO_NAME))
    grade = inputs.read_number(values, "grade")
    if grade is not None and not 1 <= grade <= 12:
        raise FormError("grade", say.GRADE_WRONG)
    picked = values["birth_date"]["birth_date"].get("selected_date")
    return PitcherEntry(
        values={
            "name": name,
            "also_called": list(_parts(inputs.read_text(values, "also_called"))),
            "throws": inputs.read_choice(values, "throws") or "R",
            "breaking_pitch": BreakingPitch(
                inputs.read_choice(values, "breaking_pitch") or BreakingPitch.NONE_YET
            ).value,
            "pitch_caller": PitchCaller(
                inputs.read_choice(values, "pitch_caller") or PitchCaller.PITCHER
            ).value,
            "grade": grade,
            "level": inputs.read_text(values, "level") or None,
        },
        birth_date=date.fromisoformat(picked) if picked else None,
        account=picks.read_person(values, "account"),
        guardians=picks.read_people(values, "guardians"),
        guardians_on_file=_parts(inputs.read_text(values, "guardians_on_file")),
    )


def _parts(text: str) -> tuple[str, ...]:
    """The parts of a text that semicolons separate, at most 80 characters each."""
    parts = (" ".join(part.split())[:LONGEST_NAME] for part in text.split(";"))
    return tuple(dict.fromkeys(part for part in parts if part))


FORM = Form(NAME, _view, _save, {"": "name"})
