"""This week's throws in plain words, for the staff: figures, never a risk."""

from bot.wording.words import counted
from core.load import WeekLoad


def week(load: WeekLoad | None) -> str:
    """This week beside the weeks before, and how many days nobody logged."""
    if load is None:
        return ""
    text = f"Last 7 days: {counted(load.week, 'throw')} logged{_unknown(load.unknown_week, 7)}."
    if load.days == 28:
        average = f"{load.month_average:.0f}"
        text += f" Last four weeks: {average} a week on average{_unknown(load.unknown, 28)}."
    if load.more_than_usual:
        before = f"{load.before_average:.0f}"
        text += f" That is more than usual: the three weeks before had {before} a week."
    return text


def _unknown(days: int, of: int) -> str:
    return f" ({days} of {of} days unknown: no count)" if days else ""
