"""Days, kinds, names and lone numbers put right in mid-line: "Saturday, no wait it was Sunday"."""

import re

from core.reading import groups
from core.reading.board import NO_LOG, Board, Rule, rule
from core.reading.pairing import claim_count

_DAY = "weekday|sat|yesterday|today|daybefore"
_KIND = "bullpen|catch|live|game"
_SMALL = "(mark|is|the|a|it|on|last|correction|i|he)*"


_TOLD = frozenset({"said", "posted", "put", "logged", "wrote", "typed", "reported", "told"})


def _first_goes(board: Board, match: re.Match[str]) -> None:
    board.no_log(match.start(), match.end(), "corrected")


def _second_goes(board: Board, match: re.Match[str]) -> None:
    """As in "Sunday not Saturday", "pen, not a game"."""
    board.no_log(match.start() + 1, match.end(), "corrected")


def _other_person(board: Board, match: re.Match[str]) -> None:
    """As in "ok Caleb not Owen, Owen is at camp": nothing is told of Owen."""
    own = {c.value for c in board.claims if c.key == "who" and c.first == match.start()}
    _forget(board, match.end() - 1, own)


def _nobody(board: Board, match: re.Match[str]) -> None:
    """As in "it was Levi who threw 44, not Owen"."""
    others = [c for c in board.claims if c.key == "who" and c.first < match.start()]
    if others:
        _forget(board, match.end() - 1, set())


def _forget(board: Board, place: int, own: set[object]) -> None:
    """Drop the name that stands there, wherever no count follows it."""
    named = next((c for c in board.claims if c.key == "who" and c.first == place), None)
    if named is None or named.value in own:
        return
    name = named.value
    for claim in [c for c in board.claims if c.key == "who" and c.value == name]:
        follows = board.items[claim.after].symbol if claim.after < len(board.items) else ""
        if follows not in ("num", "threw", "went", "had", "colon", "dash"):
            claim.key, claim.value = NO_LOG, "corrected"


def _lone_number(board: Board, match: re.Match[str]) -> None:
    """As in "31 throws of catch today. Correction, 41.": of the one count before it."""
    told = [
        at
        for at in range(match.start() - 1)
        if board.symbol_is(at, "num") and board.items[at + 1].symbol in groups.FIELDS
    ]
    numbers = [at for at in range(match.start()) if board.items[at].value is not None]
    if len(told) != 1 or len(numbers) != 1:
        return
    noun, number = told[0] + 1, match.start("n")
    board.no_log(told[0], noun + 1, "corrected")
    board.no_log(match.start(), number, "corrected")
    claim_count(board, number, number + 1, groups.FIELDS[board.items[noun].symbol], number)


def _bare_goes(board: Board, match: re.Match[str]) -> None:
    """As in "he had 70, no hang on the scorekeeper fixed it, 67 pitches"."""
    wrong, right = board.whole(match.start("n")), board.whole(match.end())
    if wrong and right and wrong <= 3 * right and right <= 3 * wrong:
        board.no_log(match.start("n"), match.start("n") + 1, "corrected")
        board.no_log(match.start("c"), match.start("c") + 1, "corrected")


def _said_but_was(board: Board, match: re.Match[str]) -> None:
    """As in "you said 30 but it was 34"; "the book has 30 but I counted 34" are two counts."""
    said = board.items[match.start()].text.lower().split()[-1] in _TOLD
    counted = any("count" in board.items[i].text.lower() for i in range(*match.span()))
    if said and not counted:
        board.no_log(match.start(), match.start("b"), "corrected")


PUT_RIGHT_RULES: tuple[Rule, ...] = (
    rule("saturday no wait sunday", f"({_DAY}) mark* correction {_SMALL} (?= {_DAY})", _first_goes),
    rule("sunday not saturday", f"({_DAY}) (comma|open)* insteadof (on)? ({_DAY})", _second_goes),
    rule(
        "pen, well no it was flat ground",
        f"({_KIND}) (today|yesterday)? mark* correction {_SMALL} (?= {_KIND})",
        _first_goes,
    ),
    rule(
        "pen not a game", f"({_KIND}) (comma)? insteadof (the|a)* ({_KIND}) (?! num)", _second_goes
    ),
    rule(
        "it was Levi, not Owen",
        "(comma)? insteadof said_who (?= dot|comma|stop|newline|$)",
        _nobody,
    ),
    rule("Caleb not Owen", "said_who (comma)? insteadof said_who", _other_person),
    rule(
        "correction, 41",
        "correction (comma|colon|dash|is|it)* <n:num> (?= dot|stop|newline|comma|$)",
        _lone_number,
    ),
    rule(
        "70, no hang on he fixed it, 67 pitches",
        "<n:num> (comma|dash|dot)* <c:correction> (word|the|is|he|i|it|book|adv|comma|and|hisher"
        "|title|had|feels|threw)* (?= num pitches)",
        _bare_goes,
    ),
    rule(
        "you said 30 but it was 34",
        "(book|feels|logthis|threw|word) (about|adv)* num (pitches)? (word|before|adv|pastref)*"
        " (comma)? <b:but> (it|i|he|the)* (is|threw|finish)+"
        " (about|adv)* (?= num)",
        _said_but_was,
    ),
)
