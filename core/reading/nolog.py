"""Numbers that are no part of a log: scores, clock times, batting lines, limits, places."""

import re

from core.reading.board import NO_LOG, Board, Rule, rule, says_no_log, says_unread
from core.reading.entry import UnreadReason
from core.reading.radar import RADAR_RULES, SPEED_OF_A_PITCH_RULES

LARGEST_SCORE = 30


def _numbers(board: Board, match: re.Match[str]) -> list[int]:
    return [i for i in range(*match.span()) if board.items[i].value is not None]


def _score(board: Board, match: re.Match[str]) -> None:
    values = [board.whole(i) for i in _numbers(board, match)]
    if all(value is not None and value <= LARGEST_SCORE for value in values):
        told = any(board.items[i].symbol == "win" for i in range(*match.span()))
        board.claim(match.start(), match.end(), "gamesign" if told else NO_LOG, "score")


def _distance(board: Board, match: re.Match[str]) -> None:
    """As in "long toss out to 200": feet."""
    value = board.whole(match.start("n"))
    if value is not None and value >= 50:
        board.no_log(match.start("n"), match.end(), "distance")


def _up_and_down(board: Board, match: re.Match[str]) -> None:
    """As in "8 up 8 down"."""
    words = [board.items[i].text.lower() for i in (match.start() + 1, match.end() - 1)]
    if words == ["up", "down"]:
        board.no_log(match.start(), match.end(), "idiom")


def _years_old(board: Board, match: re.Match[str]) -> None:
    """As in "He's 12 and this was his first pen", "I'm 61 and my hand hurts"."""
    word, value = board.items[match.start()].text.lower(), board.whole(match.start("n"))
    child = word in ("he's", "hes", "she's", "shes", "i'm", "im") and value in range(7, 19)
    grown = word in ("i'm", "im") and board.author == "guardian" and (value or 0) > 18
    if child or grown:
        board.no_log(match.start("n"), match.end("n"), "age")


def _also_remaining(board: Board, match: re.Match[str]) -> None:
    """As in "Hunter has 40 left for today, Will has 55"."""
    before = [
        c for c in board.claims if c.value in ("remaining", "limit") and c.after <= match.start()
    ]
    counted = any(c.key == "pitches" for c in board.claims)
    if before and not counted and board.sentence[before[-1].first] == board.sentence[match.start()]:
        board.no_log(match.start() + 1, match.end(), "remaining")


def _small_numbers(board: Board, match: re.Match[str]) -> None:
    """As in "a 1-2-3 inning", "2-1-0": all single digits."""
    values = [board.whole(i) for i in _numbers(board, match)]
    if all(value is not None and value < 10 for value in values):
        board.no_log(match.start(), match.end(), "score")


def _clock(board: Board, match: re.Match[str]) -> None:
    at = match.start("n")
    value = board.whole(at)
    if value is not None and 1 <= value <= 12:
        board.no_log(match.start(), match.end(), "clock time")


def _at_hour(board: Board, match: re.Match[str]) -> None:
    """As in Spanish "el juego de las 9"."""
    if board.items[match.start("n") - 1].text.lower() in ("las", "la"):
        board.no_log(match.start("n") - 2, match.end(), "clock time")


def _warm_up_throws(board: Board, match: re.Match[str]) -> None:
    """As in "62p 4ip plus 35 warmup throws": beside a game they are no part of its count."""
    if board.has("innings", "vs", "game", "gamelike"):
        board.no_log(match.start(), match.end(), "warm-up")


def _negative(board: Board, match: re.Match[str]) -> None:
    """As in "-3 pitches"; a dash at the start of a line may be a bullet."""
    at = match.start()
    before = board.items[at - 1].symbol if at else ""
    spaced = not board.items[at].tight and board.items[at + 1].tight
    bullet = before == "newline" or (at == 0 and board.has("newline"))
    if spaced and not bullet and before != "num":
        board.unread(at, match.end(), UnreadReason.IMPOSSIBLE)


def _so_far(board: Board, match: re.Match[str]) -> None:
    """As in "no hitter thru 4!! 53 pitches 4 ip": the innings are told beside it."""
    if board.has("innings"):
        board.no_log(match.start(), match.end(), "inning")


def _score_in_innings(board: Board, match: re.Match[str]) -> None:
    board.claim(match.start(), match.end(), "gamesign", "score")


def _weather(board: Board, match: re.Match[str]) -> None:
    if board.items[match.end() - 1].text.lower() in ("out", "outside", "out there"):
        board.no_log(match.start(), match.end(), "weather")


