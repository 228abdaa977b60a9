"""Scorekeepers' tables: a row of column names, then rows of a name and as many numbers.

name  P  S  CB  IP          p/s: Abel 62/38, Theo 24/11
Silas 61 39 12 4.2
"""

from collections.abc import Iterator
from dataclasses import dataclass

from core.reading.board import Board
from core.reading.grids import read_grids
from core.reading.groups import FIELDS, OTHER_NOUNS
from core.reading.innings import innings_outs

_COLUMNS = FIELDS | {"plural": "strikes"} | dict.fromkeys(OTHER_NOUNS, "")
_RULES_AND_GAPS = frozenset({"semi", "slash", "dash", "comma"})


@dataclass(frozen=True, slots=True)
class _Header:
    first: int
    after: int
    fields: tuple[str, ...]


def read_tables(board: Board) -> None:
    """Claim the numbers of each row that fits the column names above it."""
    if read_grids(board):
        return
    if board.has("colon"):
        _sections(board)
    if not board.has("newline", "slash", "open", "colon"):
        return
    header: _Header | None = None
    for first, after in _lines(board):
        found = _header(board, first, after)
        if found is not None:
            header = found
            closes = header.after == len(board.items)  # "Abel 3.1/53/8 (ip/p/cb)"
            places = (first, header.first - 1) if closes else (header.after, after)
            rows = list(_parts(board, *places))
        elif header is not None:
            rows = [(first, after)]
        else:
            continue
        for row in rows:
            _row(board, header, *row)


def _sections(board: Board) -> None:
    """As in "Pitches: Abel 66, Theo 24. Curves: Abel 11, Theo 3": one count of several people."""
    for at in range(len(board.items) - 1):
        field = FIELDS.get(board.items[at].symbol)
        if field is None or board.items[at + 1].symbol != "colon":
            continue
        numbers = list(_named_numbers(board, at + 2))
        if len(numbers) < 2:
            continue
        board.no_log(at, at + 1, "column name")
        for number in numbers:
            item = board.items[number]
            value = innings_outs(item) if field == "outs" else item.whole
            if value is not None:
                board.claim(number, number + 1, field, value)


def _named_numbers(board: Board, at: int) -> Iterator[int]:
    """The numbers of "Abel 66, Theo 24", up to what is no name with a bare number."""
    ends = ("comma", "and", "semi")
    while at + 1 < len(board.items) and board.items[at].symbol in ("word", "mention"):
        at += 1
        while at < len(board.items) and board.items[at].symbol in ("word", "colon", "dash"):
            at += 1
        follows = board.items[at + 1].symbol if at + 1 < len(board.items) else "newline"
        if at == len(board.items) or board.items[at].symbol != "num":
            return
        if follows not in (*ends, "dot", "newline", "stop"):
            return
        yield at
        at += 2 if follows in ends else len(board.items)


def _lines(board: Board) -> Iterator[tuple[int, int]]:
    first = 0
    for at, item in enumerate(board.items):
        if item.symbol == "newline":
            yield first, at
            first = at + 1
    yield first, len(board.items)


def _header(board: Board, first: int, after: int) -> _Header | None:
    """Column names side by side or with a stroke between them."""
    return _stroked(board, first, after) or _side_by_side(board, first, after)


def _stroked(board: Board, first: int, after: int) -> _Header | None:
    """As in "(ip/pitches/cb) Chad 3.1/53/8", "Pens (pitches-curves): Arlo 25-6"."""
    counted = False
    for at in range(first, after):
        counted = counted or board.items[at].value is not None or board.items[at].symbol == "ratio"
        if counted and not (at and board.items[at - 1].symbol == "open"):
            continue  # "3 arms tonight (ip/pitches): ..." is one, "30/19 pitches/strikes" none
        places = [at]
        while (following := _next_column(board, places[-1], after)) is not None:
            places.append(following)
        if _column(board, at) is not None and len(places) > 1:
            end = places[-1] + 1
            while end < after and board.items[end].symbol in ("close", "colon", "dash"):
                end += 1
            fields = tuple(_column(board, place) or "" for place in places)
            closes = end == len(board.items) and at > first and board.items[at - 1].symbol == "open"
            return _Header(at, end, fields) if end < len(board.items) or closes else None
    return None


