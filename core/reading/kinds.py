"""What kind of throwing a line is about, and which game of the day."""

import re

from core.reading import groups
from core.reading.board import COUNTS, Board, Handler, Rule, rule, says_no_log, says_unread
from core.reading.clauses import span
from core.reading.entry import UnreadReason

MOST_GAMES = 9  # of one tournament


def says_kind(kind: str) -> Handler:
    """A handler that claims the match as a kind of outing."""

    def apply(board: Board, match: re.Match[str]) -> None:
        board.claim(match.start(), match.end(), "kind", kind)

    return apply


def _warmed_up(board: Board, match: re.Match[str]) -> None:
    """Warming up is a bullpen, unless a game was entered."""
    board.claim(match.start(), match.end(), "kind", "bullpen", about=True)


def _open_kind(board: Board, match: re.Match[str]) -> None:
    board.claim(match.start(), match.end(), "openkind", UnreadReason.UNKNOWN_KIND)


def _numbered_game(board: Board, match: re.Match[str]) -> None:
    number = board.whole(match.start("n"))
    if number is None or number > MOST_GAMES:
        return
    board.claim(match.start(), match.end(), "label", f"game {number}")


def _label(name: str) -> Handler:
    def apply(board: Board, match: re.Match[str]) -> None:
        board.claim(match.start(), match.end(), "label", name)

    return apply


def _clock_game(board: Board, match: re.Match[str]) -> None:
    """As in "he started the 8am, ... back in the 4pm": games told apart by their hours."""
    board.claim(match.start(), match.end(), "label", board.items[match.start("n")].name)


def _in_game(board: Board, match: re.Match[str]) -> None:
    """As in "2 curves in the first and 5 in the second", where two games are told of."""
    words = board.items[match.start()].text.lower().removesuffix(" one").split()
    games = {"first": "game 1", "second": "game 2"}
    if board.has("twogames", "bothends", "firstgame", "secondgame") and words[-1] in games:
        board.claim(match.start(), match.end(), "label", games[words[-1]])


def _then_the_other(board: Board, match: re.Match[str]) -> None:
    """As in "both games: 18 pitches 2 cb, then 26 pitches 5 cb": one after the other."""
    thens = [i for i, item in enumerate(board.items) if item.symbol == "then" and board.free(i)]
    counted = [i for i, item in enumerate(board.items) if item.symbol == "pitches"]
    if len(thens) == 1 and len(counted) == 2 and counted[0] < thens[0] < counted[1]:
        board.claim(match.start(), match.end(), "label", "game 1")
        board.claim(thens[0], thens[0] + 1, "label", "game 2")


def _in_ordinal(board: Board, match: re.Match[str]) -> None:
    """As in "24 p in the first one, 31 p in the 2nd", where both games are told of."""
    games = {1: "game 1", 2: "game 2"}
    value = board.whole(match.start("n"))
    if board.has("twogames", "bothends") and value in games:
        board.claim(match.start(), match.end(), "label", games[value])


def _only_the_first(board: Board, match: re.Match[str]) -> None:
    """As in "we had 2 games, i only threw in the first": that was a game."""
    if any(item.symbol == "thing" and item.text.lower() == "games" for item in board.items):
        board.claim(match.end() - 1, match.end(), "kind", "game")


def _all(board: Board, match: re.Match[str]) -> None:
    """As in "both say no pain"; "off day for everyone", where nobody is named."""
    named = any(claim.key == "who" for claim in board.claims)
    last = board.items[match.end() - 1].text.lower()
    off = last in ("for anyone", "for anybody") and board.has("restday", "notthrown", "off")
    if (last in ("for everyone", "for everybody") or off) and not named:
        board.claim(match.end() - 1, match.end(), "who", "everyone")
    else:
        board.claim(match.end() - 1, match.end(), "all")


def _all_at(board: Board, match: re.Match[str]) -> None:
    """As in "Leo 20 throws, Max 24. all at 70%"; "Leo 20 throws all at 70%" tells of one."""
    first, _ = span(board.sentence, match.start())
    names = sum(c.key == "who" and first <= c.first < match.start() for c in board.claims)
    told = {claim.key for claim in board.claims if claim.first == match.end()}
    if names != 1 and told & {"effort", "nopain", "tired"}:
        board.claim(match.start(), match.end(), "all")


def _all_games(board: Board, match: re.Match[str]) -> None:
    """As in "sat Leo 38p, Max 29p. all games": the kind of each outing."""
    board.claim(match.start(), match.end(), "all")
    board.claim(match.start(), match.end(), "kind", "game")


def _each(board: Board, match: re.Match[str]) -> None:
    board.claim(match.start(), match.end(), "each")


def _not_pitched(board: Board, match: re.Match[str]) -> None:
    board.claim(match.start(), match.end(), "notpitched")


