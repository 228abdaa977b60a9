"""The form that makes a team, and the one that changes it later, with what was changed."""

from collections.abc import Callable, Mapping
from typing import Any

from slack_sdk.models.blocks import Block
from sqlmodel import Session

from bot.forms import inputs, picks
from bot.forms.form import Carried, Filled, Form, FormError, Setting, Values, modal, paragraph
from bot.forms.roles import team_as_coach
from bot.wording import first_steps as say
from bot.wording import roster as errors
from bot.wording import settings as said
from bot.wording.settings import TEAM
from core.ledger import Notice
from core.ledger.binding import books_at_hand
from core.ledger.by_hand import ByHandError, Hand, Refusal
from core.matters import matter_notices
from core.model import Team, Workspace, key
from core.roster.errors import RosterError, Wrong
from core.roster.first_steps import first_matter, may_found
from core.roster.teams import change_team, found_team, history
from core.rulebooks import RuleBookError, builtin_ids

NEW, SETTINGS = "new_team", "team_settings"
#: A new team is offered this book first.
FIRST_BOOK = "pitch-smart"
MOST_CHANGES = 5
LONGEST_NAME = 80


def _new(hand: Hand, _carried: Carried) -> dict[str, Any] | None:
    if not may_found(hand.session, hand.person, hand.now):
        return None
    matter = first_matter(hand.session, hand.person)
    zone = str(matter.data.get("tz", "")) if matter is not None else ""
    known = Team(
        workspace_id=hand.person.workspace_id,
        name="",
        time_zone=zone,
        log_channel="",
        staff_channel="",
        rule_books=[FIRST_BOOK],
    )
    return modal(NEW, {}, _inputs(hand.session, known), title=say.NEW_TITLE)


def _settings(hand: Hand, carried: Carried) -> dict[str, Any] | None:
    team = team_as_coach(hand, carried)
    if team is None:
        return None
    told = say.changes(history(hand.session, team, MOST_CHANGES))
    section = paragraph(told)
    blocks = [*_inputs(hand.session, team), section]
    return modal(SETTINGS, {"team": key(team)}, blocks, title=say.SETTINGS_TITLE)


def _inputs(session: Session, team: Team) -> list[Block]:
    of, hints = say.FIELDS, say.HINTS
    name = inputs.text("name", of["name"], team.name, most=LONGEST_NAME)
    zone = inputs.text(
        "time_zone", of["time_zone"], team.time_zone, most=60, hint=hints["time_zone"]
    )
    name.optional = zone.optional = False
    ages = [(str(age), label) for age, label in say.AGES.items()]
    staff = team.staff_channel if team.staff_channel.startswith(("C", "G")) else None
    return [
        name,
        inputs.text("age_group", of["age_group"], team.age_group, most=20),
        zone,
        picks.channel(
            "log_channel",
            of["log_channel"],
            team.log_channel or None,
            private=False,
            hint=hints["log_channel"],
        ),
        picks.channel(
            "staff_channel", of["staff_channel"], staff, private=True, hint=hints["staff_channel"]
        ),
        inputs.choices(
            "rule_books", of["rule_books"], {"": _books(session, team)}, team.rule_books
        ),
        inputs.choice("account_age", of["account_age"], ages, str(team.account_age)),
        inputs.note(say.AGE_NOTE, "age_note"),
    ]


def _books(session: Session, team: Team) -> list[tuple[str, str]]:
    """The books that a team may choose, by their titles; those that cannot be read are left out."""
    workspace = session.get(Workspace, team.workspace_id)
    own = (workspace.own_books if workspace is not None else None) or ()
    return [(book, title) for book in (*builtin_ids(), *own) if (title := _title(session, book))]


def _title(session: Session, book: str) -> str:
    try:
        (found,) = books_at_hand(session)((book,))
    except RuleBookError:
        return ""
    return found.title


def _values(session: Session, values: Values, known: Team | None) -> dict[str, Any]:
    offered = {book for book, _ in _books(session, known)} if known is not None else set()
    # A book that stands in a file beside a team file is offered nowhere, and stays.
    kept = [one for one in (known.rule_books if known is not None else []) if one not in offered]
    channels = {name: picks.read_channel(values, name) for name in ("log_channel", "staff_channel")}
    for name, channel in channels.items():
        if channel is None:
            raise FormError(name, errors.wrong(Wrong.CHANNEL))
    return {
        "name": " ".join(inputs.read_text(values, "name").split()),
        "age_group": " ".join(inputs.read_text(values, "age_group").split()),
        "time_zone": inputs.read_text(values, "time_zone"),
        **channels,
        "rule_books": [*inputs.read_choices(values, "rule_books"), *kept],
        "account_age": int(inputs.read_choice(values, "account_age") or 16),
    }


def _found(hand: Hand, filled: Filled) -> list[Notice]:
    values = _values(hand.session, filled.values, None)
    _said(lambda: found_team(hand, values))
    matter = first_matter(hand.session, hand.person)
    return matter_notices(hand.session, matter, hand.now) if matter is not None else []


def _change(hand: Hand, filled: Filled) -> list[Notice]:
    team = hand.session.get(Team, int(filled.carried["team"]))
    if team is None:
        raise ByHandError(Refusal.GONE)
    values: Mapping[str, Any] = _values(hand.session, filled.values, team)
    _said(lambda: change_team(hand, key(team), values))
    return []


def _said(work: Callable[[], object]) -> None:
    try:
        work()
    except RosterError as refused:
        raise FormError(refused.field, errors.wrong(refused.wrong)) from refused


def _now(_session: Session, team: Team) -> str:
    return said.team(team.time_zone, team.account_age)


NEW_FORM = Form(NEW, _new, _found, {"": "name"})
SETTINGS_FORM = Form(
    SETTINGS, _settings, _change, {"": "name"}, Setting(TEAM, _now, coach_only=True)
)
