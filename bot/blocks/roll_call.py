"""Many pitchers with the same practice, in one paragraph; whoever was not there is a tap."""

from bot.blocks.buttons import CHOOSE
from bot.blocks.message import Button, Part
from bot.wording import answers
from bot.wording.buttons import not_there
from core.ledger.question import QuestionCode
from core.ledger.view import LineView, PitcherView
from core.model import Outing, key

#: From so many pitchers on with the same counts, one paragraph names them all.
MANY = 3


def roll_call(view: LineView) -> Part | None:
    """The one paragraph of a roll call, or none where the line is none."""
    alike = [_only(one) for one in view.pitchers]
    outings = [outing for outing in alike if outing is not None]
    if len(outings) < max(MANY, len(alike)) or any(one.kind == "game" for one in outings):
        return None
    said = {(answers.outing_heading(None, one), answers.what_was_read(one)) for one in outings}
    if len(said) > 1:
        return None
    names = [one.pitcher.name for one in view.pitchers]
    return Part(answers.roll_call(outings[0], names), tuple(_absent(view)))


def asks_for_all(view: LineView) -> bool:
    """Whether the kind of a roll call waits for one answer for everybody."""
    return any(one.code is QuestionCode.KIND and one.pitcher_id is None for one in view.questions)


def _only(one: PitcherView) -> Outing | None:
    return one.outings[0][0] if len(one.outings) == 1 and not one.reports else None


def _absent(view: LineView) -> list[Button]:
    return [
        Button(
            not_there(one.pitcher.name),
            CHOOSE,
            {
                "line": key(view.line),
                "code": QuestionCode.LEFT_OUT,
                "pitcher": key(one.pitcher),
                "value": "not there",
            },
        )
        for one in view.pitchers
    ]
