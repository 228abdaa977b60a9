"""The answer to a line, for its author or for the staff, from the record as it stands."""

from zoneinfo import ZoneInfo

from sqlmodel import Session

from bot.blocks.arm import adults_told, arm_report
from bot.wording import answers
from bot.wording.questions import EDIT, question
from bot.wording.words import sentences
from core.ledger.days import before_the_day_turns
from core.ledger.notices import PITCHED
from core.ledger.question import REFUSALS, Question
from core.ledger.view import LineView, PitcherView, Standing
from core.model import Line, LineState, Outing, Person, key


def answer_text(session: Session, view: LineView, viewer: Person | None, reaction: str) -> str:
    """The whole answer; empty when the line leaves nothing to say."""
    parts = [_pitcher(session, view, one, viewer) for one in view.pitchers]
    parts += _questions(view)
    if not any(parts):
        return ""
    if _speaks_of_rest(view):
        parts.append(answers.RULES_GOVERN)
    if view.is_first and view.line.state == LineState.READ:
        parts.append(answers.first_time(reaction))
    return "\n\n".join(part for part in parts if part)


def counts_text(session: Session, view: LineView, author: str) -> str:
    """A scorekeeper's counts as the staff read them, with what he was asked."""
    parts = [_pitcher(session, view, one, None) for one in view.pitchers]
    if not any(parts):
        return ""
    asked = [question(one) for one in view.questions]
    parts += [answers.asked_author(author, asked)] if asked else []
    return "\n\n".join([answers.counted_by(author), *parts, answers.RULES_GOVERN])


def _speaks_of_rest(view: LineView) -> bool:
    return any(
        standing is not None and outing.kind in PITCHED
        for one in view.pitchers
        for outing, standing in one.outings
    )


def broken_text(view: LineView, author: str) -> str:
    """The rules that a line's outings went over, for the staff; empty where there are none."""
    parts = [
        f"{answers.outing_heading(one.pitcher.name, outing)}: {broken}"
        for one in view.pitchers
        for outing, standing in one.outings
        if standing is not None and (broken := answers.broken_line(outing, standing))
    ]
    return answers.broken_for_staff(author, parts) if parts else ""


def _pitcher(session: Session, view: LineView, one: PitcherView, viewer: Person | None) -> str:
    own = viewer is not None and one.pitcher.person_id == key(viewer)
    name = None if own else one.pitcher.name
    report = arm_report(one.pitcher, one.reports)
    parts = [report.for_author(adults_told(session, report, viewer)) if report else ""]
    hurts = (report is not None and report.stops) or one.not_cleared_since is not None
    parts += [_outing(view, outing, standing, name, hurts) for outing, standing in one.outings]
    return sentences(parts)


def _outing(
    view: LineView, outing: Outing, standing: Standing | None, name: str | None, hurts: bool
) -> str:
    heading = answers.outing_heading(name, outing)
    lines = [heading, answers.what_was_read(outing)]
    if standing is not None and outing.kind in PITCHED:
        lines += [
            answers.share_line(outing, standing),
            answers.broken_line(outing, standing),
            _rest(outing, standing, hurts),
        ]
    if _was_moved(view, outing):
        lines.append(answers.moved_day(outing))
    return sentences(lines)


def _rest(outing: Outing, standing: Standing, hurts: bool) -> str:
    if standing.rest is None:
        return answers.rest_problem(standing.rest_problem or "")
    return answers.rest_line(outing, standing.rest, hurts)


def _was_moved(view: LineView, outing: Outing) -> bool:
    if view.team is None:
        return False
    posted = view.line.posted_at.astimezone(ZoneInfo(view.team.time_zone))
    return before_the_day_turns(posted.replace(tzinfo=None)) and outing.on < posted.date()


def _questions(view: LineView) -> list[str]:
    asked = [question(one) for one in view.questions]
    if not asked:
        return []
    return [sentences([*asked, EDIT if _can_edit(view.line, view.questions) else ""])]


def _can_edit(line: Line, asked: tuple[Question, ...]) -> bool:
    open_questions = [one for one in asked if one.code not in REFUSALS]
    return line.deleted_at is None and bool(open_questions)
