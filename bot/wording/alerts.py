"""Alerts: the figures, the threshold, and the outings behind them; kindly to a pitcher.

A count is told as a count. None of these says what a number means for an arm.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any

from bot.wording.answers import RULES_GOVERN
from bot.wording.pain import NOT_A_DOCTOR
from bot.wording.words import counted, day, innings, innings_of, listed, safe, sentences
from core.alerts import Key


@dataclass(frozen=True, slots=True)
class Told:
    """One alert as its message tells it; `figures` as stored, shares in percent."""

    key: Key
    pitcher: str
    figures: Mapping[str, Any]
    on: date | None = None
    by_dugout: bool = False

    @property
    def share(self) -> str:
        """The share as a whole percent; with a decimal where rounding would hide the crossing."""
        number, limit = self.figures["value"], self.figures["limit"]
        return f"{number:.1f} %" if round(number) == limit else f"{number:.0f} %"

    def number(self, name: str) -> int:
        """One figure, whole."""
        return int(self.figures[name])


def _of_typed(told: Told, what: str) -> str:
    number = told.number("games")
    games = "game" if number == 1 else f"{number} games"
    return (
        f"{told.number('of')} of {told.number('typed')} pitches of known type in the last {games} "
        f"were {what}, {told.share}"
    )


def _mix(told: Told) -> str:
    called = " The dugout calls the pitches." if told.by_dugout else ""
    limit = told.number("limit")
    return f"{_of_typed(told, 'breaking balls')}. The line is {limit} %.{called}"


def _low_mix(told: Told) -> str:
    limit = told.number("limit")
    return f"{_of_typed(told, 'breaking balls')}. The lower line is {limit} %."


def _changeup(told: Told) -> str:
    return f"{_of_typed(told, 'changeups')}. The line is {told.number('limit')} %."


def _game(told: Told) -> str:
    of = f" of {told.number('pitches')} pitches" if "pitches" in told.figures else ""
    called = " The dugout calls the pitches." if told.by_dugout else ""
    limit = told.number("limit")
    line = f"{limit} in this game alert whatever is set" if told.number("always") else (
        f"The line is {limit} in a game"
    )  # fmt: skip
    breaking = counted(told.number("breaking"), "breaking ball")
    return f"{breaking}{of} in one game{_on(told)}. {line}.{called}"


def _on(told: Told) -> str:
    return f" ({day(told.on)})" if told.on else ""


def _pain(told: Told) -> str:
    days = counted(told.number("value"), "day")
    return (
        f"{days} with a report of pain or soreness within 14 days. Please have a licensed "
        f"clinician check this before any more throwing. {NOT_A_DOCTOR}"
    )


def _tired(told: Told) -> str:
    days = counted(told.number("value"), "day")
    return (
        f"{days} with a tired arm within 14 days. Doctors' advice for young pitchers is to stop "
        f"when the arm is tired and to tell an adult. {NOT_A_DOCTOR}"
    )


def _week(told: Told) -> str:
    pitches = counted(told.number("value"), "pitch", "pitches")
    return f"{pitches} within 7 days. The coach's line is {told.number('limit')}. {RULES_GOVERN}"


def _more(told: Told) -> str:
    unknown = told.number("unknown")
    days = f" ({counted(unknown, 'day')} of 28 unknown)" if unknown else ""
    return (
        f"{counted(told.number('value'), 'throw')} within 7 days, more than usual: the three weeks "
        f"before had {told.number('before')} a week on average{days}."
    )


def _spins(told: Told) -> str:
    reps = counted(told.number("value"), "spin rep")
    return f"{reps} in one session{_on(told)}. The line is {told.number('limit')}."


def _effort(told: Told) -> str:
    return (
        f"spin reps at {told.number('value')} % effort{_on(told)}. The line is "
        f"{told.number('limit')} %."
    )


def _silent(told: Told) -> str:
    days = counted(told.number("value"), "day")
    return f"{days} in season without any line. What was thrown is unknown; it may not be rest."


def _months(told: Told) -> str:
    return (
        f"games in {told.number('value')} of the last twelve months. The line is "
        f"{told.number('limit')}; months without competitive pitching are advised."
    )


def _spin_week(told: Told) -> str:
    reps = counted(told.number("value"), "spin rep")
    sessions = counted(told.number("sessions"), "session")
    return (
        f"{reps} last week in {sessions} of catch play. The line is {told.number('limit')} a week."
    )


def _innings(told: Told) -> str:
    uncounted = told.number("uncounted")
    games = (
        f" {counted(uncounted, 'game')} without counted innings not included." if uncounted else ""
    )
    return (
        f"{innings_of(told.number('outs'))} in twelve months, {told.number('value')} % of the "
        f"{innings(told.number('cap'))} that {safe(told.figures['source'])} allows.{games} "
        f"{RULES_GOVERN}"
    )


def _in_row(told: Told) -> str:
    days = counted(told.number("value"), "day")
    return f"pitches on {days} in a row{_until(told)}. {ARM_PAIN} {RULES_GOVERN}"


def _games_a_day(told: Told) -> str:
    games = counted(told.number("value"), "game")
    return f"pitched in {games} on one day{_on(told)}. {ARM_PAIN} {RULES_GOVERN}"


def _catching(told: Told) -> str:
    outs = counted(told.number("value"), "out")
    return f"caught {outs} on a day with a game as pitcher{_on(told)}. {RULES_GOVERN}"


def _two_teams(told: Told) -> str:
    days = told.number("value")
    apart = "on one day" if days == 1 else f"within {counted(days, 'day')}"
    return f"games for two teams {apart}{_until(told)}. {ARM_PAIN} {RULES_GOVERN}"


def _until(told: Told) -> str:
    return f", up to {day(told.on)}" if told.on else ""


#: Yang et al., Am J Sports Med 42 (2014) 1456-1463: consecutive days, several games a day and
#: overlapping teams went with more arm pain.
ARM_PAIN = "In a national survey of young pitchers this went with more arm pain."

SAID: Mapping[Key, tuple[str, Callable[[Told], str]]] = {
    Key.MIX: ("Mix over the line.", _mix),
    Key.LOW_MIX: ("Mix under the lower line.", _low_mix),
    Key.CHANGEUP: ("Few changeups.", _changeup),
    Key.GAME_BREAKING: ("Many breaking balls in one game.", _game),
    Key.PAIN_REPORTS: ("Reports of pain.", _pain),
    Key.TIRED_REPORTS: ("Reports of a tired arm.", _tired),
    Key.WEEK_PITCHES: ("Pitches in 7 days.", _week),
    Key.MORE_THROWS: ("More throws than usual.", _more),
    Key.SPIN_REPS: ("Many spin reps.", _spins),
    Key.SPIN_EFFORT: ("Spin reps at high effort.", _effort),
    Key.SILENT_DAYS: ("No line.", _silent),
    Key.MONTHS: ("Months with games.", _months),
    Key.SPIN_WEEK: ("Few spin reps in a week.", _spin_week),
    Key.INNINGS: ("Innings near the year's cap.", _innings),
    Key.ALL_INNINGS: ("The year's innings are used up.", _innings),
    Key.DAYS_IN_ROW: ("Days in a row.", _in_row),
    Key.GAMES_A_DAY: ("Several games in a day.", _games_a_day),
    Key.CATCHING: ("Pitcher and catcher on one day.", _catching),
    Key.TWO_TEAMS: ("Two teams.", _two_teams),
}


def shortly(told: Told, raised_on: date) -> str:
    """An alert in a line: when it was raised, about whom, the figures."""
    title, words = SAID[told.key]
    return f"{day(raised_on)}, *{safe(told.pitcher)}*. {title} {words(told)}"


def to_staff(told: Told, outings: Sequence[str], seen_by: Sequence[str], *, returned: bool) -> str:
    """An alert as the staff read it."""
    title, words = SAID[told.key]
    seen = f"Seen by {listed([safe(name) for name in seen_by])}." if seen_by else ""
    return sentences(
        [
            f"*{title}* {safe(told.pitcher)}: {words(told)}",
            *(f"• {one}" for one in outings),
            back(told.key) if returned else "",
            seen,
        ]
    )


def together(told: Sequence[tuple[Told, bool]], seen_by: Sequence[str]) -> str:
    """One alert about several arms; each with whether it holds still."""
    if len(told) == 1:
        ((one, stands),) = told
        return to_staff(one, (), seen_by, returned=not stands)
    title, words = SAID[told[0][0].key]
    seen = f"Seen by {listed([safe(name) for name in seen_by])}." if seen_by else ""
    return sentences(
        [
            f"*{title}*",
            *(
                f"• {safe(one.pitcher)}: {words(one)}{'' if stands else f' {BACK}'}"
                for one, stands in told
            ),
            seen,
        ]
    )


def to_guardian(told: Told, *, returned: bool) -> str:
    """An alert about health and rest as a parent reads it."""
    title, words = SAID[told.key]
    text = f"*{title}* {safe(told.pitcher)}: {words(told)} The coaches have been told."
    return sentences([text, back(told.key) if returned else ""])


def to_pitcher(told: Told, *, returned: bool) -> str:
    """A mix that was the pitcher's own choice, in his own terms and kindly."""
    if told.key is Key.MIX:
        text = (
            f"{told.number('of')} of your last {told.number('typed')} game pitches were "
            f"breaking balls, {told.share}. Coach's line for you is {told.number('limit')} %. Next "
            "time more fastball and changeup."
        )
    else:
        of = f" of your {told.number('pitches')} pitches" if "pitches" in told.figures else ""
        text = (
            f"{counted(told.number('breaking'), 'breaking ball')}{of} in one game{_on(told)} is a "
            "lot. Next time more fastball and changeup."
        )
    return sentences([text, back(told.key) if returned else ""])