def _how_many(board: Board, match: re.Match[str]) -> None:
    """As in "3 pens this week": a number of outings, not of pitches; "2 pens of 20" is asked."""
    number = board.whole(match.start())
    plural = "s" in {word[-1] for word in board.items[match.end() - 1].text.lower().split()}
    if number is None or number >= 10 or not plural:
        return
    following = [item.symbol for item in board.items[match.end() : match.end() + 2]]
    if following == ["of", "num"]:
        board.unread(match.start(), match.start() + 1, UnreadReason.TWO_READINGS)
    else:
        board.no_log(match.start(), match.start() + 1, "number of outings")


def _of_them_pitch(board: Board, match: re.Match[str]) -> None:
    """As in "14 kids, 4 of them pitch": a verb."""
    if board.items[match.end() - 1].text.lower() == "pitch":
        board.no_log(match.start(), match.end(), "number of arms")


def _were_hit(board: Board, match: re.Match[str]) -> None:
    """As in "3 curves got hit": all the curves, or those that were hit?"""
    last = board.items[match.end() - 1]
    if last.symbol == "hit" or "hit" in board.text[last.start : last.end + 8].lower():
        board.unread(match.start(), match.end(), UnreadReason.TWO_READINGS)


_NOT_COUNTED = " (?! (fill|dash)* (noun|percent))"

