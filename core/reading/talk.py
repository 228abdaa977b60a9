"""Talk inside a line: plans, questions, other people's games, totals. Its numbers are no log.

Each marker word has a reach. "tomorrow" takes its clause and what follows in the sentence, until
the line comes back to what was thrown; "this season" takes only the count beside it.
"""

from dataclasses import dataclass

from core.reading.ahead import (
    comes_back,
    counts_between,
    is_to_throw,
    opens_going,
    present_on_a_weekday,
    stays_small,
)
from core.reading.board import Board
from core.reading.clauses import span
from core.reading.groups import FIELDS, KINDS
from core.reading.items import NUMERIC
from core.reading.people import OWN_CIRCLE
from core.reading.relatives import is_relative
from core.reading.totals import beside, with_todays
from core.reading.whose import ask_whose, own_again

_FORWARD = {
    "plan": "plan",
    "modal": "plan",
    "ask": "question",
    "other": "someone else's",
    "spectacle": "someone else's",
    "joke": "joke",
}
_BACKWARD = frozenset({"plan", "other", "spectacle", "joke"})
_ACTS = frozenset(
    {
        "site",
        "pain",
        "sore",
        "threw",
        "had",
        "went",
        "num",
        "is",
        "finish",
        "hit",
        "running",
        "about",
        "adv",
    }
)
_BESIDE = {"season": "total"}
_CLAUSE = {"pastref": "earlier"}
_MARKERS = frozenset({*_FORWARD, *_BESIDE, *_CLAUSE, "heading", "radar", "limit", "shouldbe"})
_BELONGINGS = frozenset({"thing", "place", "hash"})
_OPENERS = frozenset({"is", "are", "do", "does", "am"})
_SO_NOT = ("so", "cant", "can't", "cannot", "need to", "needs to", "have to", "gotta")
_HAPPENED = frozenset({"threw", "finish", "went", "today", "yesterday"})
_TO_ALL = frozenset({"everyone", "each"})


@dataclass(frozen=True, slots=True)
class Scope:
    """A run of items that is talk."""

    first: int
    after: int
    what: str
    returns: bool = False  # the line comes back to what was thrown: its kind still holds

    def __contains__(self, at: int) -> bool:
        return self.first <= at < self.after


def talk_scopes(board: Board) -> tuple[Scope, ...]:
    """Runs of items that are talk, each with the name of what it is."""
    scopes = [*_questions(board), *_weekly_orders(board)]
    for at, item in enumerate(board.items):
        if item.symbol in _BELONGINGS and _heads_no_log(board, at):
            scopes.append(Scope(span(board.sentence, at)[0], len(board.items), "heading"))
        if item.symbol not in _MARKERS and item.name not in _OPENERS:
            continue
        if item.symbol == "shouldbe" and any(
            i.symbol in ("num", "countword") for i in board.items[:at]
        ):
            continue  # "58 pitches, should be 61" puts a number right
        if is_relative(board, at):
            continue
        if asks_to_log(board, at) or goes_somewhere(board, at):
            continue
        if not board.free(at) or _is_company(board, at) or any(at in scope for scope in scopes):
            continue
        if item.symbol in _MARKERS or _opens_question(board, at):
            scopes.append(_scope(board, at))
    return tuple(scope for scope in scopes if scope.after > scope.first)


def _weekly_orders(board: Board) -> list[Scope]:
    """As in "Friday every pitcher throws a 30 pitch pen": an order to all."""
    return [
        Scope(*span(board.sentence, at), "plan")
        for at in present_on_a_weekday(board)
        if any(board.items[i].symbol in _TO_ALL for i in range(*span(board.sentence, at)))
    ]


def asks_to_log(board: Board, at: int) -> bool:
    """As in "wanted to log 45 pitches", "meant to post this yesterday": no plan."""
    if board.items[at].symbol not in ("modal", "plan", "ask"):
        return False
    return any(item.symbol == "logthis" for item in board.items[at + 1 : at + 4])


