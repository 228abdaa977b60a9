"""What the parts of a rule book must be to one another: no gap, no overlap, no missing limit."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import combinations, product

from core.rulebooks.book import Band, RuleBook
from core.rulebooks.measure import Window
from core.rulebooks.rules import Cap, Rest, Rule

Place = tuple[str | int, ...]
Span = tuple[int, int]


@dataclass(frozen=True, slots=True)
class Fault:
    """What is wrong, and where: the path of keys and positions inside the file."""

    at: Place
    says: str


def faults(book: RuleBook) -> Iterator[Fault]:
    """Everything in a well-formed book that does not fit together."""
    yield from _band_faults(book)
    for number, rule in enumerate(book.rule):
        yield from _rule_faults(book, rule, ("rule", number))
    yield from _doubles(book)
    yield from _unlimited(book)


def binds(rule: Rule, band: Band, phase: str) -> bool:
    """Whether a rule speaks of this band in this phase."""
    return (not rule.bands or band.name in rule.bands) and (not rule.phases or phase in rule.phases)


def _band_faults(book: RuleBook) -> Iterator[Fault]:
    for (_, one), (number, other) in combinations(enumerate(book.band), 2):
        if one.name == other.name:
            yield Fault(("band", number, "name"), f'a second band is named "{one.name}": rename it')
        elif _overlap(one, other):
            yield Fault(
                ("band", number),
                f'bands "{one.name}" and "{other.name}" overlap: one pitcher would fall in both',
            )
    yield from _holes(book.band, "age")
    yield from _holes(book.band, "grade")


def _overlap(one: Band, other: Band) -> bool:
    levels = not one.level or not other.level or bool(set(one.level) & set(other.level))
    return levels and _meet(one.age, other.age) and _meet(one.grade, other.grade)


def _meet(one: Span | None, other: Span | None) -> bool:
    return one is None or other is None or (one[0] <= other[1] and other[0] <= one[1])


def _holes(bands: tuple[Band, ...], key: str) -> Iterator[Fault]:
    """Ages (or grades) between the lowest and the highest that no band names."""
    spans = [(getattr(band, key), number) for number, band in enumerate(bands)]
    reached: int | None = None
    for span, number in sorted((s, n) for s, n in spans if s is not None):
        if reached is not None and span[0] > reached + 1:
            yield Fault(
                ("band", number, key),
                f"no band covers {key} {reached + 1} to {span[0] - 1}: add one or widen a band",
            )
        reached = max(span[1], reached or 0)


def _rule_faults(book: RuleBook, rule: Rule, at: Place) -> Iterator[Fault]:
    names = {band.name for band in book.band}
    for name in rule.bands:
        if name not in names:
            known = ", ".join(f'"{known}"' for known in names)
            yield Fault((*at, "bands"), f'no band is named "{name}": the bands are {known}')
    for phase in rule.phases:
        if phase not in book.phases:
            yield Fault((*at, "phases"), f'add "{phase}" to the phases at the top of the file')
    if isinstance(rule, Cap | Rest):
        yield from _window_faults(book, rule, at)
    if isinstance(rule, Rest):
        yield from _open_end(book, rule, at)


def _window_faults(book: RuleBook, rule: Cap | Rest, at: Place) -> Iterator[Fault]:
    window = rule.window
    if window.back or window.last or window.span == "other-games":
        yield Fault(
            (*at, "window"),
            "this window leaves out the day itself: it may stand in a condition (when), not here",
        )
    windows: list[Window] = [window, *(condition.window for condition in rule.when)]
    if book.season is None and any(each.span == "season" for each in windows):
        yield Fault((*at, "window"), 'a season needs its first day: add [season] begins = "03-01"')


def _open_end(book: RuleBook, rule: Rest, at: Place) -> Iterator[Fault]:
    """A table that stops must stop where a cap of its band stops; else rows were forgotten."""
    end = rule.rows[-1].to
    if end is None:
        return
    for band, phase in product(book.band, book.phases):
        if binds(rule, band, phase) and end not in _ends(book, rule, band, phase):
            yield Fault(
                (*at, "rows", len(rule.rows) - 1),
                f'the table ends at {end}, but in band "{band.name}" ({phase}) no cap on '
                f"{rule.unit} is {end}: leave out the last to, or add the rows that are missing",
            )
            return


def _ends(book: RuleBook, rule: Rest, band: Band, phase: str) -> set[int]:
    return {
        cap.max
        for cap in book.rule
        if isinstance(cap, Cap) and cap.unit == rule.unit and binds(cap, band, phase)
    }


def _doubles(book: RuleBook) -> Iterator[Fault]:
    """Two unconditional rules about one measure, one band and one phase are a slip of typing."""
    plain = [
        (number, rule)
        for number, rule in enumerate(book.rule)
        if isinstance(rule, Cap | Rest) and not rule.when
    ]
    for (_, one), (number, other) in combinations(plain, 2):
        same = _what(one) == _what(other)
        for band, phase in product(book.band, book.phases) if same else ():
            if binds(one, band, phase) and binds(other, band, phase):
                yield Fault(
                    ("rule", number),
                    f'a second {one.verb} on the same measure for band "{band.name}" ({phase}): '
                    "give each rule its own bands or phases, or remove one",
                )
                break


def _what(rule: Cap | Rest) -> tuple[object, ...]:
    advised = isinstance(rule, Cap) and rule.advice
    return rule.verb, rule.unit, rule.window, rule.kinds, advised


def _limits_pitching(rule: Rule) -> bool:
    """Whether a rule by itself limits pitching: no advice, no condition, not about catching."""
    if not isinstance(rule, Cap | Rest) or rule.unit.startswith("caught"):
        return False
    return isinstance(rule, Rest) or (not rule.advice and not rule.when)


def _unlimited(book: RuleBook) -> Iterator[Fault]:
    for (number, band), phase in product(enumerate(book.band), book.phases):
        if not any(_limits_pitching(rule) and binds(rule, band, phase) for rule in book.rule):
            yield Fault(
                ("band", number),
                f'band "{band.name}" has no cap and no rest on pitching in {phase}: add one, or '
                "take the band out; no rule is never no limit",
            )
