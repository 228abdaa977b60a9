"""The answer to a line: what was read, the breaking-ball share, the rest owed."""

from collections.abc import Sequence
from datetime import date, timedelta

from bot.wording.questions import FIELD_NAMES
from bot.wording.words import (
    counted,
    day,
    days_between,
    innings,
    innings_of,
    listed,
    percent,
    plain,
    safe,
    sentences,
)
from core.ledger.corrections import Correction
from core.ledger.history import only_caught
from core.ledger.logged import Logged
from core.ledger.view import Standing
from core.mix import Mix, Window, wilson
from core.model import Outing
from core.rest import Reason, RestAnswer, RestOwed

KIND_NAMES = {
    "game": "Game",
    "bullpen": "Bullpen",
    "catch": "Catch play",
    "live": "Live",
    "off": "Day off",
    None: "Outing, kind not said",
}
RULES_GOVERN = "League and local rules govern."


def outing_heading(pitcher: str | None, outing: Outing | Logged) -> str:
    """Whose outing, of what kind, on which day; no name where it is the reader's own."""
    kind = "Behind the plate" if only_caught(outing) else KIND_NAMES[outing.kind]
    what = f"{kind}, {day(outing.on)}"
    return f"*{safe(pitcher)}* · {what}" if pitcher else f"*{what}*"


def what_was_read(outing: Outing | Logged) -> str:
    """Every count that was read, so that a wrong one is seen at once."""
    noun = "throw" if outing.kind == "catch" else "pitch"
    parts = []
    if outing.pitches is not None:
        about = "about " if outing.about else ""
        parts.append(
            about + counted(outing.pitches, noun, "throws" if noun == "throw" else "pitches")
        )
    parts += _breaking_parts(outing)
    parts += [
        counted(count, FIELD_NAMES[name].removesuffix("s"), FIELD_NAMES[name])
        for name in ("changeup", "fastball", "strikes", "breaking_strikes")
        if (count := getattr(outing, name)) is not None
    ]
    if outing.outs is not None:
        parts.append(innings_of(outing.outs))
    if outing.caught_outs is not None:
        parts.append(f"{innings_of(outing.caught_outs)} caught")
    if outing.effort is not None:
        parts.append(f"{outing.effort} % effort")
    return f"Read: {', '.join(parts)}." if parts else ""


def _breaking_parts(outing: Outing | Logged) -> list[str]:
    if outing.breaking is None:
        return []
    kinds = [
        counted(count, name.removesuffix("s"), name)
        for name, count in (("curveballs", outing.curve), ("sliders", outing.slider))
        if count
    ]
    split = f" ({listed(kinds)})" if kinds else ""
    return [counted(outing.breaking, "breaking ball") + split]


def roll_call(outing: Outing, names: Sequence[str]) -> str:
    """Who was logged with the same practice, by name."""
    read = what_was_read(outing).removeprefix("Read: ").removesuffix(".")
    each = f", {read} each" if read else ""
    return f"{outing_heading(None, outing)}{each}: {listed([safe(name) for name in names])}."


def share_line(outing: Outing, standing: Standing) -> str:
    """The breaking-ball share of this game and over the windows, with what it is made of."""
    mix = standing.outing_mix
    if outing.waiting or mix.share is None:
        return _no_share(outing)
    own = f"Breaking balls: {mix.breaking} of {mix.typed} = {percent(mix.share)}."
    untyped = standing.windows[Window.MONTH].untyped
    apart = f" {counted(untyped, 'pitch', 'pitches')} of unknown type left out." if untyped else ""
    return f"{own} {_spans(standing)}.{apart}{_strike_rate(outing)}"


def _spans(standing: Standing) -> str:
    """The share over the windows; windows that hold the same games are named together."""
    if standing.windows[Window.SEASON] == standing.outing_mix:
        return "No other game with pitch types this season"
    grouped: dict[Mix, list[str]] = {}
    for window in Window:
        grouped.setdefault(standing.windows[window], []).append(window)
    spans = [f"{listed(names)} {_of(mix)}" for mix, names in grouped.items() if mix.typed]
    return _capital(", ".join(spans))


