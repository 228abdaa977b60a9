"""Record, correct and withdraw a typed line.

The message is the record: an edit corrects it, a deletion withdraws it. Slack redelivers,
duplicates and reorders, so each of the three does nothing when it comes a second time, an
edit that comes before its original stands, and a deletion is final.
"""

import logging
import traceback
from collections.abc import Iterable
from dataclasses import replace
from datetime import datetime
from typing import Any

from sqlalchemy.exc import SQLAlchemyError
from sqlmodel import Session

from core.ledger.answers import NOT_YET, Answer, Answers
from core.ledger.apply import (
    Change,
    apply_reading,
    keep_overtaken,
    note_text,
    withdraw_rows,
    withdraw_settings,
)
from core.ledger.asked.from_line import (
    asked_here,
    asks_in_short,
    asks_to_set_up,
    says_a_word,
    tells_of_throws,
)
from core.ledger.asked.last_line import speaks_of_last
from core.ledger.care import with_care, with_open_pain
from core.ledger.claim import Place, claim, find_line, find_place
from core.ledger.crew import Crew, find_person, load_crew
from core.ledger.decide import Decision, decide
from core.ledger.doubts import with_doubts
from core.ledger.fields import snapshot
from core.ledger.fine_words import said_to_be_fine
from core.ledger.game_day import answered_by_lines
from core.ledger.hints import hints, stranger
from core.ledger.holds import raise_holds
from core.ledger.messages import Deleted, Edited, Said, newer
from core.ledger.new_count import with_new_count
from core.ledger.notices import Heard, Notice, NoticeKind
from core.ledger.of_line import OfLine, just_stored, of_line
from core.ledger.one_for_all import with_one_question
from core.ledger.orders import Order, obey, order_here
from core.ledger.owed import news_of_pain, owed
from core.ledger.placed_pain import with_placed_pain
from core.ledger.question import REFUSALS, Question, QuestionCode
from core.ledger.rest_days import rest_days
from core.ledger.spins import with_spins
from core.ledger.spoken import spoken
from core.ledger.still_typed import as_no_pain, still_so, take_typed
from core.ledger.twins import lines_that_depend_on, with_joins
from core.ledger.typed_answers import take, take_back, typed_answer
from core.ledger.watch import watch_line
from core.ledger.wordy import is_scorekeepers, needs_words
from core.model import FORM_TS, Line, LineState, Person, Team, key
from core.reading import Reading, read
from core.reading.stage import puts_right
from core.roster.first_steps import ask_who, is_set_up

log = logging.getLogger(__name__)


def record(session: Session, said: Said, now: datetime) -> list[Notice]:
    """Store a typed line and what it says; a line that is known already changes nothing.

    `now` is UTC. Lines outside the channels of a team are not kept at all.
    """
    place = find_place(session, said)
    if place is None:
        return []
    line = claim(session, said, place, now)
    if line is not None:
        return _hear(session, line, place, now, is_new=True)
    return _hear_overtaken(session, find_line(session, said), said, place, now)


def correct(session: Session, edited: Edited, now: datetime) -> list[Notice]:
    """Read a line again after an edit; an older edit, or one of a deleted line, is overtaken."""
    said = edited.said
    place = find_place(session, said)
    if place is None:
        return []
    line = claim(session, said, place, now)
    if line is None:
        line = find_line(session, said)
        if line.deleted_at is not None or not newer(edited.edited_ts, line.edited_ts):
            return _hear_overtaken(session, line, said, place, now)
        # Kept even where the text is the same: an older edit may still be on its way.
        line.edited_ts = edited.edited_ts
        session.add(line)
        if line.text == said.text:
            return []
        note_text(_change(session, line, now), said.text)
    line.edited_ts = edited.edited_ts
    return [*_hear(session, line, place, now), *_hear_dependants(session, line, now)]


def withdraw(session: Session, deleted: Deleted, now: datetime) -> list[Notice]:
    """Take a deleted line out of the record; the raw line and its rows are kept.

    What a line said that comes only now, with its deletion, is heard first: a report of
    pain is on file then, as withdrawn, and the adults hear of it.
    """
    place = find_place(session, deleted.said)
    if place is None:
        return []
    line = claim(session, deleted.said, place, now)
    if line is None:
        line = find_line(session, deleted.said)
    elif deleted.said.author:
        _hear(session, line, place, now)
    if line.deleted_at is not None:
        return []
    line.deleted_at = now
    session.add(line)
    withdraw_rows(_change(session, line, now))
    withdraw_settings(_change(session, line, now))
    session.flush()
    owed_now = _owed_now(session, line, place, now, news_of_pain(line.entries, ()))
    owed_now += _ask_again(session, line, now)
    return [*owed_now, *_hear_dependants(session, line, now)]


def hear_again(session: Session, line: Line, by: Person, now: datetime) -> list[Notice]:
    """Read a line once more, with what was answered since; `by` made the change."""
    notices = _hear(session, line, _place_of(session, line), now, by.slack_id)
    return [*notices, *_hear_dependants(session, line, now)]


