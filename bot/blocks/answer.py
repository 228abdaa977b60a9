"""The answer to a line, for its author or for the staff, from the record as it stands."""

from collections.abc import Collection
from dataclasses import replace
from zoneinfo import ZoneInfo

from sqlmodel import Session

from bot.blocks.arm import ArmReport, adults_told, arm_report
from bot.blocks.buttons import answers_to, fix_and_undo, report_pain, type_it
from bot.blocks.message import Part
from bot.blocks.newcomers import offers
from bot.blocks.roll_call import asks_for_all, roll_call
from bot.blocks.unplaced import settled_texts
from bot.wording import answers, holds
from bot.wording.pain import recorded_gone
from bot.wording.questions import EDIT, PRESS_OR_TYPE, question
from bot.wording.words import sentences
from core.ledger.answers import GONE
from core.ledger.days import before_the_day_turns
from core.ledger.history import only_caught
from core.ledger.notices import PITCHED
from core.ledger.question import Question, QuestionCode
from core.ledger.typed_answers import can_be_typed
from core.ledger.unplaced import hurt_by, settled_by
from core.ledger.view import LineView, PitcherView, Standing
from core.model import LineState, Outing, Person, Pitcher, key
from core.reading import UnreadReason


def answer_parts(
    session: Session, view: LineView, viewer: Person | None, reaction: str
) -> list[Part]:
    """The whole answer, paragraph by paragraph; empty when the line leaves nothing to say."""
    together = roll_call(view)
    if together is not None:
        parts = [together]
    else:
        parts = [Part(_pitcher(session, view, one, viewer)) for one in view.pitchers]
    parts += questions_of(session, view)
    placed = _settled(session, view)
    if not any(part.text for part in [*parts, *placed]):
        return [Part(recorded_gone(name)) for name in _said_gone(session, view)]
    parts += placed
    if _speaks_of_rest(view):
        parts.append(Part(answers.RULES_GOVERN))
    if view.is_first and view.line.state == LineState.READ:
        parts.append(Part(answers.first_time(reaction)))
    return [*parts, Part("", fix_and_undo(view, only_undo=together is not None))]


def _settled(session: Session, view: LineView) -> list[Part]:
    """On whose record this line's own report stands since it was asked whose it is."""
    here = hurt_by(session, view.line) if view.line.deleted_at is None else []
    if not {pitcher for pitcher, _ in settled_by(session, view.line)} & set(here):
        return []
    return [Part(text) for text in settled_texts(session, view.line)]


def _said_gone(session: Session, view: LineView) -> list[str]:
    """The pitchers of whom it was answered that the pain is gone."""
    return [
        session.get_one(Pitcher, answer["pitcher_id"]).name
        for answer in view.line.answers
        if answer["code"] == QuestionCode.PAIN_FREE and answer["value"] == GONE
    ]


def counts_parts(session: Session, view: LineView, author: str) -> list[Part]:
    """A scorekeeper's counts as the staff read them, with what he was asked."""
    texts = [_pitcher(session, view, one, None) for one in view.pitchers]
    if not any(texts):
        return []
    asked = [question(told_of(one, author)) for one in view.questions]
    texts += [answers.asked_author(author, asked)] if asked else []
    texts = [answers.counted_by(author), *texts, answers.RULES_GOVERN]
    return [*(Part(text) for text in texts), Part("", fix_and_undo(view))]


def told_of(asked: Question, author: str) -> Question:
    """The question as others read it: what its author logged is not "by you"."""
    same = asked.code is QuestionCode.SAME and not asked.reason
    return replace(asked, reason=author) if same else asked


def _speaks_of_rest(view: LineView) -> bool:
    return any(
        standing is not None and outing.kind in PITCHED
        for one in view.pitchers
        for outing, standing in one.outings
    )