def _next_column(board: Board, at: int, after: int) -> int | None:
    """The column name past a stroke; the hyphen of "(IP-pitches)" is no item."""
    stroke = at + 1 < after and board.items[at + 1].symbol in ("slash", "dash")
    following = at + 2 if stroke else at + 1
    if following >= after or _column(board, following) is None:
        return None
    hyphen = board.text[board.items[at].end : board.items[following].start] == "-"
    return following if stroke or hyphen else None


def _side_by_side(board: Board, first: int, after: int) -> _Header | None:
    """Two or more column names side by side, ended by a colon or the end of the line."""
    places: list[int] = []
    end = after
    for at in range(first, after):
        symbol = board.items[at].symbol
        if _column(board, at) is not None:
            places.append(at)
        elif symbol == "colon" and places:
            end = at + 1
            break
        elif symbol not in _RULES_AND_GAPS and (places or symbol != "word"):
            return None
    if len(places) < 2 or (end == after and after == len(board.items)):
        return None
    return _Header(places[0], end, tuple(_column(board, at) or "" for at in places))


def _column(board: Board, at: int) -> str | None:
    """The field of a column's name, "" when it is none of ours, None for other words."""
    item = board.items[at]
    return "strikes" if item.text.lower() == "st" else _COLUMNS.get(item.symbol)


def _parts(board: Board, first: int, after: int) -> Iterator[tuple[int, int]]:
    """The rows that follow a header on its own line, parted by commas or by the next name."""
    for at in range(first, after):
        number = at > first and board.items[at - 1].symbol in ("num", "ratio")
        if number and board.items[at].text[:1].isalpha():
            yield first, at
            first = at
        elif board.items[at].symbol in ("comma", "semi", "dot", "stop"):
            yield first, at
            first = at + 1
    if first < after:
        yield first, after


def _row(board: Board, header: _Header, first: int, after: int) -> None:
    values = list(_values(board, first, after))
    if first < after and board.items[first].symbol == "total":
        for at in range(first, after):
            board.no_log(at, at + 1, "total")
        return
    if len(values) != len(header.fields):
        return
    for at in range(header.first, header.after):
        if board.free(at):
            board.no_log(at, at + 1, "column name")
    for (place, value), field in zip(values, header.fields, strict=True):
        if field == "outs":
            value = innings_outs(board.items[place])
        if field and value is not None:
            board.claim(place, place + 1, field, value)
        elif not field:
            board.no_log(place, place + 1, "statistic")


def _values(board: Board, first: int, after: int) -> Iterator[tuple[int, int | None]]:
    """The numbers of a row without the date that opens it; nothing when it has nouns of its own."""
    dated = first < after and board.items[first].symbol == "ratio"
    first += dated and after - first > 2 and board.items[first + 1].symbol == "word"
    symbols = {board.items[at].symbol for at in range(first, after)}
    if symbols & set(_COLUMNS):
        return
    for at in range(first, after):
        item = board.items[at]
        if item.symbol == "num" and board.free(at):
            yield at, item.whole
        elif item.symbol == "ratio" and item.pair is not None:
            yield at, item.pair[0]
            yield at, item.pair[1]


def claim_list_numbers(board: Board) -> None:
    """As in "1." and "2)" at the start of a line; "44. 7 deuces" is no list."""
    expected = 1
    for at, item in enumerate(board.items[:-1]):
        opens = at == 0 or board.items[at - 1].symbol in ("newline", "semi")
        marked = board.items[at + 1].symbol in ("dot", "close")
        if opens and marked and item.symbol == "num" and item.whole == expected:
            board.no_log(at, at + 2, "list number")
            expected += 1