def _of(mix: Mix) -> str:
    return f"{percent(mix.share or 0.0)} ({mix.breaking}/{mix.typed})"


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def _no_share(outing: Outing) -> str:
    if outing.waiting:
        return "Breaking-ball share: waits for the answer to the question below."
    if outing.breaking is None:
        return "Breaking-ball share: not known; add the count to the line (“11 cb”, “no curves”)."
    return "Breaking-ball share: not known; add the pitch count to the line (“62p”)."


def _strike_rate(outing: Outing) -> str:
    """How often it was a strike: an estimate, so never without its interval and sample."""
    if not outing.breaking or outing.breaking_strikes is None:
        return ""
    low, high = wilson(outing.breaking_strikes, outing.breaking)
    return (
        f" For strikes: {outing.breaking_strikes} of {outing.breaking}, which says only "
        f"{round(low * 100)}–{percent(high)}."
    )


def larger_owes(outing: Outing, larger: int | None) -> str:
    """Said while nobody has answered whether a larger count is of the same outing."""
    if larger is None:
        return ""
    return (
        f"Another line counts {counted(larger, 'pitch', 'pitches')} on {day(outing.on)}. Is it "
        "the same outing? Its author is asked; until then the larger count owes the rest."
    )


def rest_line(outing: Outing, rest: RestAnswer, hurts: str) -> str:
    """The rest owed by rule, with the count, the row and the book that it stands on.

    An arm that hurts is named no date: pain outranks every number. `hurts` is "pain",
    "soreness" or nothing.
    """
    owed = next((one for one in rest.rest if one.on == outing.on), None)
    if hurts:
        first = SORE_FIRST if hurts == "soreness" else PAIN_FIRST
        return f"By the rule book alone: {_owed(owed)}{first}"
    if _moved(owed, rest):
        # Another rule decides the date, so that one comes first.
        return f"Rest: {_earliest(owed, rest)}"
    return f"Rest: {_owed(owed)}{_earliest(owed, rest)}"


SORE_FIRST = "The soreness comes first: no date while it stands."
PAIN_FIRST = "The pain comes first: no date until a clinician has checked the arm."


def _owed(owed: RestOwed | None) -> str:
    if owed is None or owed.reason is None:
        return "no book asks for rest after this. "
    source = _source(owed.reason)
    pitches = "an uncounted outing" if owed.pitches is None else _thrown(owed.reason, owed.pitches)
    if owed.days == 0:
        return f"none owed for {pitches} ({source}). "
    first, last = owed.on + timedelta(days=1), owed.on + timedelta(days=owed.days)
    note = _why_longer(owed.reason)
    return (
        f"{days_between(first, last)}, {counted(owed.days, 'day')} for {pitches} ({source}). {note}"
    )


def _thrown(reason: Reason, number: int) -> str:
    about = "about " if reason.about else ""
    return about + counted(number, "pitch", "pitches")


def _source(reason: Reason) -> str:
    row = ""
    if reason.row_from is not None:
        row = (
            f": {reason.row_from}+"
            if reason.row_to is None
            else f": {reason.row_from}–{reason.row_to}"
        )
    band = f", {reason.band}" if reason.band else ""
    return f"{reason.title}{band}{row}"


def _why_longer(reason: Reason) -> str:
    if reason.uncounted:
        return "Nobody counted, so the longest rest stands until the count is added. "
    if reason.about and reason.pitches is not None and reason.pitches < (reason.row_from or 0):
        return "The count is an estimate near the next row, so that row stands. "
    return ""


def _earliest(owed: RestOwed | None, rest: RestAnswer) -> str:
    if rest.next_eligible is None:
        reasons = listed([plain(reason.says) for reason in rest.why if reason.binds])
        return f"No date within a year by rule: {reasons}."
    earliest = f"Earliest {day(rest.next_eligible)} by rule; the coach decides the count."
    return _more_reasons(owed, rest) + earliest


def _more_reasons(owed: RestOwed | None, rest: RestAnswer) -> str:
    """The rules that move the date beyond the outing's own rest."""
    if not _moved(owed, rest):
        return ""
    own = _own_date(owed)
    binding = [reason for reason in rest.why if reason.binds]
    dated = [reason for reason in binding if reason.until is not None and reason.until > own]
    says = [_rule(reason) for reason in dated or binding]
    return f"{'; '.join(dict.fromkeys(says))}. " if says else ""


