"""A line as one would type it, from its fields: `read` gives exactly these fields back.

Forms write such lines, so that what was filled in and what was typed is recorded in one way.
"""

from collections.abc import Iterable
from datetime import date

from core.reading.entry import Entry, Pain

KINDS = {
    "game": "game", "bullpen": "bullpen", "live": "live", "catch": "catch play", "off": "off",
}  # fmt: skip
_COUNTS = (
    # Strikes next to a pitch type might be that type's strikes.
    ("strikes", "strikes"), ("breaking", "breaking balls"), ("curve", "curveballs"),
    ("slider", "sliders"), ("changeup", "changeups"), ("fastball", "fastballs"),
)  # fmt: skip
WHEN = {
    "during": "while throwing", "after": "after throwing", "next day": "the next day",
    "at rest": "at rest",
}  # fmt: skip


def write(entry: Entry, on: date) -> str:
    """The line of one entry, dated `on`: "Leo Ortiz: game, 2026-05-02, 62 pitches"."""
    parts = [KINDS[entry.kind]] if entry.kind is not None else []
    parts += [on.isoformat(), *_counted(entry), *(_pain(one) for one in entry.pain or ())]
    return f"{_who(entry)}{', '.join(parts)}"


def write_game(entries: Iterable[Entry], on: date) -> str:
    """The counts of one game, a pitcher a line, under the day."""
    lines = [f"{_who(one)}{', '.join(_counted(one))}" for one in entries]
    return "\n".join([f"Game, {on.isoformat()}", *lines])


def _who(entry: Entry) -> str:
    if entry.who is None:
        return ""
    if entry.who != "everyone":
        return f"{entry.who}: "
    *most, last = entry.except_ or ("",)
    left_out = f"{', '.join(most)} and {last}" if most else last
    return f"Everyone except {left_out}: " if left_out else "Everyone: "


def _counted(entry: Entry) -> list[str]:
    parts = []
    if entry.pitches is not None:
        parts.append(f"{entry.pitches} {'throws' if entry.kind == 'catch' else 'pitches'}")
    for name, noun in _COUNTS:
        count = getattr(entry, name)
        if count is not None and not (name == "breaking" and _is_the_sum(entry)):
            # "1 strikes" may be two readings; of the other nouns the plural is the surer one.
            parts.append(f"{count} {'strike' if (name, count) == ('strikes', 1) else noun}")
    if entry.outs is not None:
        parts.append(f"{entry.outs // 3}.{entry.outs % 3} innings")
    if entry.effort is not None:
        parts.append(f"{entry.effort}% effort")
    return parts


def _is_the_sum(entry: Entry) -> bool:
    """Whether the breaking balls are just the curveballs and sliders that are named."""
    named = [one for one in (entry.curve, entry.slider) if one is not None]
    return bool(named) and entry.breaking == sum(named)


def _pain(pain: Pain) -> str:
    hurts = "sore" if pain.sore else "hurts"
    words = [pain.side, pain.site, hurts]
    words.append(f"{pain.severity}/10" if pain.severity is not None else None)
    words.append(WHEN[pain.when] if pain.when is not None else None)
    return " ".join(word for word in words if word)
