"""Whether the conditions of a rule hold."""

from core.rest.values import ESTIMATE_MARGIN, Ask
from core.rest.views import View
from core.rest.windows import tally
from core.rulebooks import Condition


def holds(view: View, condition: Condition, ask: Ask) -> bool:
    """Whether the measure, without the planned outing, is at least what the condition says.

    An outing that nobody counted makes it hold; an estimate holds from five pitches below.
    """
    found = tally(view, condition, ask)
    if found is None:
        return False
    margin = ESTIMATE_MARGIN if found.about and condition.unit == "pitches" else 0
    return found.uncounted > 0 or found.settled + margin >= condition.at_least