NO_LOG_RULES: tuple[Rule, ...] = (
    rule("game 12 at 3:45", "game (hash)? num (?= (at)? clock)", says_no_log("game number")),
    rule(
        "practice mon 5:30",
        "practice (is|the|on)* (weekday|sat|today) (at|comma)* clock (?= dot|stop|newline|$)",
        says_no_log("plan"),
    ),
    rule(
        "thursday 4:30",
        "(weekday|sat) (at|comma)* clock (?! (the|adj)* game)",
        says_unread(UnreadReason.UNCLEAR_DAY),
    ),
    rule(
        "score of a short game",
        "num (dash|to) num (win|the|adj)* in (the|a)* num innings",
        says_no_log("score"),
    ),
    *RADAR_RULES,
    rule(
        "moved from 9 to 11:15",
        "(from|of the) num (at|to|dash) clock",
        says_no_log("clock time"),
    ),
    rule("juego de las 9", "(anygame|practice|bullpen) of the <n:num>" + _NOT_COUNTED, _at_hour),
    rule(
        "clock",
        "(at|about|before|after|to|dash)* clock ((dash|to) clock)*",
        says_no_log("clock time"),
    ),
    rule("money", "money", says_no_log("price")),
    rule(
        "the temperature was 51",
        "weather (is|at|of|about|in|the|adv|hit|up_to|over)* (num|pct)" + _NOT_COUNTED,
        says_no_log("weather"),
    ),
    rule("he's 12 and", "(i|he) <n:num> (?= and|comma|dot|stop|but|$)", _years_old),
    rule("3 of those got hit", "num them (is)? (got|hit)", says_no_log("statistic")),
    rule("jersey", "hash (hash)? num" + _NOT_COUNTED, says_no_log("jersey")),
    rule(
        "place", "place (colon|hash|of|said_who|is|the)* num" + _NOT_COUNTED, says_no_log("place")
    ),
    rule("age", "num age", says_no_log("age")),
    rule("rate", "rate (is|at|to|of|adv|about|win|up_to)* num" + _NOT_COUNTED, says_no_log("rate")),
    rule(
        "for",
        "num (dash)? for (dash)? num (with a stat|with num stat)?",
        says_no_log("batting line"),
    ),
    rule("count on the batter", "num dash num dash num", _small_numbers),
    rule(
        "struck me out on 3 pitches",
        "struckout (the|i|he|word|adv)* (on|in) (adv|about)* num (adj)* (pitches)?",
        says_no_log("batting line"),
    ),
    rule("no hitter thru 4", "nohit (the)? <n:num|ord> (?! innings)", _so_far),
    rule("no hitter thru 5 innings", "nohit (?= num innings)", says_no_log("idiom")),
    rule("it was 97 out", "is num word", _weather),
    rule("won 11-1 in 5", "win num dash num into num (?! (fill|dash)* noun)", _score_in_innings),
    rule("squats 4x12", "thing (colon)? num times num", says_no_log("exercise")),
    rule("lots of walks (4)", "vague (stat|hit|balls) (open num close)?", says_no_log("statistic")),
    rule("won in 9 innings", "win (adv)* into num innings", says_no_log("length of game")),
    rule("two hundred feet", "num vague thing", says_no_log("distance")),
    rule(
        "game tonight, 3 to 2",
        "(game|gamelike) (today|adv|comma)* num to num (?= dot|comma|stop|newline|$)",
        _score,
    ),
    rule(
        "left to throw",
        "num fill* (unit)? (left|remaining) (?! site|said_arm|claimed)",
        says_no_log("remaining"),
    ),
    rule(
        "Hunter has 40 left, Will has 55",
        "said_who (had|at|is|colon|dash) num (?= comma|dot|newline|semi|and|stop|$)",
        _also_remaining,
    ),
    rule(
        "first pitch strikes",
        "firstpitch (is|colon)* (num|pct|ratio) (of num)? | (num|pct|ratio) (of num)? firstpitch",
        says_no_log("rate"),
    ),
    rule("vs 18 batters", "(vs|to|over) num stat", says_no_log("statistic")),
    rule("long toss out to 200", "catch (word|adv)* to <n:num>" + _NOT_COUNTED, _distance),
    rule("8 up 8 down", "num adv num adv", _up_and_down),
    rule("arms used", "num site (?! (is|feels|pain|sore))", says_no_log("number of arms")),
    rule("birthday", "turned (the|adv)* (num|ord)", says_no_log("age")),
    rule(
        "no pen",
        "none (the|adj|adv)* (bullpen|game|catch|live|side) (?! (fill)* (noun|num))",
        says_no_log("not done"),
    ),
    rule("no walks", "none (adj)* (stat|hit|balls)", says_no_log("statistic")),
    rule("feeling", "feels (adv|at|about|the)* pct", says_no_log("feeling")),
    rule("4-4 after six", "num (dash|to) num after (the)? (num|ord) (innings)?", _score),
    rule("price", "cost (is|of|the|about|adv|hisher|i|he)* num (thing)?", says_no_log("price")),
    rule(
        "win, score",
        "win (the|in|it|game|vs|word|is|at|colon|comma|adv|by|for)* num (dash|to) num",
        _score,
    ),
    rule("score, win", "num (dash|to) num (the|adv|in|a|adj)* (win|letterwin)", _score),
    rule("letter and score", "(letterwin|with) num dash num", _score),
    rule(
        "bare score",
        "(?<!dash) num dash num (?! dash num) (?! fill*"
        " (unit|innings|mixedpitch|percent|stat|thing))",
        _score,
    ),
    rule("inning half", "half num", says_no_log("inning")),
    rule("gave up two", "gaveup (adv)* num", says_no_log("statistic")),
    rule("faced five", "faced (adv|the)* num", says_no_log("statistic")),
    rule(
        "skipped",
        "skipped (the|hisher|a|today)* (bullpen|game|catch|live|side|warm|practice) (?! at num)",
        says_no_log("not done"),
    ),
    rule(
        "too many",
        "num fill* unit is (adv|the|a)* vague",
        says_unread(UnreadReason.TWO_READINGS),
    ),
    *SPEED_OF_A_PITCH_RULES,
    rule("saw three hooks", "saw (about|the|adv|adj)* num fill* unit", says_no_log("batting line")),
    rule("sets of an exercise", "num times num (?= word|slot|painidiom)", says_no_log("exercise")),
    rule(
        "cancelled",
        "(game|gamelike|scrimmage) (is|had|adv|the)* skipped",
        says_no_log("not played"),
    ),
    rule(
        "no throwing for so long",
        "num thing (of|the|adv)* restday | restday (for)? num thing",
        says_no_log("time off"),
    ),
    rule("outs in the inning", "half (ord|num) (comma|dash)* num outs", says_no_log("inning")),
    rule("height", "num quote num", says_no_log("height")),
    rule(
        "and 35 warm-up throws",
        "(plus|and|with|comma|notcounting)+ (about|the|adv)* num (adj)* warm (pitches)?",
        _warm_up_throws,
    ),
    rule(
        "120 pitches between 4 guys",
        "num (unit|total|today|adv|fill)* between (the|allof)* num thing",
        says_no_log("total"),
    ),
    rule("negative", "dash num (unit|innings)", _negative),
    rule("3 pens this week", "num (bullpen|game|gamelike|live) (?! (fill|dash)* noun)", _how_many),
    rule("4 of them pitch", "num them pitches", _of_them_pitch),
    rule("40 something", "num (dash)? something (pitches|unit)", says_unread(UnreadReason.VAGUE)),
    rule("curves that were hit", "num breakingtype (is)? (got|hit)", _were_hit),
    rule("idiom", "idiom", says_no_log("idiom")),
    rule("sixteens", "(the|a|in|with)+ num plural", says_no_log("age group")),
)


CLOCK_RULES: tuple[Rule, ...] = (
    rule("home by nine", "by <n:num> (?! (fill|dash)* (unit|innings|percent|speed))", _clock),
    rule("at six", "at <n:num> (?! (fill|dash)* (unit|innings|percent|speed))", _clock),
)