def _own_date(owed: RestOwed | None) -> date:
    """The first date after the outing's own rest."""
    return owed.on + timedelta(days=owed.days + 1) if owed is not None else date.min


def _moved(owed: RestOwed | None, rest: RestAnswer) -> bool:
    """Whether another rule than the outing's own rest decides the date."""
    return rest.next_eligible is None or rest.next_eligible > _own_date(owed)


def broken_line(outing: Outing, standing: Standing) -> str:
    """The rules that this day's outings went over: said plainly, and the outing is kept."""
    if not standing.broken:
        return ""
    says = dict.fromkeys(_rule(one) for one in standing.broken)
    return f"Over the rule on {day(outing.on)}: {'; '.join(says)}. The outing is kept as logged."


def _rule(reason: Reason) -> str:
    """One rule in plain words: the rest that was owed, or the cap."""
    if reason.rule == "rest" and reason.on is not None and reason.days is not None:
        thrown = (
            "an uncounted outing"
            if reason.pitches is None
            else counted(reason.pitches, "pitch", "pitches")
        )
        return (
            f"{thrown} on {day(reason.on)} owed {counted(reason.days, 'day')} of rest "
            f"({_source(reason)})"
        )
    return f"{plain(reason.says)} ({_source(reason)})"


def rest_problem(problem: str) -> str:
    """Said where no book could answer; the same as "no limit" it is not."""
    return f"Rest: could not be worked out ({safe(problem)}). Ask the coach before throwing."


def first_time(reaction: str) -> str:
    """What a reaction will mean from now on."""
    return f"It's in the log. From now on a :{reaction}: under your line means that."


def put_right_by(corrections: Sequence[Correction]) -> str:
    """What others changed, and who."""
    told: dict[str, list[str]] = {}
    for one in corrections:
        name = FIELD_NAMES.get(one.field, {"on": "day", "kind": "kind"}.get(one.field, one.field))
        told.setdefault(one.by, []).append(
            f"{name} {_shown(one.field, one.before)} → {_shown(one.field, one.after)}"
        )
    return sentences(
        f"Put right by {safe(by)}: {', '.join(changes)}." for by, changes in told.items()
    )


def _shown(field: str, value: object) -> str:
    if value is None:
        return "none"
    if field in {"outs", "caught_outs"} and isinstance(value, int):
        return innings(value)
    return day(date.fromisoformat(str(value))) if field == "on" else safe(str(value))


def two_counts(pitcher: str, on: date, counts: Sequence[tuple[str, int | None]]) -> str:
    """Both counts of an outing that two people logged, for the staff."""
    both = " and ".join(
        f"{'no count' if count is None else counted(count, 'pitch', 'pitches')} (by {safe(by)})"
        for by, count in counts
    )
    return (
        f"*Two counts* for {safe(pitcher)}, {day(on)}: {both}. It is counted once, and "
        "the higher count stands until one is put right or undone."
    )


def moved_day(outing: Outing) -> str:
    """Said when a line from the small hours was laid to the day before."""
    return f"Posted before 04:00 with no day named, so I put it on {day(outing.on)}."


def taken_back(by: str = "") -> str:
    """What an answer says once its line is out of the record; `by` where another took it out."""
    return f"Taken back{f' by {safe(by)}' if by else ''}: this line no longer counts."


#: What a staff channel reads where the answer has left it.
QUESTION_ANSWERED_ALONE = (
    "That is about another team's pitcher: the answer is in a direct message to whoever asked."
)
ANSWERED_ALONE = (
    "This line speaks of another team's pitcher, so I answer it to whoever wrote it, and not here."
)


def broken_for_staff(author: str, parts: list[str]) -> str:
    """Told to the staff when an outing that was logged went over a rule."""
    head = f"*Over a rule* (logged by {safe(author)})"
    return sentences([head, *parts, f"{RULES_GOVERN} The coach decides what follows."])


def within_rules_again() -> str:
    """What that notice says once a correction undid its reason."""
    return "Taken back: after a correction no rule is gone over here."


def asked_author(author: str, questions: list[str]) -> str:
    """What the author of a line was asked, for the staff to know."""
    return f"Asked {safe(author)}: " + " ".join(questions)


def counted_by(author: str) -> str:
    """The heading of counts that a scorekeeper logged, for the staff."""
    return f"*Counts by {safe(author)}*"