def broken_text(view: LineView, author: str) -> str:
    """The rules that a line's outings went over, for the staff; empty where there are none."""
    if roll_call(view) is not None and asks_for_all(view):
        return ""  # a breach of a game that may have been catch play alarms for nothing
    parts = [
        f"{answers.outing_heading(one.pitcher.name, outing)}: {broken}"
        for one in view.pitchers
        for outing, standing in one.outings
        if standing is not None
        and not standing.told_before
        and (broken := answers.broken_line(outing, standing))
    ]
    return answers.broken_for_staff(author, parts) if parts else ""


def _pitcher(session: Session, view: LineView, one: PitcherView, viewer: Person | None) -> str:
    own = viewer is not None and one.pitcher.person_id == key(viewer)
    name = None if own else one.pitcher.name
    report = arm_report(session, view.line, one.pitcher, one.reports)
    told = adults_told(session, report, viewer) if report else []
    parts = [report.for_author(told, own=own) if report else ""]
    hurts = holds.reported(one.status) if one.status.since is not None else ""
    hurts = "pain" if report is not None and report.stops else hurts
    parts += [_outing(view, outing, standing, name, hurts) for outing, standing in one.outings]
    if one.outings or one.reports:
        parts.append(_standing(one, report))
    return sentences([*parts, answers.put_right_by(one.corrections)])


def _standing(one: PitcherView, report: ArmReport | None) -> str:
    """What stands against throwing beside what the report itself says, and a clinician's limits.

    An outing's own line of rest tells of pain that is not gone; a line of the arm alone has none.
    """
    status = one.status
    said = report is not None and (report.hold is not None or (report.stops and not status.held))
    stands = status.since is not None and (status.held or not one.outings)
    return sentences([holds.stands(status) if stands and not said else "", holds.limits(status)])


def _outing(
    view: LineView, outing: Outing, standing: Standing | None, name: str | None, hurts: str
) -> str:
    heading = answers.outing_heading(name, outing)
    lines = [heading, answers.what_was_read(outing)]
    if standing is not None and outing.kind in PITCHED and not only_caught(outing):
        lines += [
            answers.share_line(outing, standing),
            answers.broken_line(outing, standing),
            answers.larger_owes(outing, standing.larger),
            _rest(outing, standing, hurts),
        ]
    if _was_moved(view, outing):
        lines.append(answers.moved_day(outing))
    return sentences(lines)


def _rest(outing: Outing, standing: Standing, hurts: str) -> str:
    if standing.rest is None:
        return answers.rest_problem(standing.rest_problem or "")
    return answers.rest_line(outing, standing.rest, hurts)


def _was_moved(view: LineView, outing: Outing) -> bool:
    if view.team is None:
        return False
    posted = view.line.posted_at.astimezone(ZoneInfo(view.team.time_zone))
    return before_the_day_turns(posted.replace(tzinfo=None)) and outing.on < posted.date()


#: More rows of buttons than this are a wall; the questions after them are words alone.
MOST_ROWS = 3


def questions_of(
    session: Session, view: LineView, which: Collection[int] | None = None
) -> list[Part]:
    """Each question with its likely answers, and how else to answer; of `which` places alone."""
    newcomers = offers(session, view)
    outings = [outing for one in view.pitchers for outing, _ in one.outings]
    only = outings[0] if len(outings) == 1 else None
    parts: list[Part] = []
    for number, one in enumerate(view.questions):
        if which is not None and number not in which:
            continue
        buttons = answers_to(view.line, number, one)
        if one.code in {QuestionCode.UNREAD, QuestionCode.SURE}:
            buttons += type_it(only, view.line)
        if one.reason == UnreadReason.UNCLEAR_PAIN:
            buttons += report_pain()
        buttons += (newcomers[number],) if number in newcomers else ()
        said = question(
            one, may_add=number in newcomers and one.code is not QuestionCode.NO_CONSENT
        )
        parts.append(Part(said, buttons if len(parts) < MOST_ROWS else ()))
    can_edit = (
        bool(parts) and view.line.deleted_at is None and any(one.waits for one in view.questions)
    )
    typed = any(can_be_typed(one) for one in view.questions if one.waits)
    how = PRESS_OR_TYPE if typed else EDIT
    return [*parts, Part(how)] if can_edit else parts
