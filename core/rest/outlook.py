"""One pitcher's coming days: yes or no for each, and the first date by rule.

The same judgement as `answer` gives, for whoever needs no reasons: a staff's whole week is
worked out at once.
"""

from collections.abc import Sequence
from datetime import date

from core.rest.answering import answer_from
from core.rest.judging import is_barred, judge, next_date
from core.rest.standing import Standing, standing_from
from core.rest.values import Ask, Phase, RestAnswer, Thrower, Thrown
from core.rest.views import views
from core.rulebooks import RuleBook


class Outlook:
    """The books that bind a pitcher, looking at his record once for any number of days."""

    def __init__(
        self,
        books: Sequence[RuleBook],
        thrower: Thrower,
        outings: Sequence[Thrown],
        phase: Phase = "regular",
    ) -> None:
        """Raise RestError where `answer` does for these books and outings."""
        self._looks, self._outings = views(books, thrower, outings, phase), outings

    def allows(self, on: date) -> bool:
        """Whether at least one pitch is allowed on a day. Raises as `answer` does."""
        return not is_barred(self._looks, Ask(on))

    def next_eligible(self, on: date) -> date | None:
        """The first date from this one on with at least one pitch; none within a year.

        Raises as `answer` does.
        """
        ask = Ask(on)
        return next_date(self._looks, ask, judge(self._looks, ask))

    def brief(self, on: date) -> RestAnswer:
        """What `answer` gives for a date, without the list of what each past outing owes."""
        return answer_from(self._looks, Ask(on), brief=True)

    def standing(self, on: date) -> Standing:
        """The season so far on a date. Raises as `answer` does."""
        return standing_from(self._looks, self._outings, on)
