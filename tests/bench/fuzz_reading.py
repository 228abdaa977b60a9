"""`python -m tests.bench.fuzz_reading [LINES] [SEED]`: mutated and random lines by the million.

Every line must be read without an exception, in 20 ms of processor time, into entries that are
sound (tests/support/soundness). Prints what was found, a few examples of each kind, and how many
lines were really read. Not a test: it runs as long as one lets it; a short run of the same
generator is in tests/core/reading/test_properties.py.
"""

import json
import random
import sys
from collections import Counter
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from pathlib import Path
from time import perf_counter, process_time
from typing import Any

from core.reading.reader import explain
from core.reading.vocabulary import language
from tests.support.soundness import faults

FOLDER = Path("fixtures/reading")
SLOWEST = 0.020  # seconds of processor time for one line
EXAMPLES = 5  # kept of each kind of fault
_FIRST = datetime.fromisoformat("2026-03-01T06:30")
_ROSTERS: tuple[tuple[str, ...], ...] = ((), ("Leo", "Max", "Mateo Ruiz", "Will"))
_AUTHORS = ("pitcher", "coach", "guardian")
_MARKS = (",", ";", ".", "\n", " - ", " / ", ": ", " + ", "? ", " (", ") ", "!", " & ", "…", "🔥")
_LETTERS = "abcdefghilmnoprstuvz"
_ODD = "\x0b\x1f\xa0½⅓ ́ﬁ①²٣\u200b\u2028“’–—\t\x00<>@#%$~≈'\""


@dataclass(frozen=True, slots=True)
class Case:
    """One line as the reader gets it."""

    text: str
    posted: datetime
    author: Any
    roster: tuple[str, ...]


class Mutator:
    """Lines made of labelled lines and of the vocabulary, the same ones for the same seed."""

    def __init__(self, seed: int) -> None:
        self.chance = random.Random(seed)
        self.lines: tuple[str, ...] = tuple(
            json.loads(line)["text"]
            for path in sorted(FOLDER.glob("*.jsonl"))
            for line in path.read_text("utf-8").splitlines()
        )
        self.words = tuple(
            phrase for lang in ("en", "es") for phrase, _, _ in language(lang).phrases if phrase
        )
        self.changes: tuple[Callable[[str], str], ...] = (
            self._drop_letter, self._swap_words, self._new_mark, self._new_number,
            self._other_number, self._new_word, self._drop_word, self._splice, self._double,
            self._case, self._odd, self._join,
        )  # fmt: skip

    def cases(self) -> Iterator[Case]:
        """Lines without end."""
        chance = self.chance
        while True:
            make = chance.choices((self._labelled, self._random_line, self._nonsense), (74, 25, 1))
            text = make[0]()
            for _ in range(chance.choice((1, 1, 1, 2, 2, 3, 5))):
                text = chance.choice(self.changes)(text)
            posted = _FIRST + timedelta(hours=chance.randrange(24 * 240))
            yield Case(text[:4200], posted, chance.choice(_AUTHORS), chance.choice(_ROSTERS))

    def _labelled(self) -> str:
        return self.chance.choice(self.lines)

    def _random_line(self) -> str:
        count = self.chance.randrange(1, 14)
        return " ".join(self._piece() for _ in range(count))

    def _nonsense(self) -> str:
        """Up to hundreds of words that nobody knows, as in a text in a third language."""
        count = 9 ** self.chance.randrange(4)
        words = ("".join(self.chance.choices(_LETTERS, k=7)) for _ in range(count))
        return f"{self._number()} pitches {' '.join(words)}"

    def _piece(self) -> str:
        if self.chance.random() < 0.35:
            return self._number()
        return self.chance.choice(self.words)

    def _number(self) -> str:
        n = self.chance.choice((0, 1, 2, 3, 4, 5, 8, 12, 20, 45, 62, 75, 101, 620))
        forms = (f"{n}", f"{n}", f"{n}", f"{n % 9}.{n % 3}", f"{n}/10", f"{n}%", f"{n}-{n + 3}",
                 f"{n % 12}:30", f"{n}ish", f"{n % 9} 1/3", f"{n}th", f"${n}", f"~{n}", f"5/{n}",
                 f"{n},{n}")  # fmt: skip
        return self.chance.choice(forms)

    def _place(self, text: str) -> int:
        return self.chance.randrange(len(text) + 1)

    def _drop_letter(self, text: str) -> str:
        at = self._place(text)
        return text[:at] + text[at + 1 :]

    def _swap_words(self, text: str) -> str:
        words = text.split(" ")
        one, other = self.chance.randrange(len(words)), self.chance.randrange(len(words))
        words[one], words[other] = words[other], words[one]
        return " ".join(words)

    def _new_mark(self, text: str) -> str:
        at = self._place(text)
        return text[:at] + self.chance.choice(_MARKS) + text[at:]

    def _between_words(self, text: str, piece: str) -> str:
        words = text.split(" ")
        words.insert(self.chance.randrange(len(words) + 1), piece)
        return " ".join(words)

    def _new_number(self, text: str) -> str:
        return self._between_words(text, self._number())

    def _other_number(self, text: str) -> str:
        digits = [at for at, char in enumerate(text) if char.isdigit()]
        if not digits:
            return text
        at = self.chance.choice(digits)
        return text[:at] + str(self.chance.randrange(10)) + text[at + 1 :]

    def _new_word(self, text: str) -> str:
        return self._between_words(text, self.chance.choice(self.words))

    def _drop_word(self, text: str) -> str:
        words = text.split(" ")
        del words[self.chance.randrange(len(words))]
        return " ".join(words)

    def _splice(self, text: str) -> str:
        other = self.chance.choice(self.lines)
        return text[: self._place(text)] + other[self._place(other) :]

    def _double(self, text: str) -> str:
        return text + self.chance.choice((" ", "\n", ", ", "; ")) + text

    def _case(self, text: str) -> str:
        return self.chance.choice((str.upper, str.lower, str.title))(text)

    def _odd(self, text: str) -> str:
        at = self._place(text)
        return text[:at] + self.chance.choice(_ODD) + text[at:]

    def _join(self, text: str) -> str:
        return text.replace(" ", "", 1) if self.chance.random() < 0.5 else text.replace(",", "")


