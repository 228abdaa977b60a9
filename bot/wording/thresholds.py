"""Thresholds as the staff read and set them: what each means, and what it is set to."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from bot.wording.words import safe, sentences
from core.alerts import THRESHOLDS, Key, Threshold, threshold


@dataclass(frozen=True, slots=True)
class SetNow:
    """What a line set: for whom (empty: the team), and the value before and after."""

    key: Key
    whom: str
    before: int | None
    after: int | None


def value(row: Threshold, number: int | None) -> str:
    """A value with its unit: "20 %", "2 in 14 days", "1 day", "off"."""
    if number is None:
        return "off"
    one, *more = row.unit.split()
    unit = " ".join([one.removesuffix("s"), *more]) if number == 1 else row.unit
    return f"{number} {unit}"


def plain_value(number: int | None) -> str:
    """A value as one types it into the form: "20", "off"."""
    return "off" if number is None else str(number)


def field(row: Threshold) -> str:
    """The label of a threshold's input: "Mix (%)"."""
    return f"{row.key[0].upper()}{row.key[1:]} ({row.unit})"


def hint(row: Threshold, by_default: int | None, *, of_team: bool) -> str:
    """What stands under the input: the default, the range and the meaning."""
    default = f"Default: {value(row, row.at_first)}."
    team = f"Team: {value(row, by_default)}. " if of_team else ""
    off = ", or off" if row.may_be_off else ""
    return f"{team}{default} {row.low} to {row.high}{off}. {row.meaning}"


def form_note(whom: str) -> str:
    """What stands above the inputs."""
    return (
        f"*{safe(whom)}.* A whole number, “off” or “default” in each; an empty one is the default. "
        "Defaults are common practice unless a source is named; none of them says what an arm "
        "bears."
    )


def not_taken(row: Threshold, typed: str) -> str:
    """What stands under an input whose value cannot be taken."""
    words = ", “off” or “default”" if row.may_be_off else " or “default”"
    return (
        f"A whole number from {row.low} to {row.high} ({row.unit}){words}, not “{typed}”. Nothing "
        "was saved."
    )


def setting_unclear(key: str, typed: str) -> str:
    """A refusal in one sentence that says what is accepted."""
    if key == "team":
        return "I set nothing yet: you coach more than one team. For which one is it?"
    row = threshold(Key(key))
    words = " or “default”" if not row.may_be_off else ", “off” or “default”"
    return (
        f"I set nothing: “{safe(row.key)}” takes a whole number from {row.low} to {row.high} "
        f"({row.unit}){words}, not “{safe(typed)}”."
    )


def confirmed(now: SetNow) -> str:
    """What a line set, with what it means and what it was before."""
    row = threshold(now.key)
    whom = f"for {safe(now.whom)}" if now.whom else "for the team"
    return (
        f"Set {whom}: {row.key} {value(row, now.after)} (before: {value(row, now.before)}; "
        f"default: {value(row, row.at_first)}). {row.meaning}"
    )


TAKEN_BACK = "Taken back: what this line set no longer holds; what was set before does."


#: The thresholds in the order in which a coach thinks of them; a test finds each in one group.
GROUPS: Mapping[str, tuple[Key, ...]] = {
    "Pitch mix": (
        Key.MIX, Key.LOW_MIX, Key.GAME_BREAKING, Key.URGENT_BREAKING, Key.CHANGEUP,
    ),
    "Pain": (Key.PAIN, Key.PAIN_REPORTS, Key.TIRED_REPORTS),
    "Workload": (
        Key.WEEK_PITCHES, Key.MORE_THROWS, Key.DAYS_IN_ROW, Key.GAMES_A_DAY, Key.CATCHING,
        Key.TWO_TEAMS, Key.MONTHS, Key.INNINGS, Key.ALL_INNINGS,
    ),
    "Spin reps and silence": (Key.SPIN_REPS, Key.SPIN_EFFORT, Key.SPIN_WEEK, Key.SILENT_DAYS),
}  # fmt: skip


def in_short(
    whom: str, limits: Mapping[Key, int | None], team: Mapping[Key, int | None] | None
) -> str:
    """What differs from the defaults (or the team), and a line for each group."""
    differ = [
        row
        for row in THRESHOLDS
        if limits[row.key] != row.at_first
        or (team is not None and team[row.key] != limits[row.key])
    ]
    head = f"{len(differ)} of {len(THRESHOLDS)} differ" if differ else "all at their defaults"
    groups = [
        f"_{name}_: {', '.join(_brief(threshold(one), limits) for one in keys)}."
        for name, keys in GROUPS.items()
    ]
    return sentences(
        [
            f"*Thresholds for {safe(whom)}*: {head}.",
            *(_row(row, limits, team) for row in differ),
            *groups,
            "Set one with “set mix 18%” or “set mix 18% for Leo”; “all thresholds” says what each "
            "means. Rules of a book and your own limits are told whatever is set.",
        ]
    )


def _brief(row: Threshold, limits: Mapping[Key, int | None]) -> str:
    return f"{row.key} {value(row, limits[row.key])}"


def listing(
    whom: str, limits: Mapping[Key, int | None], team: Mapping[Key, int | None] | None
) -> str:
    """Every threshold with its value, its default and its meaning; how to set one."""
    rows = [_row(row, limits, team) for row in THRESHOLDS]
    return sentences(
        [
            f"*Thresholds for {safe(whom)}*",
            *rows,
            "Told whatever is set: a rule of a book, or a coach's limit, that was gone over.",
            "Set one with “set mix 18%”, “set mix 18% for Leo”, “set mix off”, “set mix default "
            "for Leo”. Defaults are common practice unless a row names a source; none of them says "
            "what an arm bears.",
        ]
    )


def _row(
    row: Threshold, limits: Mapping[Key, int | None], team: Mapping[Key, int | None] | None
) -> str:
    own = team is not None and team[row.key] != limits[row.key]
    of_team = f", team: {value(row, team[row.key])}" if own and team is not None else ""
    is_default = limits[row.key] == row.at_first and not of_team
    default = "the default" if is_default else f"default: {value(row, row.at_first)}{of_team}"
    return f"• {row.key}: *{value(row, limits[row.key])}* ({default}). {row.meaning}"


def history(rows: Sequence[tuple[str, str, str, str]]) -> str:
    """What was set, when and by whom: (day, name, what, whom), newest first."""
    if not rows:
        return "Nothing has been changed yet."
    told = [f"• {when}: {safe(by)} set {what} {safe(whom)}" for when, by, what, whom in rows]
    return sentences(["*Changes, newest first*", *told])