def on_hold_for_pitcher() -> str:
    """What stands in place of words on the mix while the pitcher's own arm must not pitch."""
    return "No pitching for now, so nothing is said here about your mix."


#: Said of an alert whose reason is gone; time that goes by makes no arm better.
BACK = "_Back within the line since._"
_BACK = {
    Key.PAIN_REPORTS: "_Fewer reports within the last 14 days since; that ends nothing._",
    Key.TIRED_REPORTS: "_Fewer reports within the last 14 days since._",
    Key.SILENT_DAYS: "_A line has come since, or the season is over._",
}


def back(key: Key) -> str:
    """What is added to an alert that no longer stands."""
    return _BACK.get(key, BACK)


SEEN = "Seen"


def taken_back(key: Key, pitcher: str) -> str:
    """An alert whose reason a correction undid."""
    title = SAID[key][0].rstrip(".").casefold()
    return f"Taken back: “{title}” no longer holds for {safe(pitcher)}."


def taken_back_for_pitcher() -> str:
    """The same for the pitcher himself."""
    return "Taken back: your mix is within the coach's line."


def outing(on: date, pitches: int | None, breaking: int | None, kind: str) -> str:
    """One outing behind an alert."""
    count = "not counted" if pitches is None else counted(pitches, "pitch", "pitches")
    balls = f", {counted(breaking, 'breaking ball')}" if breaking is not None else ""
    return f"{day(on)}, {kind}: {count}{balls}"


@dataclass(frozen=True, slots=True)
class Listed:
    """One alert in a list."""

    on: date
    told: Told
    state: str
    seen: tuple[str, ...]


def listing(whom: str, rows: Sequence[Listed]) -> str:
    """The alerts of a team or a pitcher, newest first."""
    if not rows:
        return f"No alert has been raised for {safe(whom)}."
    told = [
        f"• {day(one.on)}: {safe(one.told.pitcher)}, {_title(one.told)}: {_figures_of(one.told)} "
        f"({one.state}{_seen(one.seen)})"
        for one in rows
    ]
    return sentences([f"*Alerts for {safe(whom)}, newest first*", *told])


def _title(told: Told) -> str:
    return SAID[told.key][0].rstrip(".").casefold()


def _figures_of(told: Told) -> str:
    """The figures that it was raised on, without what is advised."""
    first, _, _ = SAID[told.key][1](told).partition(". ")
    return first.rstrip(".")


def _seen(names: Sequence[str]) -> str:
    return f"; seen by {listed([safe(name) for name in names])}" if names else ""