def goes_somewhere(board: Board, at: int) -> bool:
    """As in "going to the cage after my 25 pitch pen": no plan to throw."""
    follows = board.items[at + 1].symbol if at + 1 < len(board.items) else ""
    return board.items[at].text.lower() == "going to" and follows in ("the", "hisher", "a", "place")


def _opens_question(board: Board, at: int) -> bool:
    """As in "is 3 days enough after 45 pitches", with no question mark."""
    if board.items[at].name not in _OPENERS:
        return False
    follows = board.items[at + 1].symbol if at + 1 < len(board.items) else ""
    if board.items[at].name == "am" and follows != "i":
        return False  # "am pen 20, pm catch 30"
    return at == 0 or board.sentence[at] != board.sentence[at - 1] or _greeted(board, at)


def _greeted(board: Board, at: int) -> bool:
    """Whether only a greeting stands before this place ("hey coach, ...")."""
    first, _ = span(board.sentence, at)
    return all(board.items[i].symbol in ("greeting", "comma", "adv") for i in range(first, at))


def _counts_one_outing(board: Board, at: int) -> bool:
    """As in "first start of the season": no total."""
    before = at - 1
    while before > 0 and board.items[before].symbol in ("of", "in", "into", "on", "the"):
        before -= 1
    return before >= 0 and board.items[before].symbol in KINDS


def _is_company(board: Board, at: int) -> bool:
    """As in "catch with my brother" is not about the brother, nor is "my brother caught me"."""
    if board.items[at].symbol == "season":
        return _counts_one_outing(board, at)
    if board.items[at].symbol != "other":
        return False
    place = at - 1
    while place > 0 and board.items[place].symbol in ("hisher", "the", "adj"):
        place -= 1
    before = board.items[place].symbol if at else ""
    after = [item.symbol for item in board.items[at + 1 : at + 3]]
    if after == ["and", "i"]:
        return True  # "my brother and I threw 30 each"
    following = set(after)
    _, end = span(board.clause, at)
    threw = any(item.symbol == "threw" for item in board.items[at + 1 : end])
    starts = at == span(board.clause, at)[0]
    if starts and not board.items[at].text.lower().startswith(OWN_CIRCLE):
        return False
    company = before in ("with", "to", "and", "for", "of", "at", "vs", "faced")
    if board.lang == "es" and before == "to" and _hurts(board, at):
        return False  # "a mi hermano le duele el codo"
    return company or not (following & _ACTS or threw)


def _hurts(board: Board, at: int) -> bool:
    """Whether pain is told of somebody named here: "le duele" follows."""
    return any(item.symbol in ("pain", "sore") for item in board.items[at + 1 : at + 4])


def _scope(board: Board, at: int) -> Scope:
    symbol = board.items[at].symbol
    if _is_heading(board, at):
        if symbol == "limit":
            return Scope(*span(board.sentence, at), "limit")
        return Scope(span(board.sentence, at)[0], len(board.items), "heading")
    if symbol in _CLAUSE:
        first, after = span(board.clause, at)
        now = [i for i in range(at, after) if board.items[i].symbol == "today"]
        now += [i for i in range(at, after) if stays_small(board, i)]
        return Scope(first, with_todays(board, at, now[0]) if now else after, _CLAUSE[symbol])
    if symbol in _BESIDE:
        return Scope(*beside(board, at), _BESIDE[symbol])
    if symbol in ("heading", "radar", "limit"):
        return Scope(at, at, "")
    if symbol in ("spectacle", "joke"):
        start, end = span(board.sentence, at)
        own = _after_own(board, start, at)
        end = end if own == start else _before_another_count(board, at, end)
        start = own
        return Scope(start, end if symbol == "spectacle" else at + 1, _FORWARD[symbol])
    first = _back(board, at) if symbol in _BACKWARD else at
    after = _forward(board, at)
    stopped = after < span(board.sentence, at)[1]
    returns = stopped and board.items[after].symbol in ("threw", "finish")
    return Scope(first, after, _FORWARD.get(symbol, "question"), returns)


