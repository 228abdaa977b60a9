"""Tables with strokes or commas between the cells: a cell means what its column is called.

| name | kind | p | cb |        Player | site | pain
| Leo  | pen  | 25 | 5 |        Leo | elbow | 3
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from core.reading.board import Board
from core.reading.entry import Pain, UnreadReason
from core.reading.groups import FIELDS, OTHER_NOUNS
from core.reading.innings import innings_outs
from core.reading.items import NUMERIC
from core.reading.severity import WORST
from core.reading.vocabulary import name_columns

_FEWEST_CELLS = {"|": 2, ",": 3, ";": 3}  # of a header with such marks
_MARKS = tuple(_FEWEST_CELLS)
_NUMBERS = NUMERIC | {"frac"}
_NONE = frozenset({"none", "dash", "nothing", "good", "goodadj", "nopain"})

Cell = tuple[int, int]  # first and after-last place; empty when both are the same


@dataclass(frozen=True, slots=True)
class _Column:
    """What a column holds: "name", "opponent", "pain", "site", "other", a field, or ""."""

    what: str
    site: str = ""  # "arm pain", "elbow"
    sore: bool = False


def read_grids(board: Board) -> bool:
    """Claim the cells of tables with strokes; whether the line holds such a table."""
    if not board.has("newline"):
        return False
    return any(mark in board.text and _read(board, mark) for mark in _MARKS)


def _read(board: Board, mark: str) -> bool:
    columns: list[_Column] = []
    for cells in _rows(board, mark):
        if columns and len(cells) == len(columns):
            _row(board, columns, cells)
        elif len(cells) >= _FEWEST_CELLS[mark] and not _has_numbers(board, cells):
            columns = _columns(board, cells)
    return bool(columns)


def _rows(board: Board, mark: str) -> Iterator[list[Cell]]:
    """The cells of each line that has such marks, without the empty ends."""
    first = 0
    for at in range(len(board.items) + 1):
        if at < len(board.items) and board.items[at].symbol != "newline":
            continue
        strokes = [i for i in range(first, at) if board.items[i].text == mark]
        edges = [first - 1, *strokes, at]
        cells = [(left + 1, right) for left, right in pairwise(edges)]
        if strokes and cells[0][0] == cells[0][1]:
            cells = cells[1:]
        if strokes and cells and cells[-1][0] == cells[-1][1]:
            cells = cells[:-1]
        ruled = all(board.items[i].text in ("-", "|", ":") for i in range(first, at))
        if strokes and not ruled:
            yield cells
        first = at + 1


def _has_numbers(board: Board, cells: Sequence[Cell]) -> bool:
    return any(board.items[i].symbol in _NUMBERS for first, after in cells
               for i in range(first, after))  # fmt: skip


def _columns(board: Board, cells: Sequence[Cell]) -> list[_Column]:
    """What each column is called; nothing when none of them counts or tells of pain."""
    columns = [_column(board, cell) for cell in cells]
    if not any(column.what not in ("", "name", "opponent", "other") for column in columns):
        return []
    for first, after in cells:
        for at in range(first, after):
            board.no_log(at, at + 1, "column name")
    return columns


def _column(board: Board, cell: Cell) -> _Column:
    items = board.items[cell[0] : cell[1]]
    symbols = [item.symbol for item in items]
    painful = {"pain", "sore", "painscale"} & set(symbols)
    site = next((item.name for item in items if item.symbol == "site"), "")
    if painful or site:
        return _Column("pain" if painful else "site", site, sore=painful == {"sore"})
    if "vs" in symbols or "other" in symbols:
        return _Column("opponent")
    if any(item.name in name_columns() for item in items):
        return _Column("name")
    field = next((FIELDS[symbol] for symbol in symbols if symbol in FIELDS), "")
    if not field and symbols == ["plural"]:
        field = "strikes"
    return _Column(field or ("other" if set(symbols) & set(OTHER_NOUNS) else ""))


def _row(board: Board, columns: Sequence[_Column], cells: Sequence[Cell]) -> None:
    row = range(cells[0][0], cells[-1][1])
    board.piece[row.start : row.stop] = [board.piece[row.start]] * len(row)  # of one outing
    for column, (first, after) in zip(columns, cells, strict=True):
        single = after == first + 1
        item = board.items[first] if first < after else None
        if item is None:
            continue
        if item.symbol == "total":
            for at in row:
                board.no_log(at, at + 1, "total")
            return
        if column.what == "name" and item.text[:1].isalpha():
            board.claim(first, after, "who", board.quote(first, after))
        elif column.what == "opponent" and item.text[:1].isalpha():
            board.claim(first, after, "opponent")
        elif column.what == "other" and item.symbol in NUMERIC:
            board.no_log(first, after, "statistic")
        elif column.what in FIELDS.values() and single:
            value = innings_outs(item) if column.what == "outs" else item.whole
            if value is not None:
                board.claim(first, after, column.what, value)
            elif item.symbol == "dash":
                board.no_log(first, after, "empty")
    _pains(board, columns, cells)


def _pains(board: Board, columns: Sequence[_Column], cells: Sequence[Cell]) -> None:
    """The pain of a row: a site with its number, in cells of their own or under a site's name."""
    row = range(cells[0][0], cells[-1][1])
    named = [i for i in row if board.items[i].symbol == "site"]
    for column, (first, after) in zip(columns, cells, strict=True):
        if column.what not in ("pain", "site"):
            continue
        if column.what == "pain" and _site_and_level(board, first, after, sore=column.sore):
            continue
        level = board.whole(first) if after == first + 1 else None
        empty = after == first + 1 and (board.items[first].symbol in _NONE or level == 0)
        if empty and column.what == "pain":
            board.claim(first, after, "nopain")
        elif level is None:
            continue
        elif column.site and level <= WORST:
            pain = Pain(column.site, level or None, sore=column.sore)
            board.claim(first, after, "pain", (pain,) if level else ())
        elif len(named) == 1 and level <= WORST:
            board.claim(first, after, "severity")
            pain = Pain(board.items[named[0]].name, level, sore=column.sore)
            board.claim(named[0], named[0] + 1, "pain", (pain,))
        else:
            board.unread(first, after, UnreadReason.UNCLEAR_PAIN)


def _site_and_level(board: Board, first: int, after: int, *, sore: bool) -> bool:
    """As in "elbow 2" under "pain": both in one cell."""
    items = board.items[first:after]
    if [item.symbol for item in items] != ["site", "num"]:
        return False
    level = items[1].whole
    if level is None or level > WORST:
        return False
    pain = (Pain(items[0].name, level, sore=sore),) if level else ()
    board.claim(first, after, "pain", pain)
    return True


__all__ = ["read_grids"]
