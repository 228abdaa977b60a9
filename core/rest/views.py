"""One rule book looking at one pitcher's record: which of its rules apply on a day."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from functools import lru_cache

from core.rest.record import Record
from core.rest.values import Phase, RestError, Thrower, Thrown
from core.rulebooks import KINDS, Band, Cap, Measure, NotCoveredError, Off, Rest, RuleBook

_PER_INNING = {"outs": 3, "innings-begun": 1}


@dataclass(frozen=True, slots=True)
class Table:
    """A rest table, and the cap on the same measure: over it, the highest row is owed."""

    rule: Rest
    maximum: int | None


@dataclass(frozen=True, slots=True)
class Rules:
    """The rules of one band in one phase."""

    band: Band
    caps: tuple[Cap, ...]
    tables: tuple[Table, ...]
    offs: tuple[Off, ...]

    def daily(self, measure: Measure) -> int | None:
        """The smallest unconditional cap on a unit in a day or a game; None without one.

        Outs and innings begun stand in for each other, three outs to an inning.
        """
        unit = measure.unit
        found = [
            cap.max * _PER_INNING.get(unit, 1) // _PER_INNING.get(cap.unit, 1)
            for cap in self.caps
            if cap.unit == unit or {cap.unit, unit} <= set(_PER_INNING)
            if cap.window.span in ("day", "game") and not cap.when and not cap.advice
            if cap.kinds == measure.kinds
        ]
        return min(found, default=None)


@dataclass(frozen=True, slots=True)
class View:
    """A book, the pitcher it looks at, and the outings that each of its measures counts."""

    book: RuleBook
    thrower: Thrower
    phase: Phase
    records: Mapping[tuple[str, ...], Record]

    @property
    def record(self) -> Record:
        """The outings of the book's own kinds."""
        return self.records[()]

    def record_of(self, measure: Measure) -> Record:
        """The outings that a measure counts."""
        return self.records[measure.kinds]

    def counts(self, measure: Measure, kind: str) -> bool:
        """Whether a measure counts outings of a kind."""
        return kind in (measure.kinds or self.book.counting.kinds)

    def counts_at_all(self, kind: str) -> bool:
        """Whether any measure of the book counts outings of a kind."""
        own = self.book.counting.kinds
        return any(kind in (kinds or own) for kinds in self.records)

    def plus(self, outing: Thrown) -> "View":
        """The same book looking at the record with one more outing."""
        more = {kinds: record.plus(outing) for kinds, record in self.records.items()}
        return replace(self, records=more)

    def days_between(self, first: date, last: date) -> list[date]:
        """The days on which anything was done that a rest table counts, in order."""
        tables = _rest_kinds(self.book)
        if len(tables) == 1:
            return self.records[tables[0]].days_between(first, last)
        return sorted(
            {d for kinds in tables for d in self.records[kinds].days_between(first, last)}
        )

    def rules(self, on: date) -> Rules:
        """The rules that apply on a date. Raises NotCoveredError when the book has none."""
        self.book.check_date(on)
        return self._for(on)

    def rules_then(self, day: date, on: date) -> Rules:
        """The rules of a day gone by; of the date asked about where no band covered that day."""
        try:
            return self._for(day)
        except (NotCoveredError, RestError):
            return self._for(on)

    def _for(self, on: date) -> Rules:
        thrower = self.thrower
        age = thrower.age
        if thrower.birth_date is not None:
            try:
                age = self.book.age_of(thrower.birth_date, on)
            except ValueError as error:
                raise RestError(str(error)) from error
        band = self.book.band_for(age=age, grade=thrower.grade, level=thrower.level)
        return _rules(self.book, band.name, self.phase)


@lru_cache(maxsize=1024)
def _rules(book: RuleBook, band: str, phase: Phase) -> Rules:
    known = phase if phase in book.phases else "regular"
    mine = [
        rule
        for rule in book.rule
        if (not rule.bands or band in rule.bands) and (not rule.phases or known in rule.phases)
    ]
    caps = tuple(rule for rule in mine if isinstance(rule, Cap))
    return Rules(
        band=next(each for each in book.band if each.name == band),
        caps=caps,
        tables=tuple(Table(r, _maximum(caps, r)) for r in mine if isinstance(r, Rest)),
        offs=tuple(rule for rule in mine if isinstance(rule, Off)),
    )


def _maximum(caps: tuple[Cap, ...], rule: Rest) -> int | None:
    same = (
        cap.max
        for cap in caps
        if (cap.unit, cap.window, cap.kinds) == (rule.unit, rule.window, rule.kinds)
        if not cap.when and not cap.advice
    )
    return min(same, default=None)


def check_kind(kind: str) -> None:
    """Raise RestError for a kind of outing that does not exist: it would count nowhere."""
    if kind not in KINDS:
        raise RestError(f"no kind of outing is called {kind}: use one of {', '.join(KINDS)}")


def views(
    books: Sequence[RuleBook], thrower: Thrower, outings: Sequence[Thrown], phase: Phase
) -> tuple[View, ...]:
    """A view for each book. Raises RestError for no book, or a word that no book knows."""
    if not books:
        raise RestError("no rule book applies: choose at least one")
    phases = {"regular", "playoffs"}.union(*(book.phases for book in books))
    if phase not in phases:
        raise RestError(f"no phase is called {phase}: use one of {', '.join(sorted(phases))}")
    for outing in outings:
        check_kind(outing.kind)
    return tuple(
        View(book, thrower, phase, {k: Record(book, outings, k) for k in _kinds(book)})
        for book in books
    )


@lru_cache(maxsize=256)
def _kinds(book: RuleBook) -> tuple[tuple[str, ...], ...]:
    """The sets of kinds that the book's measures count; () stands for the book's own."""
    rules = [rule for rule in book.rule if isinstance(rule, Cap | Rest)]
    measures: list[Measure] = [*rules, *(c for rule in rules for c in rule.when)]
    return tuple({(): None, **{measure.kinds: None for measure in measures}})


@lru_cache(maxsize=256)
def _rest_kinds(book: RuleBook) -> tuple[tuple[str, ...], ...]:
    return tuple({rule.kinds: None for rule in book.rule if isinstance(rule, Rest)}) or ((),)