def _same(board: Board, match: re.Match[str]) -> None:
    """As in "Ivy pen 22 p 6 ch, Noor same"."""
    board.claim(match.start(), match.end(), "same")


def _game_sign(board: Board, match: re.Match[str]) -> None:
    board.claim(match.start(), match.end(), "gamesign")


def _after_game(board: Board, match: re.Match[str]) -> None:
    board.claim(match.start(), match.end(), "aftergame")


def _beside_a_game(board: Board, match: re.Match[str]) -> None:
    """As in "flat ground before practice" is no practice; "sore after the game" tells of a game."""
    last = match.end() - 1
    counted = match.end() < len(board.items) and board.items[match.end()].symbol == "num"
    kinds = [i for i, item in enumerate(board.items) if item.symbol in groups.KINDS]
    told = counted or any(claim.key in ("pitches", "outs") for claim in board.claims)
    if told and kinds == [last] and board.items[match.start()].symbol == "after":
        pained = any(claim.key == "pain" for claim in board.claims)
        if counted or (pained and board.items[last].symbol in ("bullpen", "catch", "live")):
            return  # "fingers tingly after pen 30 pitches", "forearm tight after pen, 18 pitches"
    after_game = (
        board.items[match.start()].symbol == "after"
        and board.items[match.end() - 1].symbol == "game"
    )
    board.claim(
        match.start(), match.end(), "aftergame" if after_game else "no log", "before or after"
    )


def _both_ends(board: Board, match: re.Match[str]) -> None:
    """As in "both ends, 22 and 27": two games."""
    first, second = match.start("n"), match.start("t")
    if board.whole(first) is None or board.whole(second) is None:
        return
    board.claim(match.start(), match.start() + 1, "label", "game 1")
    for at in range(match.start() + 1, first):
        if board.items[at].symbol not in ("weekday", "sat", "yesterday"):
            board.no_log(at, at + 1, "both ends")
    board.claim(first, first + 1, "pitches", board.whole(first))
    board.claim(second - 1, second, "label", "game 2")
    board.claim(second, second + 1, "pitches", board.whole(second))


def _people(board: Board) -> set[object]:
    return {claim.value for claim in board.claims if claim.key == "who"}


def _both_unsaid(board: Board, match: re.Match[str]) -> None:
    """As in "2 cb both games": of each, or in all? With "G1" and "G2" beside it, plain."""
    counted = any(claim.key in COUNTS for claim in board.claims)
    first, after = span(board.sentence, match.start())
    alone = all(not item.text[:1].isalnum() for item in board.items[match.end() : after])
    if alone and match.start() == first and len(_people(board)) > 1:
        _all_games(board, match)
        return
    if not counted or any(claim.key == "label" for claim in board.claims):
        board.no_log(match.start(), match.end(), "both games")
    else:
        board.unread(match.start(), match.end(), UnreadReason.TWO_READINGS)


def _of_left_out(board: Board, at: int) -> bool:
    """As in "40 throws for everyone but Grace, she is resting"."""
    left = [claim for claim in board.claims if claim.key == "except"]
    return any(c.after <= at and board.sentence[c.first] == board.sentence[at] for c in left)


def _rest(board: Board, match: re.Match[str]) -> None:
    """As in "nothing today, rest", where the line counts nothing for that part of it."""
    if _of_left_out(board, match.start("r")):
        board.no_log(match.start("r"), match.end("r"), "left out")
        return
    clause = board.clause[match.start("r")]
    if not any(
        claim.key in COUNTS and board.clause[claim.first] == clause for claim in board.claims
    ):
        board.claim(match.start("r"), match.end("r"), "off")


def _on_weekday(board: Board, match: re.Match[str]) -> bool:
    first, after = span(board.clause, match.start())
    return any(board.items[i].symbol in ("weekday", "sat") for i in range(first, after))


def _after_plan(board: Board, at: int) -> bool:
    """Whether the sentence before is all plan and this one names nobody and no day."""
    here, before = board.sentence[at], board.sentence[at] - 1
    planned = any(c.value == "plan" and board.sentence[c.first] == before for c in board.claims)
    told = any(
        c.key in ("who", "day", *COUNTS) and board.sentence[c.first] in (here, before)
        for c in board.claims
    )
    return planned and not told


def _off(board: Board, match: re.Match[str]) -> None:
    """A day off; "off all week", "off till friday", "off for 3 days" are more than one day."""
    if _of_left_out(board, match.start()):
        board.no_log(match.start(), match.end(), "left out")
        return
    if _after_plan(board, match.start()):
        board.no_log(match.start(), match.end(), "plan")  # "nobody throws tomorrow. full rest day"
        return
    following = board.items[match.end() : match.end() + 3]
    words = {word for item in following for word in item.text.lower().split()}
    many = words & {"week", "weeks", "weekend", "days", "semana", "dias", "month"}
    if board.items[match.start()].text.lower() in ("descansa", "descansan") and _on_weekday(
        board, match
    ):
        board.unread(match.start(), match.end(), UnreadReason.UNCLEAR_DAY)  # last or next?
        return
    if "hasta" in words:  # "descansa hasta el jueves"
        board.no_log(match.start(), match.end(), "time off")
        return
    if board.items[match.end() - 1].symbol == "off" and (many or words & {"till", "til", "until"}):
        board.unread(match.start(), match.end(), UnreadReason.TWO_READINGS)
        return
    board.claim(match.start(), match.end(), "off")


