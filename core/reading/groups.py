"""Groups of symbols that rules share. Importing this module declares them."""

from core.reading.pattern import group

TYPES = ("breaking", "curve", "slider", "changeup", "fastball")
BREAKING_TYPES = ("breaking", "curve", "slider")
FIELDS = {symbol: symbol for symbol in ("pitches", *TYPES, "strikes")} | {
    "innings": "outs",
    "outs": "outs",
    "forstrikes": "strikes",
}
# Nouns whose counts are no part of a log, with what they are.
OTHER_NOUNS = {
    "stat": "statistic",
    "hit": "statistic",
    "thing": "something else",
    "otherpitch": "pitch type without a key",
    "balls": "balls",
    "mph": "radar",
    "age": "age",
    "batting": "batting line",
}
LAST_OF_MONTH = 31
UNCLEAR_NOUNS = ("mixedpitch", "finger")
NOUNS = frozenset(FIELDS) | frozenset(OTHER_NOUNS) | frozenset(UNCLEAR_NOUNS)
# Words that may stand between a number and its noun.
FILLERS = frozenset(
    {
        "adj",
        "good",
        "goodadj",
        "the",
        "hisher",
        "total",
        "adv",
        "ish",
        "about",
        "ball",
        "them",
        "is",
        "a",
        "allof",
    }
)
KINDS = frozenset(
    {"bullpen", "catch", "live", "game", "gamelike", "scrimmage", "bp", "tryout", "warm"}
)

group("type", TYPES)
group("breakingtype", BREAKING_TYPES)
group("unit", ("pitches", *TYPES, "strikes"))
group("noun", sorted(NOUNS))
group("fill", ("adj", "goodadj", "good", "the", "hisher", "total", "adv", "ish", "ball", "allof"))
group("in", ("into", "on", "during"))
group("anygame", ("game", "gamelike"))
group("det", ("the", "hisher", "a", "i", "he"))
group("kind", sorted(KINDS))
group("painful", ("pain", "sore"))
group("negation", ("none", "insteadof", "nothing"))
group("mark", ("comma", "dot", "dash", "open", "close", "semi", "stop", "colon"))
