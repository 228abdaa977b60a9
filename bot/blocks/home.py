"""The Home tab as a Slack view: holds first, then what is theirs, then what can be set."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from slack_sdk.models.blocks import HeaderBlock, PlainTextObject
from slack_sdk.models.views import View
from sqlmodel import Session

from bot import forms
from bot.blocks.alerts import SEEN, told_shortly
from bot.blocks.buttons import FIX
from bot.blocks.consent import without_consent
from bot.blocks.first_steps import admin_parts, steps_parts
from bot.blocks.message import Button, Part, as_message
from bot.blocks.settings import settings_parts
from bot.forms import clearance, settings, two_counts
from bot.forms.form import opens
from bot.forms.pitcher import NAME as ADD_PITCHER
from bot.outbox.rendered import Published
from bot.wording import home as say
from bot.wording.alerts import SEEN as SEEN_LABEL
from bot.wording.forms import TITLES
from bot.wording.twice import ANSWER, one_outing_or_two
from core.due.waiting import Waiting
from core.home import ArmCard, Board, Home, home_of
from core.ledger.binding import Books
from core.ledger.command_words import Does, May, Word
from core.model import OutboxMessage, Pitcher, key
from core.roster.first_steps import first_matter, may_found

PAGE = "home_page"
#: So many lines with two counts are shown with the buttons that settle them.
MOST_DOUBLES = 4
#: Slack's limits of a view and of a header (docs.slack.dev, Block Kit reference).
MOST_BLOCKS, LONGEST_HEADER = 100, 150


@dataclass(frozen=True, slots=True)
class Section:
    """A heading with the paragraphs and buttons under it."""

    title: str
    parts: tuple[Part, ...]


#: The end of every Home tab.
ABOUT = Section(say.ABOUT, (Part(say.HOW), Part(say.PRIVACY)))


def home_view(session: Session, row: OutboxMessage, now: datetime, books: Books) -> Published:
    """The Home tab of the Slack account that a row goes to, as the record stands."""
    home = home_of(session, row.workspace_id, row.destination, now, books)
    first = _first_steps(session, home, now)
    sections = [*first, ABOUT] if first else _sections(session, home, now)
    view = View(type="home", blocks=_blocks(sections))
    content: dict[str, Any] = view.to_dict()
    return Published(content)


def _first_steps(session: Session, home: Home, now: datetime) -> list[Section]:
    """Where there is no team yet: what an admin of the workspace can do."""
    if home.person is None or home.board is not None:
        return []
    matter = first_matter(session, home.person)
    if matter is None or not may_found(session, home.person, now):
        return []
    return [Section("", tuple(admin_parts(session, matter)))]


def _sections(session: Session, home: Home, now: datetime) -> list[Section]:
    if home.person is None:
        told = (Part(say.STRANGER), Part(say.GET_IN), Part(say.PRIVACY))
        return [Section(say.STRANGER_TITLE, told)]
    shut = [Section(say.SHUT, (Part(say.SHUT_HELP),))] if home.is_shut else []
    sections = [*_held(home), *shut, *_steps(home), *_log(home)]
    sections += [_card(card, own=True) for card in home.own]
    sections += [_card(card, own=False) for card in home.children]
    if home.no_record:
        arms = [session.get_one(Pitcher, arm.pitcher_id) for arm in home.no_record]
        unseen = (without_consent(session, one, home.person, now) for one in arms)
        sections.append(Section("", tuple(unseen)))
    if home.board is not None:
        sections += _board(session, home, home.board)
    return [*sections, ABOUT]


def _steps(home: Home) -> list[Section]:
    """What of a team's set-up is still open, for its staff."""
    if home.board is None or not home.board.steps:
        return []
    return [
        Section(
            say.steps(home.board.team.name), tuple(steps_parts(home.board.team, home.board.steps))
        )
    ]


def _held(home: Home) -> list[Section]:
    """Before everything else: arms that must not throw."""
    mine = [
        (card.pitcher, card.today.status)
        for card in [*home.own, *home.children]
        if card.today.status.since is not None or card.today.status.limits
    ]
    if home.board is not None and home.board.is_empty and not mine and not home.held_elsewhere:
        return []
    if home.board is not None:
        seen = {key(one) for one, _ in mine}
        theirs = (*home.board.held, *home.held_elsewhere)
        mine += [pair for pair in theirs if key(pair[0]) not in seen]
    elif not mine:
        return []
    clears = mine and (home.board is not None or home.children)
    button = Button(TITLES[clearance.NAME], opens(clearance.NAME), {})
    return [Section(say.HOLDS, (Part(say.held(mine), (button,) if clears else ()),))]


