"""Questions about an arm itself: "is my arm ok to throw". No answer to one is ever a yes."""

import re

from core.reading.asking.asked import CHILD, ME

_ARM = r"(?:arm|elbow|shoulder|forearm|wrist)"
_FINE = r"(?:ok|okay|fine|alright|all right|safe|healthy|well)"
_WELL = rf"(?:{_FINE}|good|ready)"
_FOR = r"(?:\s+(?:enough\s+)?(?:to|for)(?:\s+\w+){1,3})?"
_TO_THROW = r"(?:\s+(?:enough\s+)?to\s+(?:throw|pitch|play|practice))?"
_NAME = r"[^\W\d][^?!.,;:]{0,40}?"
_WHOSE = rf"(?P<who>my|his|her|their|{_NAME})"
_TO_ANSWER = r"(?P<asks>,?\s+(?:right|yes|yeah|isn'?t it|or not)\s*\?*|\s*\?+)"
_BEFORE = r"(?:(?:hey|hi|yo|so|um|ok|coach|pls|please)[,!]?\s+)*"
_AFTER = r"(?:,?\s+(?:today|now|rn|again|coach|pls|please|lol|or not))*[\s?!.]*"

_FORMS = (
    #: "is my arm ok to throw", with or without the mark.
    rf"(?:is|are)\s+{_WHOSE}\s+{_ARM}\s+(?:still\s+)?(?:{_WELL}{_FOR}|feeling\b.*|doing\b.*)",
    #: "how's Leo's arm", "how is my arm doing".
    rf"how(?:'?s|\s+is)\s+{_WHOSE}\s+{_ARM}(?:\s+(?:feeling|doing|looking|holding up))?",
    #: "is Leo ok", "am I ok to throw": of a pitcher nothing else is meant here than his arm.
    rf"(?:is\s+(?P<who>he|she|{_NAME})|am\s+(?P<me>i))\s+(?:still\s+)?{_FINE}{_TO_THROW}",
)
_ASKED = tuple(re.compile(rf"{_BEFORE}{form}{_AFTER}", re.IGNORECASE) for form in _FORMS)
#: "is Leo hurt", asked of somebody else; of the own arm it may be a report.
_HURT = re.compile(
    rf"{_BEFORE}is\s+(?P<who>he|she|{_NAME})\s+(?:still\s+)?(?:hurt|injured|hurting|in pain|sore)"
    rf"{_AFTER}",
    re.IGNORECASE,
)
#: "my arm is ok to throw right": said as it is, it is a question by its end alone.
_SAID = re.compile(
    rf"{_WHOSE}\s+{_ARM}(?:\s+is|'s)?\s+(?:still\s+)?{_WELL}{_FOR}{_TO_ANSWER}", re.IGNORECASE
)
#: A word of these makes the line a report, whatever it asks beside.
_HURTS = re.compile(r"\b(?:hurt|sore|pain|ach[ey]|tight|numb|stiff|swoll|tired|tingl|pop)")
_OF_A_PART = re.compile(rf"\b(?:my|our|this|that|{_ARM})\b", re.IGNORECASE)
_OTHERS = frozenset({"his", "her", "their", "he", "she"})


def whose_arm(text: str) -> str | None:
    """Whose arm a text asks about: `ME`, `CHILD` or a name as typed; none where it asks of none.

    A text that speaks of pain as well is none: it is read as the report that it may be.
    """
    said = " ".join(text.replace("’", "'").split())
    if (asked := _HURT.fullmatch(said)) and not _OF_A_PART.search(asked["who"]):
        who = asked["who"].strip()
        return CHILD if who.casefold() in _OTHERS else who
    if _HURTS.search(said.casefold()):
        return None
    for form in (*_ASKED, _SAID):
        if found := form.fullmatch(said):
            groups = found.groupdict()
            typed = (groups.get("me") or groups["who"]).strip()
            who = typed.casefold()
            return ME if who in {"my", "i"} else CHILD if who in _OTHERS else typed
    return None
