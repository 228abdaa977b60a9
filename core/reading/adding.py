"""What the staff type to add a pitcher: "add Rio", "new pitcher: Rio Vale", "add a pitcher".

No more than a name may follow: a number or a word of the log makes it another line.
"""

import re

_ADD = re.compile(
    r"^(?:please )?(?:add|new|put)\b(?: (?:a|the|one more|another))?"
    r"(?P<who>(?: new)? (?:pitcher|player|kid|arm)s?)?"
    r"(?:[:,]| (?:named|called))?(?: (?P<name>.+?))??"
    r"(?: (?:to|on) (?:the |my |our )?(?:roster|team))?$",
    re.IGNORECASE,
)
_NAME = re.compile(r"[^\W\d_]+(?:[.'’-][^\W\d_]*)*")
#: Words that stand in no name: what follows "add" is something else then.
_OTHER = (
    "a an the it that this these them me us my his her him our your more another some one to for "
    "of in on off up as at and or with no not all everyone everybody "
    "game games practice practices scrimmage doubleheader tournament calendar event cue cues "
    "coach coaches assistant scorekeeper parent parents guardian guardians mom mum dad account "
    "team roster limit threshold note notes line log count counts pitch pitches throw throws spin "
    "spins rep reps strike strikes inning innings curve curves curveball curveballs cb slider "
    "sliders change changeup changeups fastball fastballs pen bullpen catch outing pain book "
    "reminder reminders plan season today tomorrow yesterday"
)
_NO_NAME = frozenset(_OTHER.split())
MOST_WORDS = 4
_SEVERAL = re.compile(r"^[^\W\d]+(?: [^\W\d]+)?(?:,? and |, | & )[^\W\d]+", re.IGNORECASE)


def pitcher_to_add(text: str) -> str | None:
    """The name in a line that adds a pitcher, empty where none is given; else none."""
    found = _ADD.match(" ".join(text.split()).rstrip(".! "))
    if found is None:
        return None
    name = (found["name"] or "").strip(" ,")
    words = name.split()
    if not words:
        return "" if found["who"] else None
    if _SEVERAL.search(name) and pitcher_to_add(f"add {words[0]}"):
        return ""  # one form for each
    if len(words) > MOST_WORDS or any(word.casefold() in _NO_NAME for word in words):
        return None
    if not all(_NAME.fullmatch(word) for word in words):
        return None
    is_new = text.strip().casefold().startswith("new")
    if is_new and not found["who"]:
        return None  # "new glove": only "new pitcher" adds one
    return name if name != name.casefold() else name.title()