def _log(home: Home) -> list[Section]:
    """The forms that this person may open; a team without pitchers logs nothing yet."""
    words = [word for word in home.words if _logs(word)]
    if home.board is not None and all(word.may is May.STAFF for word in words):
        return []
    buttons = [
        Button(
            TITLES.get(word.target, word.name.capitalize()),
            opens(word.target),
            {},
            main=number == 0,
        )
        for number, word in enumerate(words)
    ]
    counts_only = not (home.own or home.children or home.board) and not home.no_record
    return [Section(say.LOG, (Part(say.SCOREKEEPER if counts_only else "", tuple(buttons)),))]


def _logs(word: Word) -> bool:
    """Whether a word opens a form that logs: what sets something stands among the settings."""
    if word.does is not Does.FORM or word.target in {settings.NAME, ADD_PITCHER}:
        return False
    return forms.FORMS[word.target].setting is None


def _card(card: ArmCard, *, own: bool) -> Section:
    fixes = tuple(
        Button(say.fix(one), FIX, {"outing": one.id, "line": one.line_id}) for one in card.outings
    )
    told = [
        Part(say.rest(card, own=own)),
        Part("\n".join(filter(None, [say.spin(card.spin), say.mix(card.mix, card.line)]))),
        Part(say.outings(card.outings), fixes),
    ]
    if card.sent is not None:
        told.append(Part(say.sent(card.sent)))
    return Section(say.own_title(card.pitcher.name, own=own), tuple(told))


def _board(session: Session, home: Home, board: Board) -> list[Section]:
    sections = []
    if not board.is_empty:
        sections += [
            Section(f"{board.team.name}: {say.TODAY.lower()}", (Part(say.today(board)),)),
            Section(say.AHEAD, (Part(say.ahead(board)),)),
        ]
    if board.alerts:
        sections.append(Section(say.ALERTS, tuple(_alerts(board))))
    if board.asked:
        sections.append(Section(say.QUESTIONS, tuple(_asked(board.asked))))
    if board.unread:
        sections.append(Section(say.NOT_READ, (Part(say.waiting(board.unread)),)))
    if len(home.pages) > 1:
        sections.append(Section("", (Part(say.page(home.page, len(home.pages)), _turn(home)),)))
    settings = settings_parts(
        session, board.team, tuple(forms.FORMS.values()), is_coach=home.is_coach
    )
    return [*sections, Section(say.SETTINGS, tuple(settings))]


def _asked(waiting: Sequence[Waiting]) -> Iterable[Part]:
    """Two counts of one outing, newest first, each with its answers; then who else is asked."""
    doubles = [one for one in reversed(waiting) if one.two_counts][:MOST_DOUBLES]
    for line in doubles:
        for said, one in zip(one_outing_or_two(line), line.two_counts, strict=True):
            carried = {"line": line.line_id, "question": one.place}
            yield Part(said, (Button(ANSWER, opens(two_counts.NAME), carried),))
    others = [one for one in waiting if one not in doubles]
    if others:
        yield Part(say.waiting(others))


def _alerts(board: Board) -> Iterable[Part]:
    for alert, pitcher in board.alerts:
        button = Button(SEEN_LABEL, SEEN, {"alerts": [key(alert)]})
        yield Part(told_shortly(alert, pitcher), (button,))


def _turn(home: Home) -> tuple[Button, ...]:
    near = ((say.PAGE_BACK, home.page - 1), (say.PAGE_ON, home.page + 1))
    return tuple(
        Button(say.turn(label, home.pages[page - 1]), PAGE, {"page": page})
        for label, page in near
        if 1 <= page <= len(home.pages)
    )


def _blocks(sections: Sequence[Section]) -> list[dict[str, Any]]:
    """Every section as blocks; what does not fit is left out, and the last block says so."""
    blocks: list[dict[str, Any]] = []
    for section in sections:
        if section.title:
            blocks.append(_header(section.title))
        blocks += as_message(section.parts).blocks
    if len(blocks) > MOST_BLOCKS:
        blocks = [*blocks[: MOST_BLOCKS - 1], *as_message([Part(say.CUT)]).blocks]
    return [_numbered(place, block) for place, block in enumerate(blocks)]


def _header(title: str) -> dict[str, Any]:
    short = title if len(title) <= LONGEST_HEADER else f"{title[: LONGEST_HEADER - 1]}…"
    return HeaderBlock(text=PlainTextObject(text=short, emoji=False)).to_dict()


def _numbered(place: int, block: dict[str, Any]) -> dict[str, Any]:
    """A row of buttons is told from the others of its view by its own name."""
    return {**block, "block_id": f"home.{place}"} if "block_id" in block else block