def _after_own(board: Board, start: int, at: int) -> int:
    """As in "he threw 45, then we watched the video": his count stands in a clause of its own."""
    clause, _ = span(board.clause, at)
    for place in range(start, clause):
        told = board.items[place].symbol in ("i", "he") or any(
            c.key == "who" and c.first == place for c in board.claims
        )
        follows = [item.symbol for item in board.items[place + 1 : place + 3]]
        if told and follows[:1] and follows[0] in ("threw", "num", "went", "had"):
            return clause
    return start


def _before_another_count(board: Board, at: int, end: int) -> int:
    """As in "he counted 29, we watched the video and it was 30": of him again."""
    for place in range(at + 1, end - 1):
        if board.items[place].symbol == "is" and board.items[place + 1].symbol == "num":
            return place
    return end


def claim_talk(board: Board, scopes: tuple[Scope, ...]) -> None:
    """Claim every item in talk as no log, so that it says nothing. Pain words stay."""
    several_names = len({str(claim.value) for claim in board.claims if claim.key == "who"}) > 1
    for scope in scopes:
        ask_whose(board, scope.first, scope.after, scope.what)
        if several_names:
            board.withdraw(scope.first, scope.after, "who")
        for at in range(scope.first, scope.after):
            symbol = board.items[at].symbol
            if scope.returns and symbol in KINDS:
                continue
            marks = ("dot", "stop", "comma") if scope.what == "earlier" else ("dot", "stop")
            ends = symbol in marks and at == scope.after - 1
            if board.free(at) and symbol != "newline" and not ends:
                board.no_log(at, at + 1, scope.what)


def _is_heading(board: Board, at: int) -> bool:
    """As in "thurs pen schedule: ...", "season totals: ...": all that follows is talk."""
    if board.items[at].symbol not in ("plan", "season", "limit", "heading", "radar"):
        return False
    item = board.items[at]
    if item.symbol == "limit" and item.text[-1:] != "s" and _names_somebody(board, at):
        return False  # "limit: 75, Leo 74p", "Leo in relief of Max: 2 ip"
    first, after = span(board.clause, at)
    if not _greeted(board, first):
        return False
    for place in range(first, after):
        item = board.items[place]
        if item.symbol in NUMERIC:
            return False
        if item.symbol == "colon":
            return place > at
    return _heads_lines(board, at, after)


def _heads_lines(board: Board, at: int, after: int) -> bool:
    """As in "season totals" on a line of its own, over lines of names and numbers."""
    item = board.items[at]
    heads = item.symbol in ("plan", "heading") or item.text.lower().endswith(("totals", "limits"))
    return heads and after < len(board.items) and board.items[after - 1].symbol == "newline"


def _heads_no_log(board: Board, at: int) -> bool:
    """As in "jerseys: Leo 12, Max 7", with no pitch and no kind of outing in the line."""
    if board.has(*FIELDS, *KINDS, "site"):
        return False
    first, after = span(board.clause, at)
    symbols = [item.symbol for item in board.items[first:after]]
    return at == first and "colon" in symbols[:3] and not NUMERIC & set(symbols[:2])


def _names_somebody(board: Board, at: int) -> bool:
    """Whether a limit stands beside a name's own counts: in "limits: Leo 50" it is the name's."""
    first, after = span(board.sentence, at)
    colon = next((i for i in range(at, after) if board.items[i].symbol == "colon"), at)
    if any(c.key == "who" and c.first == colon + 1 for c in board.claims) and colon > at:
        return board.items[at].text.lower() == "max"
    named = any(c.key == "who" and first <= c.first < after for c in board.claims)
    return named or board.items[at].text.lower() == "max"


