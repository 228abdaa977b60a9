"""What is done with the text after the command: a form opens, a line is kept, or it is answered."""

from dataclasses import dataclass, field
from typing import Any

from bot.forms import FORMS
from bot.forms.form import Carried
from bot.forms.written import write_once
from bot.wording import command as say
from bot.wording.first_steps import SET_UP_FIRST
from bot.wording.forms import MAY_NOT
from core.audience import Relation
from core.ledger import Notice
from core.ledger.asked.reply import help_for
from core.ledger.by_hand import Hand
from core.ledger.command_words import ADD, Does, find_word, may_use, nearest, words_for
from core.ledger.crew import Crew, load_crew
from core.ledger.understood import says_something
from core.ledger.who import find
from core.model import FORM_TS, Line
from core.reading.adding import pitcher_to_add
from core.roster.first_steps import has_team


@dataclass(frozen=True, slots=True)
class Opens:
    """A view is opened."""

    view: dict[str, Any]


@dataclass(frozen=True, slots=True)
class Keeps:
    """The text is recorded, as a line that the person typed to the bot."""

    text: str


@dataclass(frozen=True, slots=True)
class Says:
    """Answered at once, to nobody else; nothing is kept."""

    text: str


Done = Opens | Keeps | Says


@dataclass(frozen=True, slots=True)
class _Call:
    hand: Hand
    crew: Crew
    text: str = field(repr=False)


def understand(hand: Hand, text: str) -> Done:
    """What a command asks for; it changes nothing."""
    call = _Call(hand, load_crew(hand.session, hand.person, None), text.strip())
    if not call.crew.teams and not has_team(hand.session, hand.person.workspace_id):
        return Says(SET_UP_FIRST)
    found = find_word(call.text) if call.text else None
    if not call.text:
        return _help(call)
    if found is None:
        return Keeps(call.text) if _says(call, call.text) else _unknown(call)
    word, rest = found
    if not may_use(word, call.crew) and not (rest and _says(call, call.text)):
        return Says(say.not_for_you(word.name, _names(call), is_guardian=_is_guardian(call)))
    match word.does:
        case Does.HELP if not rest:
            return _help(call)
        case Does.FORM if not rest:
            return _form(call, word.target, {})
        case Does.FORM:
            return _form_with(call, word.name, word.target, rest)
        case _:
            return Keeps(call.text) if _says(call, call.text) else _unknown(call)


def keep(hand: Hand, trigger_id: str, text: str) -> list[Notice]:
    """Record what was typed after the command, once for each trigger."""
    return write_once(hand, f"command/{trigger_id}", text)


def _help(call: _Call) -> Says:
    found = help_for(call.crew, call.text)
    return Says(say.help_text(found.words, found.first, is_staff=found.is_staff))


def _unknown(call: _Call) -> Says:
    near = nearest(call.text, call.crew)
    return Says(say.unknown(call.text, near.name if near is not None else None, _names(call)))


def _is_guardian(call: _Call) -> bool:
    return bool(call.crew.related(Relation.GUARDIAN))


def _names(call: _Call) -> list[str]:
    return [word.name for word in words_for(call.crew)]


def _form(call: _Call, form: str, carried: Carried) -> Done:
    view = FORMS[form].view(call.hand, carried)
    return Opens(view) if view is not None else Says(MAY_NOT[form])


def _form_with(call: _Call, name: str, form: str, rest: str) -> Done:
    """A pitcher's name after the word fills him in; anything else is a line of its own."""
    if form == ADD.target:
        called = pitcher_to_add(call.text)
        if called is not None:
            return _form(call, form, {"name": called})
    arms = find(rest, call.crew.arms)
    if len(arms) == 1 and form != ADD.target:
        return _form(call, form, {"pitcher": arms[0].pitcher_id})
    # "log 62p 11cb" is the line without the word; "pain elbow 4" needs it.
    text = rest if name == "log" else call.text
    return Keeps(text) if _says(call, text) else _unknown(call)


def _says(call: _Call, text: str) -> bool:
    person = call.hand.person
    line = Line(
        workspace_id=person.workspace_id,
        channel=person.slack_id or "",
        ts=FORM_TS,
        direct=True,
        author_slack_id=person.slack_id or "",
        author_id=person.id,
        text=text,
        posted_at=call.hand.now,
        received_at=call.hand.now,
    )
    return says_something(call.hand.session, line, call.crew)