def owed_after(session: Session, line: Line, now: datetime) -> list[Notice]:
    """What must be told after a change that was made by hand."""
    owed_now = _owed_now(session, line, _place_of(session, line), now)
    return [*owed_now, *_hear_dependants(session, line, now)]


def _hear_dependants(session: Session, line: Line, now: datetime) -> list[Notice]:
    """Read the lines again whose outings were compared with this line's, now that it changed."""
    notices: list[Notice] = []
    for other in lines_that_depend_on(session, line):
        notices += _hear(session, other, _place_of(session, other), now)
    return notices


def _place_of(session: Session, line: Line) -> Place:
    team = session.get(Team, line.team_id) if line.team_id is not None else None
    return Place(team, find_person(session, line.workspace_id, line.author_slack_id))


def _change(session: Session, line: Line, now: datetime) -> Change:
    return Change(session, line, line.author_slack_id, now)


def _hear_overtaken(
    session: Session, line: Line, said: Said, place: Place, now: datetime
) -> list[Notice]:
    """What an older version of a line says that comes only now, or after the deletion.

    It changes no count. But no report of pain may be lost to the order in which Slack
    delivers: it goes on file as withdrawn, and the adults hear that.
    """
    if not line.author_slack_id and said.author:
        # The deletion came first, and did not say who had written what.
        line.author_slack_id, line.text = said.author, said.text
        line.author_id = key(place.person) if place.person else None
        session.add(line)
    elif line.text == said.text:
        return []
    if place.person is None:
        return []
    crew = load_crew(session, place.person, place.team)
    posted = crew.local(line.posted_at)
    reading = _try_to_read(line, spoken(session, line, said.text), crew, posted)
    decision = decide(reading, crew, posted) if reading is not None else _NOT_READ
    overtaken = [snapshot(kept) for kept in decision.kept]
    if not keep_overtaken(_change(session, line, now), overtaken, crew):
        return []
    raise_holds(_change(session, line, now))
    session.flush()
    if line.deleted_at is not None:
        return _owed_now(session, line, place, now)
    # What the line says now is asked about as it would be had the older version come first.
    return _hear(session, line, place, now)


def _owed_now(
    session: Session,
    line: Line,
    place: Place,
    now: datetime,
    news: frozenset[NoticeKind] = frozenset(),
) -> list[Notice]:
    author = find_person(session, line.workspace_id, line.author_slack_id)
    crew = load_crew(session, author, place.team) if author else None
    heard = replace(_heard(line, place, now, crew), news=news)
    return _told(session, heard, of_line(session, line))


def _told(session: Session, heard: Heard, rows: OfLine) -> list[Notice]:
    """Every message that follows from a line as it stands now."""
    return [
        *owed(session, heard, rows),
        *rest_days(session, heard, rows),
        *watch_line(session, rows, heard.now),
        *answered_by_lines(heard),
    ]


def _hear(
    session: Session,
    line: Line,
    place: Place,
    now: datetime,
    by_slack_id: str | None = None,
    *,
    is_new: bool = False,
) -> list[Notice]:
    """Read a line, bring the record to what it says and work out who must hear of it.

    Of a line that is new nothing can be on file yet.
    """
    session.add(line)
    crew = load_crew(session, place.person, place.team) if place.person is not None else None
    if place.person is None or crew is None or not (crew.teams or is_set_up(session, line)):
        return _hear_stranger(session, line, now)
    line.author_id = key(place.person)
    posted = crew.local(line.posted_at)
    answered = [] if is_new else _ask_again(session, line, now)
    still = still_so(line)
    typed = typed_answer(session, line) if still is None else None
    if still is None and typed is None:
        still, told = take_typed(session, line, place.person, posted.date(), now)
        answered += told
    if typed is not None:
        target = take(line, typed)
        answered += hear_again(session, target, place.person, now) if target else []
    is_answer = typed is not None or still is not None
    order = order_here(session, line, crew) if not is_answer else None
    decision = _ordered(order) if order is not None else _decided(session, line, crew)
    if typed is not None or still == NOT_YET:
        decision = Decision(LineState.QUESTION)
    set_something = line.state == LineState.ORDER
    before, line.entries = line.entries, [snapshot(kept) for kept in decision.kept]
    line.questions = [question.as_json() for question in decision.questions]
    line.state = decision.state
    change = Change(session, line, by_slack_id or line.author_slack_id, now, is_new)
    apply_reading(change, before, line.entries, crew)
    raise_holds(change)
    if order is not None:
        obey(change, order, key(place.person))
    elif set_something:
        withdraw_settings(change)
    session.flush()
    heard = replace(
        _heard(line, place, now, crew),
        # A line that was filled in stands nowhere that a reaction could be seen.
        in_words=line.ts.startswith(FORM_TS)
        or line.state in {LineState.QUESTION, LineState.ORDER}
        or (by_slack_id is not None and by_slack_id != line.author_slack_id)
        or needs_words(session, line, decision, posted),
        by_scorekeeper=is_scorekeepers(decision, crew),
        news=news_of_pain(before, line.entries),
        joined_before=_joined(before),
    )
    is_log = is_new and order is None
    rows = just_stored(session, change.added) if is_log else of_line(session, line)
    return [*answered, *_told(session, heard, rows), *hints(line, now)]