LABEL_RULES: tuple[Rule, ...] = (
    rule(
        "both ends",
        "(bothends|twogames)"
        " (of|the|twogames|game|a|comma|dash|threw|with|colon|about|today|pitches|into|both|on"
        "|weekday|sat|yesterday)* <n:num> (pitches)? (and|then|comma then) <t:num> (pitches)?"
        " (?! (fill)* type)",
        _both_ends,
    ),
    rule("game 1", "(game|letterg) (hash)? <n:num> (?! (fill|dash)* noun)", _numbered_game),
    rule(
        "he started the 8am",
        "(in|threw|gamelike|had)+ the <n:clock> (game)?"
        " (?= comma|dot|with|for|and|colon|dash|num|$)",
        _clock_game,
    ),
    rule("first game", "firstgame", _label("game 1")),
    rule("second game", "secondgame", _label("game 2")),
    rule("in the second", "ordword (one)? (?! innings)", _in_game),
    rule("in the 2nd", "into the <n:ord> (?! innings)", _in_ordinal),
    rule("both games, one then the other", "bothends|twogames", _then_the_other),
    rule("another", "another (bullpen|catch|game|live)?", _label("another")),
)

KIND_RULES: tuple[Rule, ...] = (
    rule(
        "not counting warmups",
        "notcounting (the|hisher|a)* (warm|bullpen|catch)",
        says_no_log("not counted"),
    ),
    rule("all threw", "(?<=said_who) allof (?= threw|had|said_count|bullpen|catch)", _each),
    rule("both ends", "bothends", _both_unsaid),
    rule("all", "all | allof (?= kind|said_vs|vs)", _all),
    rule("all games", "allgames", _all_games),
    rule("all at 70%", "allof (?= said_count|said_arm|claimed)", _all_at),
    rule("after the game", "postgame", _after_game),
    rule("each", "each | both", _each),
    rule(
        "before practice",
        "(after|before) (the|hisher|a|i|today|said_day)* (game|catch|bullpen|live|practice|warm)",
        _beside_a_game,
    ),
    rule("pen", "bullpen", says_kind("bullpen")),
    rule(
        "side session",
        "(in|threw|had|with) (the|hisher|a)* side (?! (is|feels|painful)) |"
        " (^|comma|said_who) side | (?<=pitches) side (?! (is|feels|painful)) |"
        " (?<=said_count) side (?! (is|feels|painful))",
        says_kind("bullpen"),
    ),
    rule("warm-up", "warm", _warmed_up),
    rule("catch", "catch", says_kind("catch")),
    rule("live", "live", says_kind("live")),
    rule("scrimmage", "scrimmage", _open_kind),
    rule(
        "caught a game",
        "catching (the|a|allof|adj|num)* (game|twogames|gamelike|thing)",
        says_no_log("caught"),
    ),
    rule("game", "game | gamelike | twogames", says_kind("game")),
    rule(
        "came in for Leo", "relieved (i|he|the|word|limit|month|modal|said_who)?", says_kind("game")
    ),
    rule(
        "i only threw in the first",
        "threw (adv)* (ordword|firstgame|secondgame)",
        _only_the_first,
    ),
    rule("not pitched", "notpitched", _not_pitched),
    rule("skipped", "(?<=said_who) skipped", _not_pitched),
    rule("same", "(?<=said_who) (did|the|had|threw)* same", _same),
    rule("someone", "someone", says_unread(UnreadReason.UNCLEAR_PERSON)),
    rule("won", "win", _game_sign),
    rule("batting practice", "bp | tryout", _open_kind),
    rule(
        "rest",
        "(^|comma|dot|said_day|said_who|today|is|colon|dash) <r:rest>"
        " (?= comma|dot|stop|newline|$|said_day)",
        _rest,
    ),
    rule(
        "off",
        "(nothing (at allof)? (comma)*)? restday (restday|comma)* |"
        " (is|said_who|said_day|^|today|had|took) (the|a|adv|comma|colon|dash)* off (?! said_day) |"
        " off (said_day|today)",
        _off,
    ),
    rule("game 2 didn't throw", "(?<=said_label) notthrown (?! noun)", _not_pitched),
    rule("not thrown", "notthrown (said_day|today|at|all|adv|total)* (?! noun)", _off),
)
