"""Words of a coach that the bot repeats to minors and families: none may speak of pain.

A cue such as "throw through the pain" would tell a young arm to throw while it hurts; every
published youth guide says the opposite: stop, and tell an adult (Pitch Smart and USA Baseball
for players and parents; common practice). The list of words is from memory. It is kept wide:
a cue that it refuses by mistake is put in other words.
"""

import re

_PAIN = re.compile(
    r"\b(pain\w*|hurt\w*|ach(?:e|es|ed|ing|y)|(?:head|elbow|arm)ache\w*|sore\w*|injur\w*|numb\w*"
    r"|tingl\w*|tender\w*|swell\w*|swollen|sting(?:s|ing)?|stung|throb\w*|burn(?:s|ing)?|ouch"
    r"|discomfort\w*|dolor\w*|duel[ae]\w*|doler\w*|molest\w*|lesi[oó]n\w*|lastim\w*)\b",
    re.IGNORECASE,
)


def speaks_of_pain(words: str) -> bool:
    """Whether a cue or a coach's words on a rest day speak of pain, soreness or an injury."""
    return _PAIN.search(words) is not None