def _ask_again(session: Session, line: Line, now: datetime) -> list[Notice]:
    """What follows where a line no longer answers what it answered: it is asked again."""
    notices: list[Notice] = []
    for other in take_back(session, line):
        notices += _hear(session, other, _place_of(session, other), now)
    return notices


def _hear_stranger(session: Session, line: Line, now: datetime) -> list[Notice]:
    """A line of somebody whom no team knows; before there is any team it is led to the set-up."""
    line.state = LineState.STRANGER
    if line.direct and not is_set_up(session, line):
        ask_who(session, line.workspace_id, line.author_slack_id, now, line.ts)
        return []
    reading = _try_to_read(line, line.text, None, line.posted_at.replace(tzinfo=None))
    is_log = reading is not None and bool(reading.entries or reading.unread)
    return stranger(line, now, is_log)


def _joined(entries: Iterable[dict[str, Any]]) -> frozenset[int]:
    """The outings of other lines that these readings were put together with."""
    outings = [one["outing"] for one in entries if one["outing"] is not None]
    return frozenset(one["joins"] for one in outings if one.get("joins") is not None)


def _ordered(order: Order) -> Decision:
    """An order of the staff's: it logs nothing."""
    if order.question is None:
        return Decision(LineState.ORDER)
    refused = order.question.code in REFUSALS
    state = LineState.NOT_ALLOWED if refused else LineState.ASKED
    return Decision(state, questions=(order.question,))


def _decided(session: Session, line: Line, crew: Crew) -> Decision:
    """What becomes of a line: a log, a question, talk, or nothing that can be read.

    A fault of ours must not lose a line: it is kept as not read. A fault of the database is
    raised, so that Slack sends the event again.
    """
    is_gone = as_no_pain(line)
    word = speaks_of_last(session, line) or says_a_word(session, line, crew) is not None
    if is_gone is None and (word or asks_in_short(session, line, crew)):
        return Decision(LineState.QUESTION)
    text = spoken(session, line)
    text = is_gone or said_to_be_fine(session, line, text, crew) or text
    reading = _try_to_read(line, text, crew, crew.local(line.posted_at))
    if reading is None:
        return _NOT_READ
    reading = with_spins(text, reading)
    try:
        return _decision(session, line, crew, reading)
    except SQLAlchemyError:
        raise
    except Exception as fault:
        _log_fault(line, fault)
        return _NOT_READ


def _decision(session: Session, line: Line, crew: Crew, reading: Reading) -> Decision:
    answers = Answers(tuple(Answer.from_json(one) for one in line.answers))
    decision = decide(reading, crew, crew.local(line.posted_at), answers)
    decision = with_doubts(session, line, decision, answers)
    decision = with_joins(session, line, decision, answers)
    decision = with_placed_pain(line.text, decision, crew, crew.local(line.posted_at))
    decision = with_care(line.text, decision, direct=line.direct)
    decision = with_open_pain(session, line, decision, answers)
    decision = with_one_question(decision)
    if decision.state == LineState.TALK and (
        asked_here(session, line, crew) is not None
        or tells_of_throws(line, crew) is not None
        or (asks_to_set_up(session, line, crew) is not None and not puts_right(line.text))
    ):
        return replace(decision, state=LineState.QUESTION)
    return with_new_count(session, line, decision, crew, answers)


_NOT_READ = Decision(LineState.NOT_READ, questions=(Question(QuestionCode.NOT_READ),))


def _try_to_read(line: Line, text: str, crew: Crew | None, posted: datetime) -> Reading | None:
    """The reading of a text; none when the reader fails on it, for the line must be kept."""
    roster = crew.roster() if crew is not None else []
    try:
        return read(text, posted, crew.voice if crew is not None else "pitcher", roster=roster)
    except Exception as fault:
        _log_fault(line, fault)
        return None


def _log_fault(line: Line, fault: Exception) -> None:
    # Where it failed, not what the exception says: that may quote the line.
    where = traceback.extract_tb(fault.__traceback__)[-1]
    log.error(
        "line %s could not be read and is kept as typed: %s in %s, line %s",
        line.id, type(fault).__name__, where.name, where.lineno,
    )  # fmt: skip


def _heard(line: Line, place: Place, now: datetime, crew: Crew | None) -> Heard:
    return Heard(
        line=line,
        now=now,
        in_words=False,
        by_scorekeeper=False,
        teams=(place.team,) if place.team else crew.teams if crew else (),
    )