@dataclass(slots=True)
class Found:
    """How many lines had each fault, and the first few of them."""

    counts: Counter[str] = field(default_factory=Counter)
    examples: dict[str, list[Case]] = field(default_factory=dict)

    def add(self, fault: str, case: Case) -> None:
        """Count a fault and keep its first examples."""
        self.counts[fault] += 1
        kept = self.examples.setdefault(fault, [])
        if len(kept) < EXAMPLES:
            kept.append(case)


def try_case(case: Case, found: Found, slowest: float) -> None:
    """Read one line and note every fault; `slowest` in seconds of processor time."""
    start = perf_counter()  # cheap; processor time is taken only on suspicion
    try:
        reading, numbers = explain(case.text, case.posted, case.author, roster=case.roster)
    except Exception as error:  # the very thing that is looked for
        found.add(f"raises {type(error).__name__}", case)
        return
    if perf_counter() - start > slowest and _seconds(case) > slowest:
        found.add("slow", case)
    for fault in faults(case.text, case.posted, reading, numbers):
        found.add(fault, case)


def _seconds(case: Case) -> float:
    """The best of three, so that the collector's pauses and first uses do not count."""
    best = float("inf")
    for _ in range(3):
        start = process_time()
        explain(case.text, case.posted, case.author, roster=case.roster)
        best = min(best, process_time() - start)
    return best


def fuzz(lines: int, seed: int, *, slowest: float = float("inf"), report_every: int = 0) -> Found:
    """Read so many lines; one that takes longer than `slowest` seconds is a fault too."""
    found = Found()
    for done, case in enumerate(Mutator(seed).cases()):
        if done >= lines:
            break
        if report_every and done and done % report_every == 0:
            sys.stdout.write(f"{done:,} lines read, {dict(found.counts)}\n")
            sys.stdout.flush()
        try_case(case, found, slowest)
    return found


def main(arguments: list[str]) -> int:
    """Print what was found; 1 when anything was."""
    lines = int(arguments[0].replace("_", "")) if arguments else 10_000_000
    seed = int(arguments[1]) if len(arguments) > 1 else 1
    found = fuzz(lines, seed, slowest=SLOWEST, report_every=100_000)
    for fault, cases in sorted(found.examples.items()):
        sys.stdout.write(f"{found.counts[fault]} x {fault}\n")
        for case in cases:
            sys.stdout.write(f"  {case.author} {case.posted:%Y-%m-%dT%H:%M} {case.text!r}\n")
    sys.stdout.write(
        f"{lines:,} lines read from seed {seed}: {sum(found.counts.values())} faults\n"
    )
    return int(bool(found.counts))


if __name__ == "__main__":
    raise SystemExit(main(sys.argv[1:]))
