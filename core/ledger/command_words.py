"""The few words that the bot answers to by themselves: one table for all that dispatches them.

The command, direct messages, mentions and the help are made from these rows.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum

from rapidfuzz import fuzz, process

from core.audience import Relation, Subject, View, may_log, may_see
from core.ledger.crew import Crew
from core.ledger.who import plain

#: How alike a word must be to be offered: 0 (nothing alike) to 100 (the same).
NEAR_MISS = 65


class Does(StrEnum):
    """What a word does."""

    FORM = "form"  # opens a form
    ASK = "ask"  # puts a question to the log
    LINE = "line"  # is an order that is typed as it is
    LAST = "last"  # points to the newest line, with its buttons
    HELP = "help"


class May(StrEnum):
    """Who may use a word; what it shows or takes is checked again by the audience table."""

    ANYBODY = "anybody"
    LOG_GAMES = "log games"
    LOG_PRACTICE = "log practice"
    LOG_STAFF_GAMES = "log the games of a staff"
    TELL_OF_ARMS = "tell of arms"
    READ = "read a record"
    STAFF = "staff"
    COACH = "the coach alone"


@dataclass(frozen=True, slots=True)
class Word:
    """One word; `target` is the form that it opens or the name of the question that it asks."""

    name: str
    does: Does
    may: May
    target: str = ""
    also: tuple[str, ...] = ()


WORDS: tuple[Word, ...] = (
    Word("log", Does.FORM, May.LOG_GAMES, "outing"),
    Word("bullpen", Does.FORM, May.LOG_PRACTICE, "bullpen", ("pen",)),
    Word("catch", Does.FORM, May.LOG_PRACTICE, "catch_play", ("catch play", "spins")),
    Word("roll call", Does.FORM, May.STAFF, "roll_call", ("roll", "practice")),
    Word("counts", Does.FORM, May.LOG_STAFF_GAMES, "game_counts", ("game",)),
    Word("pain", Does.FORM, May.TELL_OF_ARMS, "pain"),
    Word("who", Does.ASK, May.STAFF, "who", ("staff",)),
    Word("left", Does.ASK, May.STAFF, "left"),
    Word("plan", Does.ASK, May.STAFF, "plan"),
    Word("rest", Does.ASK, May.READ, "rest"),
    Word("mix", Does.ASK, May.READ, "mix"),
    Word("innings", Does.ASK, May.READ, "innings"),
    Word("stats", Does.ASK, May.READ, "stats", ("my log", "history")),
    Word("undo", Does.LAST, May.LOG_GAMES, also=("fix",)),
    Word(
        "my data",
        Does.ASK,
        May.READ,
        "data",
        (
            "data",
            "what do you know about",
            "what do you know",
            "what do you have on",
            "what do you keep about",
            "what do you store about",
        ),
    ),
    Word(
        "consent",
        Does.ASK,
        May.READ,
        "consent",
        ("i agree", "yes i agree", "i consent", "yes i consent", "estoy de acuerdo"),
    ),
    Word(
        "delete my data",
        Does.ASK,
        May.READ,
        "delete",
        (
            "delete everything",
            "delete all my data",
            "delete data",
            "delete my record",
            "delete the record of",
            "delete my account",
            "erase my data",
            "erase everything",
            "forget me",
        ),
    ),
    Word("add", Does.FORM, May.STAFF, "pitcher"),
    Word("roster", Does.FORM, May.STAFF, "roster", ("pitchers",)),
    Word("roles", Does.FORM, May.COACH, "roles"),
    Word("team", Does.FORM, May.COACH, "team_settings"),
    Word("calendar", Does.LINE, May.READ),
    Word("schedules", Does.LINE, May.STAFF),
    Word("thresholds", Does.LINE, May.STAFF),
    Word("alerts", Does.LINE, May.STAFF),
    Word("settings", Does.FORM, May.STAFF, "settings"),
    Word("help", Does.HELP, May.ANYBODY, also=("?", "commands", "help all")),
)
#: The help names so many with what they do; the others by "help all" (common practice, no source).
FIRST = 6
_FIRST_OF_STAFF = ("who", "left", "roll call", "log", "pain", "settings")
_FIRST_WITHOUT_PITCHERS = ("add", "roster", "team", "roles", "calendar", "settings")
_FIRST_OF_FAMILY = ("log", "bullpen", "catch", "pain", "rest", "undo", "stats", "calendar")
#: The word that takes the name of a new pitcher after it.
ADD = next(word for word in WORDS if word.name == "add")
_NAMED = {name: word for word in WORDS for name in (word.name, *word.also)}


def find_word(text: str) -> tuple[Word, str] | None:
    """The word that a text begins with, the longest one, and what follows it; else none."""
    said = " ".join(text.split())
    for name in sorted(_NAMED, key=len, reverse=True):
        if said.casefold() == name or said.casefold().startswith(f"{name} "):
            return _NAMED[name], said[len(name) :].strip()
    return None


def word_alone(text: str) -> Word | None:
    """The word that is the whole of a text, case and closing marks aside."""
    found = find_word(text.strip(" .!:/"))
    return found[0] if found is not None and not found[1] else None


def nearest(text: str, crew: Crew | None) -> Word | None:
    """The word that the first word of a text is almost, among those that this person may use."""
    first = plain(text).partition(" ")[0]
    offered = {name: word for name, word in _NAMED.items() if may_use(word, crew)}
    hit = process.extractOne(first, list(offered), scorer=fuzz.ratio, score_cutoff=NEAR_MISS)
    return offered[hit[0]] if hit is not None else None


def words_for(crew: Crew | None) -> list[Word]:
    """The words that somebody may use, in the order of the table."""
    return [word for word in WORDS if may_use(word, crew)]


def first_words(crew: Crew) -> list[str]:
    """The words that somebody needs first, at most `FIRST`; a staff without pitchers sets up."""
    names = {word.name for word in words_for(crew)}
    of_staff = _FIRST_OF_STAFF if crew.related(Relation.STAFF) else _FIRST_WITHOUT_PITCHERS
    order = of_staff if crew.coaches else _FIRST_OF_FAMILY
    return [one for one in order if one in names][:FIRST]


def asks_for_all(text: str) -> bool:
    """Whether the help is asked for with every word."""
    return plain(text.strip(" .!:/")) == "help all"


def may_use(word: Word, crew: Crew | None) -> bool:
    """Whether somebody may use a word; `crew` none is somebody whom no team knows."""
    if word.may is May.ANYBODY:
        return True
    if crew is None:
        return False
    every = list(crew.relations.values())
    match word.may:
        case May.STAFF:
            return bool(crew.coaches)
        case May.COACH:
            return bool(crew.heads)
        case May.READ:
            return any(may_see(relations, View.RECORD) for relations in every)
        case May.LOG_STAFF_GAMES:
            counting = {Relation.STAFF, Relation.SCOREKEEPER}
            return any(relations & counting for relations in every)
        case _:
            return _may_log(every, _SUBJECTS[word.may])


_SUBJECTS = {
    May.LOG_GAMES: Subject.GAME_COUNTS,
    May.LOG_PRACTICE: Subject.PRACTICE,
    May.TELL_OF_ARMS: Subject.ARM,
}


def _may_log(every: Iterable[frozenset[Relation]], subject: Subject) -> bool:
    return any(may_log(relations, subject) for relations in every)