def _questions(board: Board) -> list[Scope]:
    """Sentences that end in "?" and open like a question, or hold nothing but it."""
    found = []
    for at, item in enumerate(board.items):
        if item.symbol != "question":
            continue
        first, _ = span(board.sentence, at)
        opening = next(
            (i for i in range(first, at) if _asks(board, i, first)),
            None,
        )
        if opening is not None and not _requests_log(board, first, at):
            start, _ = span(board.clause, opening)
            if any(board.items[i].symbol in ("pain", "sore") for i in range(start, opening)):
                start = opening
            end = _afterthought(board, at + 1)
            found.append(Scope(start if start > first else first, end, "question"))
    return found


def _afterthought(board: Board, at: int) -> int:
    """Past a rough number after a question: "can i throw a pen wed? like 25".

    "how many yesterday? 41" may answer itself.
    """
    if not board.symbol_is(at, "about"):
        return at
    _, after = span(board.sentence, at)
    small = ("about", "num", "ish", "adv", "or", "pitches")
    bare = all(item.symbol in small for item in board.items[at:after])
    return after if bare else at


def _asks(board: Board, at: int, first: int) -> bool:
    """Question words anywhere, "did leo throw 60" at the start of the sentence."""
    item = board.items[at]
    opens = at == first or board.clause[at] != board.clause[at - 1]
    if item.symbol == "is" and not opens and _hurts_before(board, first, at):
        return False  # "bicep is sore, is it ok to throw?" tells of pain before it asks
    return item.symbol in ("ask", "plan", "modal", "is") or (at == first and item.name == "did")


def _hurts_before(board: Board, first: int, at: int) -> bool:
    """Whether the clause goes on to pain: "my bicep is sore"."""
    _, after = span(board.clause, at)
    return any(board.items[i].symbol in ("pain", "sore") for i in range(first, after))


def _requests_log(board: Board, first: int, after: int) -> bool:
    """As in "can you put down 47 pitches": a question in form only."""
    return any(board.items[i].symbol == "logthis" for i in range(first, after))


def _forward(board: Board, at: int) -> int:
    """To the end of the sentence, or to where the line comes back to what was thrown."""
    _, end = span(board.sentence, at)
    about_others = board.items[at].symbol in ("other", "spectacle", "joke")
    planned = board.items[at].symbol == "plan"
    opens = at == 0 or board.clause[at - 1] != board.clause[at]
    supposed = opens and board.items[at].text.lower() == "if"  # "if Leo throws 75 tonight"
    for place in range(at + 1, end):
        symbol = board.items[place].symbol
        if symbol == "but":
            return place
        new_clause = board.clause[place] != board.clause[place - 1]
        if planned and new_clause and comes_back(board, at, place):
            return place
        if planned and stays_small(board, place):
            return place
        if about_others:
            if board.piece[place] != board.piece[at] and own_again(board, at, place):
                return place
        elif supposed and board.clause[place] == board.clause[at]:
            continue
        elif symbol in _HAPPENED and not (symbol == "threw" and is_to_throw(board, at, place)):
            return place
    return end


def _back(board: Board, at: int) -> int:
    """To the start of the clause, unless something was thrown between."""
    start, _ = span(board.clause, at)
    for place in range(at - 1, start - 1, -1):
        if board.items[place].symbol == "threw" and opens_going(board, start, place, at):
            return start
        rests = board.items[place].symbol == "restday" and not _rests_then(board, place, at)
        if board.items[place].symbol in _HAPPENED or rests:
            return at
        if board.items[place].text.lower() in _SO_NOT:
            return place  # "48 pitches so i cant go tomorrow"
    return at if counts_between(board, start, at) > 1 else start


def _rests_then(board: Board, place: int, at: int) -> bool:
    """As in "rest day tomorrow, today 30 pitches": the rest is to come too."""
    return place + 1 == at and at + 1 == span(board.clause, at)[1] - _closed(board, at)


def _closed(board: Board, at: int) -> int:
    """1 if a mark closes the clause of this place."""
    last = board.items[span(board.clause, at)[1] - 1]
    return int(not last.text[:1].isalnum())


__all__ = ["Scope", "asks_to_log", "claim_talk", "goes_somewhere", "talk_scopes"]
