"""The offer to add a pitcher whom the roster does not hold yet, made to the staff alone."""

from sqlmodel import Session

from bot.blocks.first_steps import paper_buttons
from bot.blocks.message import Button
from bot.forms.form import opens
from bot.wording import roster as say
from core.audience import Relation
from core.ledger.crew import Crew, crew_of
from core.ledger.question import Question, QuestionCode
from core.ledger.view import LineView
from core.model import key
from core.reading.adding import pitcher_to_add

FORM = "pitcher"


def add_button(name: str, team: int | None = None) -> Button:
    """Opens the form with the name filled in, for a team where one is meant."""
    carried: dict[str, object] = {"name": name} if name else {}
    return Button(say.add(name), opens(FORM), carried | ({"team": team} if team else {}), main=True)


def offers(session: Session, view: LineView) -> dict[int, Button]:
    """For each question of a line about an unknown pitcher, by its place: the button for staff.

    Whoever else wrote the line may add nobody, and gets none.
    """
    crew = crew_of(session, view.line)
    if crew is None or not crew.coaches or view.line.deleted_at is not None:
        return {}
    here = crew.here if crew.here is not None and key(crew.here) in crew.coaches else None
    team = key(here) if here is not None else None
    found: dict[int, Button] = {}
    for place, asked in enumerate(view.questions):
        name = _newcomer(asked, is_empty=not crew.is_staff)
        if name is not None:
            found[place] = add_button(name, team)
        elif asked.code is QuestionCode.NO_CONSENT and _coaches(crew, asked.pitcher_id):
            (found[place],) = paper_buttons([(asked.pitcher_id or 0, asked.about)])
    return found


def _coaches(crew: Crew, pitcher_id: int | None) -> bool:
    return Relation.STAFF in crew.relations.get(pitcher_id or 0, frozenset())


def _newcomer(asked: Question, *, is_empty: bool) -> str | None:
    """The name that the form begins with; empty where a line names nobody on an empty roster."""
    if asked.code is QuestionCode.WHO and is_empty:
        return ""
    if asked.code is not QuestionCode.UNKNOWN_NAME:
        return None
    return pitcher_to_add(f"add {asked.about}") or ""
