"""The buttons under an answer: likely answers to its questions, fix and undo."""

from datetime import date

from bot.blocks.message import Button
from bot.forms.form import opens
from bot.wording import buttons as label
from core.ledger.answers import NO_LOG, NewCount, number_in
from core.ledger.question import Question, QuestionCode
from core.ledger.view import LineView
from core.model import Line, Outing, Pitcher, key

CHOOSE, FIX, UNDO = "choose", opens("put_right"), "undo"


def answers_to(line: Line, number: int, asked: Question) -> tuple[Button, ...]:
    """The likely answers to the question that stands at this place among the line's."""
    values = list(asked.values)
    if asked.code is QuestionCode.UNREAD and values:
        values.append(NO_LOG)
    return tuple(
        Button(
            _label(asked, place, value),
            CHOOSE,
            {"line": key(line), "question": number, "code": asked.code, "value": value},
        )
        for place, value in enumerate(values)
    )


def _label(asked: Question, place: int, value: str) -> str:
    count = NewCount.from_value(value)
    if count is not None:
        several = sum(NewCount.from_value(one) is not None for one in asked.values) > 1
        return label.new_count(
            number_in(asked.about), count.before, asked.choices[place] if several else ""
        )
    if place < len(asked.choices):
        return asked.choices[place]
    if asked.code is QuestionCode.DAY:
        return label.day_choice(place, date.fromisoformat(value))
    return label.CHOICES[value]


def fix_and_undo(view: LineView, *, only_undo: bool = False) -> tuple[Button, ...]:
    """A "fix" for each outing and one "undo" for the line."""
    outings = [(one.pitcher.name, outing) for one in view.pitchers for outing, _ in one.outings]
    if not outings:
        return ()
    single = len(outings) == 1
    fixes = [
        Button(
            label.fix("" if single else name),
            FIX,
            {"outing": key(outing), "line": key(view.line)},
        )
        for name, outing in ([] if only_undo else outings[:20])
    ]
    return (*fixes, undo_line(view.line))


def undo_line(line: Line) -> Button:
    """Takes back everything that a line did."""
    return Button(label.UNDO, UNDO, {"line": key(line)})


def type_it(outing: Outing | None, line: Line) -> tuple[Button, ...]:
    """Opens the form with what was read, where there is an outing to complete."""
    if outing is None:
        return ()
    return (Button(label.TYPE_IT, FIX, {"outing": key(outing), "line": key(line)}),)


def sore_gone(pitcher: Pitcher) -> tuple[Button, ...]:
    """For the staff: records that whoever may say so said that soreness is gone."""
    return (Button(label.SORE_GONE, opens("sore_gone"), {"pitcher": key(pitcher)}),)


def report_pain() -> tuple[Button, ...]:
    """Opens the form that says in so many words what hurts."""
    return (Button(label.REPORT_PAIN, opens("pain"), {}),)
