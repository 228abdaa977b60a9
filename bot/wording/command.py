"""The help: what each word of the command does, for whoever may use it."""

from collections.abc import Sequence

from bot.wording.hints import EXAMPLES
from bot.wording.words import safe

#: One line for each word of the table in `core.ledger.command_words`; a test compares both.
WORDS = {
    "log": "log one pitcher's game, by a form",
    "bullpen": "log a bullpen, by a form",
    "catch": "log catch play and its spins, by a form",
    "roll call": "log what everybody at practice threw",
    "counts": "log the counts of one game, several pitchers at once",
    "pain": "report pain; only adults who must know are told",
    "who": "who can throw today; `who saturday` for another day",
    "left": "who can still throw today",
    "plan": "cover a weekend: `plan sat 9am 80, sat 2pm 70`",
    "rest": "whether the rest is done; `rest Leo` for one pitcher",
    "mix": "breaking balls this season; `mix Leo` for one pitcher",
    "innings": "innings pitched this year",
    "stats": "your last outings, the season and the rest; `stats Leo` for one pitcher",
    "undo": "your newest line, to take back or put right",
    "my data": "what I keep about you or your child, and who reads it",
    "consent": "whether consent to a record stands; agree to it or withdraw it",
    "delete my data": "how a record is deleted for good",
    "add": "add a pitcher: `add Rio`",
    "roster": "add and change pitchers, by a form; or drop a CSV here",
    "roles": "who coaches, assists and keeps score",
    "team": "the team's channels, rule books, time zone and account age",
    "calendar": "games and practices; staff put one on with `game sat 10am vs Summit`",
    "schedules": "what I send by myself, and when; staff change it there",
    "thresholds": "what the alerts go by",
    "alerts": "the alerts that stand",
    "settings": "what is set for the team, and the forms that change it",
    "help": "this list",
}
#: The words by what they are for, as the whole list has them; a test finds each in one group.
GROUPS = {
    "Log": ("log", "bullpen", "catch", "roll call", "counts", "pain", "undo"),
    "Ask": ("who", "left", "plan", "rest", "mix", "innings", "stats", "calendar", "alerts"),
    "Your record": ("my data", "consent", "delete my data"),
    "The team": ("add", "roster", "roles", "team", "schedules", "thresholds", "settings"),
    "And": ("help",),
}
TRY_LINE = f"Or just type a line, for example {EXAMPLES}."
STAFF_ASK = (
    "You can also ask in your own words: “can Leo go sunday”, “if Leo throws 40 thu when is he "
    "back”, “how many can Leo throw thu and still go sat”."
)
ASK = "You can also ask in your own words: “when can I pitch”, “how many did I throw sat”."
PLACES = "The same words work here, after /spinkeeper, and after my name in a channel."
OPEN = "Open the form"
RECORDED = "I have it: the answer is in our direct message."
STRANGER = (
    "I keep the pitching log of a team, and I don't know you as part of one yet. Ask a coach to "
    "add you to the roster; then open my Home tab."
)
TOO_LATE = "That took too long, so the form did not open. Nothing is lost: please press again."


def help_text(words: Sequence[str], first: Sequence[str], *, is_staff: bool) -> str:
    """The words that come first with what they do, and how to see the others.

    With none first, or hardly more than those, every word that this person may use, by group.
    """
    ask = STAFF_ASK if is_staff else ASK
    others = [word for word in words if word not in {*first, "help"}]
    if first and len(others) > FEW:
        return "\n".join([*_rows(first), f"{MORE}: {', '.join(others)}.", TRY_LINE, ask])
    return "\n".join([*_groups(words), TRY_LINE, ask, PLACES])


def _rows(words: Sequence[str]) -> list[str]:
    return [f"• *{word}*: {WORDS[word]}" for word in words]


def _groups(words: Sequence[str]) -> list[str]:
    """The rows under the names of their groups; without names where the list is short."""
    if len(words) <= FEW + FEW:
        return _rows(words)
    found = {name: [word for word in group if word in words] for name, group in GROUPS.items()}
    return [row for name, group in found.items() if group for row in (f"*{name}*", *_rows(group))]


#: So many more words are told of at once.
FEW = 3
MORE = "More (write `help all` to see what each does)"


def short_help(words: Sequence[str]) -> str:
    """The words alone, in a line."""
    return f"You can say: {', '.join(words)}. {TRY_LINE}"


def unknown(typed: str, near: str | None, words: Sequence[str]) -> str:
    """Said of a word that is in no table: the nearest one, and the short help."""
    said = typed if len(typed) <= 40 else f"{typed[:39]}…"
    guess = f" Did you mean *{near}*?" if near is not None else ""
    return f"I don't know “{safe(said)}”, so nothing was counted.{guess} {short_help(words)}"


HOW_MANY = {
    "log": "How many pitches? Type them, for example “62p 11cb vs Summit”, or open the form.",
    "bullpen": "How many pitches? Type them, for example “pen 25 6ch”, or open the form.",
    "catch": "How many throws? Type them, for example “catch 30 throws 12 spins”, or open the "
    "form.",
}


def opens_form(word: str, *, asks_count: bool = False) -> str:
    """Said above the button that opens a form."""
    if asks_count:
        return HOW_MANY[word]
    return f"*{word.capitalize()}*: {WORDS[word]}."


OWN_SETTINGS = (
    "The team's settings are for the coaches. Yours: “stop” ends reminders to you, “remind us on "
    "the last rest day” adds one, “withdraw consent” ends the record. Pain notices always come."
)
NO_SETTINGS = (
    "The team's settings are for the coaches. A parent or guardian decides what I write to you."
)


def not_for_you(word: str, words: Sequence[str], *, is_guardian: bool | None = None) -> str:
    """Said of a word that is for others."""
    if word == "settings" and is_guardian is not None:
        return OWN_SETTINGS if is_guardian else NO_SETTINGS
    return f"“{word}” is not for you here. {short_help(words)}"
