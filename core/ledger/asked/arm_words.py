"""Questions about an arm itself: "is my arm ok to throw". No answer to one is ever a yes."""

import re

from core.reading.asking.asked import CHILD, ME

_ARM = r"(?:arm|elbow|shoulder|forearm|wrist)"
_WELL = r"(?:ok|okay|fine|good|alright|all right|safe|healthy|ready)"
_FOR = r"(?:\s+(?:enough\s+)?(?:to|for)(?:\s+\w+){1,3})?"
_WHOSE = r"(?P<who>my|his|her|their|[^\W\d][^?!.,;:]{0,40}?)"
_TO_ANSWER = r"(?P<asks>,?\s+(?:right|yes|yeah|isn'?t it|or not)\s*\?*|\s*\?+)"

#: "is my arm ok to throw", with or without the mark.
_ASKED = re.compile(rf"(?:is|are)\s+{_WHOSE}\s+{_ARM}\s+(?:still\s+)?{_WELL}{_FOR}[\s?!.]*")
#: "my arm is ok to throw right": said as it is, it is a question by its end alone.
_SAID = re.compile(rf"{_WHOSE}\s+{_ARM}(?:\s+is|'s)?\s+(?:still\s+)?{_WELL}{_FOR}{_TO_ANSWER}")
#: A word of these makes the line a report, whatever it asks beside.
_HURTS = re.compile(r"\b(?:hurt|sore|pain|ach[ey]|tight|numb|stiff|swoll|tired|tingl|pop)")


def whose_arm(text: str) -> str | None:
    """Whose arm a text asks about: `ME`, `CHILD` or a name as typed; none where it asks of none.

    A text that speaks of pain as well is none: it is read as the report that it may be.
    """
    said = " ".join(text.replace("’", "'").split())
    if _HURTS.search(said.casefold()):
        return None
    for form in (_ASKED, _SAID):
        if found := re.fullmatch(form.pattern, said, re.IGNORECASE):
            typed = found["who"].strip()
            who = typed.casefold()
            return ME if who == "my" else CHILD if who in {"his", "her", "their"} else typed
    return None
