"""The answer to a question, from the record as it stands."""

from sqlmodel import Session

from bot.blocks.buttons import answers_to, fix_and_undo
from bot.blocks.consent import consent_as_it_stands
from bot.blocks.first_steps import paper_buttons
from bot.blocks.message import Button, Part
from bot.blocks.newcomers import FORM, add_button
from bot.forms.form import opens
from bot.presses.press import presses
from bot.presses.whom import WHOM
from bot.wording import asked as say
from bot.wording import command, first_steps, kept, roster, unanswered
from bot.wording.consent import WHO_AGREES
from bot.wording.pain import kept_not_yet
from bot.wording.sheet import sheet
from core.ledger.answers import NOT_YET
from core.ledger.asked import (
    AnswerTaken,
    ConsentAnswer,
    DataAnswer,
    DeleteAnswer,
    FormAnswer,
    HelpAnswer,
    LastLine,
    MostAnswer,
    NoRecord,
    NotForYou,
    NotUnderstood,
    PlanAnswer,
    Refused,
    Reply,
    SeasonAnswer,
    SheetAnswer,
    StatsAnswer,
    ThrownAnswer,
    WhatIfAnswer,
    WhenAnswer,
    WhichQuestion,
    replies,
)
from core.ledger.asked.last_line import only_counted
from core.ledger.binding import Books
from core.ledger.question import Question
from core.ledger.still_typed import own_answer
from core.ledger.view import line_view
from core.model import Line, LineState, Person, Pitcher, key
from core.reading.adding import pitcher_to_add


def asked_parts(session: Session, line: Line, books: Books) -> list[Part]:
    """The answers to a line's questions, one after the other."""
    still = own_answer(line)
    if still is not None and still.value == NOT_YET:
        return [Part(kept_not_yet(still.about))]
    parts: list[Part] = []
    for found in replies(session, line, books):
        match found:
            case LastLine():
                parts.append(_last(session, line, found, books))
            case AnswerTaken():
                parts.append(_taken(session, line, found, books))
            case ConsentAnswer():
                parts += _consent(session, line, found)
            case WhichQuestion():
                parts += _which(session, found)
            case _:
                parts.append(_part(line, found))
    return parts


def _taken(session: Session, line: Line, found: AnswerTaken, books: Books) -> Part:
    """The line whose question was answered, with its buttons."""
    asked = session.get_one(Line, found.line_id)
    author = session.get(Person, line.author_id) if line.author_id is not None else None
    buttons = fix_and_undo(line_view(session, asked, author, books))
    return Part(unanswered.taken(line.text, asked.text), buttons)


def _consent(session: Session, line: Line, found: ConsentAnswer) -> list[Part]:
    """Whether consent stands for each of the family, with its buttons."""
    person = session.get(Person, line.author_id) if line.author_id is not None else None
    pitchers = [session.get_one(Pitcher, one) for one in found.mine]
    parts = [
        part
        for one in pitchers
        if person is not None
        for part in consent_as_it_stands(session, one, person, found.on)
    ]
    return parts or [Part(WHO_AGREES)]


def _which(session: Session, found: WhichQuestion) -> list[Part]:
    """Each of the questions again with its buttons."""
    parts = [Part(unanswered.which(unsure=found.unsure, several=len(found.asked) > 1))]
    for line_id, number in found.asked:
        line = session.get_one(Line, line_id)
        asked = Question.from_json(line.questions[number])
        parts.append(Part(unanswered.of_line(line.text, asked), answers_to(line, number, asked)))
    return parts


def _last(session: Session, line: Line, found: LastLine, books: Books) -> Part:
    """The author's newest line as it stands now, with its buttons."""
    last = session.get(Line, found.line_id) if found.line_id is not None else None
    author = session.get(Person, line.author_id) if line.author_id is not None else None
    if last is None or last.deleted_at is not None or last.state == LineState.UNDONE:
        return Part(unanswered.NO_LAST_LINE)
    buttons = fix_and_undo(line_view(session, last, author, books))
    outing = only_counted(session, last)
    if found.pitches is not None and outing is not None:
        if outing.pitches == found.pitches:
            return Part(unanswered.counts_so(last.text, found.pitches), buttons)
        carried = {"outing": key(outing), "pitches": found.pitches, "reply": key(line)}
        change = Button(unanswered.make_it(found.pitches), presses("set_count"), carried, main=True)
        return Part(unanswered.other_count(last.text, found.pitches), (change, *buttons))
    return Part(unanswered.last_line(last.text, pressed=bool(buttons)), buttons)


def _part(line: Line, found: Reply) -> Part:
    if isinstance(found, NotUnderstood) and found.typed:
        name = pitcher_to_add(f"add {found.typed}") if found.may_add else None
        return Part(_text(found), (*_offered(line, found), *((add_button(name),) if name else ())))
    if isinstance(found, SheetAnswer) and not any(arms for _, arms in found.days):
        pairs = list(zip(found.no_record_ids, found.no_record, strict=True))
        return Part(first_steps.consent_missing(found.no_record, ()), paper_buttons(pairs))
    if isinstance(found, Refused) and found.empty_roster:
        return Part(_text(found), (add_button(""),))
    if isinstance(found, FormAnswer) and found.form == FORM:
        changes = (
            Button(roster.change(name), opens(FORM), {"pitcher": one}) for one, name in found.known
        )
        said = roster.known([name for _, name in found.known]) if found.known else roster.NEEDS
        return Part(said, (add_button(found.name), *changes))
    if isinstance(found, DeleteAnswer):
        return Part(kept.how_to_delete(found), tuple(_delete(*one) for one in found.mine))
    if not isinstance(found, FormAnswer):
        return Part(_text(found))
    return Part(_text(found), (Button(command.OPEN, opens(found.form), {}, main=True),))


def _offered(line: Line, found: NotUnderstood) -> tuple[Button, ...]:
    """Each of the pitchers whom a name in a question may mean."""
    return tuple(
        Button(name, presses(WHOM), {"line": key(line), "typed": found.typed, "pitcher": one})
        for one, name in found.offered
    )


def _delete(pitcher_id: int, name: str) -> Button:
    """Opens the form that says what deleting does; it is asked once more after that."""
    return Button(kept.delete(name), opens("delete_record"), {"pitcher": pitcher_id})


def _text(found: Reply) -> str:
    match found:
        case SheetAnswer():
            return sheet(found)
        case WhenAnswer():
            return say.when(found)
        case ThrownAnswer():
            return say.thrown(found)
        case SeasonAnswer():
            return say.season(found)
        case WhatIfAnswer():
            return say.what_if(found)
        case MostAnswer():
            return say.most(found)
        case PlanAnswer():
            return say.plan(found)
        case NoRecord():
            return say.no_record([found.name])
        case HelpAnswer():
            return command.help_text(found.words, found.first, is_staff=found.is_staff)
        case Refused():
            return unanswered.refused(found)
        case NotUnderstood():
            return unanswered.not_understood(found)
        case StatsAnswer():
            return kept.stats(found)
        case DataAnswer():
            return kept.data(found)
        case DeleteAnswer():
            return kept.how_to_delete(found)
        case NotForYou():
            return command.not_for_you(found.word, found.words, is_guardian=found.is_guardian)
        case FormAnswer():
            return command.opens_form(found.word, asks_count=found.asks_count)
        case LastLine() | AnswerTaken() | WhichQuestion() | ConsentAnswer():
            return unanswered.NO_LAST_LINE
