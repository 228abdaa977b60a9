"""Others than a line's plain subject: the whole roster, who is left out of it, a playmate."""

from core.reading.board import NO_LOG, Board
from core.reading.clauses import span
from core.reading.groups import KINDS, TYPES
from core.reading.roster import as_typed, bare, is_known, listed
from core.reading.vocabulary import given_names, nicknames

_TOLD = frozenset(
    {"num", "threw", "had", "went", "with", "at", "is", "each", "off", "restday", "notthrown",
     "except", "but", "colon", "dash", "comma", "feels", "about", "none", *KINDS}
)  # fmt: skip


_SAYS_NOTHING = frozenset(
    {"everyone", "threw", "went", "today", "yesterday", "adv", "word", "dot", "stop", "newline",
     "colon", "the", "semi"}
)  # fmt: skip


def name_everyone(board: Board) -> None:
    """Claim the words for all as "who", and the names left out as "except"."""
    for at, item in enumerate(board.items):
        arms = item.symbol == "everyone" and item.text.lower().endswith(("arms", "brazos"))
        if arms and board.items[at + 1 : at + 2] and board.items[at + 1].symbol in ("feels", "is"):
            continue  # "all arms feel good"
        if item.symbol == "everyone" and (_is_spoken_to(board, at) or _is_thrown_to(board, at)):
            continue
        if item.symbol == "everyone" and board.free(at) and not _of_type(board, at + 1):
            board.claim(at, at + 1, "who", "everyone")
            if at + 2 < len(board.items) and board.items[at + 1].symbol == "but":
                _left_out(board, at + 1)
        elif _is_for_all_but(board, at):
            board.claim(at, at + 1, "who", "everyone")
            _left_out(board, at + 1)
        elif item.symbol == "everyoneelse" and board.free(at):
            board.claim(at, at + 1, "who", "everyone else")
        elif item.symbol == "except" and board.free(at):
            _left_out(board, at)


def forget_everyone(board: Board) -> None:
    """As in "Everybody threw today. Leo 30, Max 20": each is told of by himself."""
    names = [c for c in board.claims if c.key == "who" and c.value != "everyone"]
    for claim in [c for c in board.claims if c.key == "who" and c.value == "everyone"]:
        first, after = span(board.sentence, claim.first)
        said = {item.symbol for item in board.items[first:after]}
        later = [c for c in names if c.first >= after]
        if later and len(later) == len(names) and said <= _SAYS_NOTHING:
            claim.key, claim.value = NO_LOG, "heading"


def _is_for_all_but(board: Board, at: int) -> bool:
    """As in "40 throws for everyone but Grace"."""
    item = board.items[at]
    follows = board.items[at + 1].symbol if at + 2 < len(board.items) else ""
    all_of_them = item.symbol == "all" and item.text.lower().startswith(("for every", "from every"))
    return all_of_them and follows in ("but", "except") and board.free(at)


def _is_spoken_to(board: Board, at: int) -> bool:
    """As in "happy 4th everybody": they are greeted, and nothing is told of them."""
    follows = board.items[at + 1].symbol if at + 1 < len(board.items) else ""
    greeted = at > 0 and board.items[at - 1].symbol in ("word", "ord")
    greeted = greeted and board.clause[at] == board.clause[at - 1]
    if greeted and follows == "comma":
        return True
    return follows not in _TOLD and (greeted or board.author == "pitcher")


def _is_thrown_to(board: Board, at: int) -> bool:
    """As in "threw bp to the whole team": they batted."""
    return at > 0 and board.items[at - 1].symbol == "to"


def _can_be_left_out(board: Board, at: int) -> bool:
    item = board.items[at]
    if board.items[at - 1].symbol == "but" and not item.text[:1].isupper():
        return False
    if item.symbol == "mention" or bare(item.name) in given_names():
        return True
    if item.symbol == "month":  # "everyone but Van and May"
        return item.text[:1].isupper() and item.text.lower() in nicknames()
    after_comma = board.items[at - 1].symbol == "comma"
    return item.symbol == "word" and (item.text[:1].isupper() or not after_comma)


def _of_type(board: Board, at: int) -> bool:
    """As in "todos rectas": all of the pitches, not all of the pitchers."""
    return at < len(board.items) and board.items[at].symbol in TYPES


def _left_out(board: Board, at: int) -> None:
    names: list[str] = []
    after = at + 1
    while after < len(board.items):
        size = listed(board, after) or int(_can_be_left_out(board, after))
        if size and not (names and board.items[after - 1].symbol not in ("and", "comma")):
            names.append(as_typed(board, after, after + size))
        elif board.items[after].symbol not in ("and", "comma"):
            break
        after += max(size, 1)
    if names:
        board.claim(at, after, "except", tuple(names))


def name_playmate(board: Board) -> None:
    """As in a parent's "played catch with Eli, 30 throws": the count is Eli's."""
    for at in range(1, len(board.items)):
        company = board.items[at - 1].symbol == "with" and board.symbol_is(at, "word")
        if company and board.items[at].text[:1].isupper() and is_known(board, board.items[at].name):
            board.claim(at, at + 1, "who", as_typed(board, at, at + 1))
            return
