"""What the staff ask when they set a team up: which form it is about.

"How do I add players", "make Dana assistant coach", "change the time zone": the form is offered
by a button. A line with a number in it is never one of these.
"""

import re

MOST_WORDS = 10
_PEOPLE = r"(?:players?|pitchers?|kids?|boys|arms|roster|parents?|guardians?|famil(?:y|ies))"
_DO = r"(?:add|put|enter|import|upload|invite|remove|delete|drop|change|edit|manage|list|show)"
_FORMS: tuple[tuple[str, re.Pattern[str]], ...] = (
    (
        "roles",
        re.compile(
            r"\b(?:make|add|name|appoint|invite|give|new|how|change|remove)\b.*"
            r"\b(?:assistants?|scorekeepers?|co-?coach(?:es)?|(?:second|another|other) coach"
            r"|coach(?:es)?|roles?)\b",
            re.IGNORECASE,
        ),
    ),
    (
        "team",
        re.compile(
            r"\b(?:change|set|which|what|where|switch|rename|edit|how)\b.*\b(?:time ?zone"
            r"|rule ?books?|log channel|staff channel|team(?:'s)? name|name of the team"
            r"|account age|team settings)\b",
            re.IGNORECASE,
        ),
    ),
    (
        "roster",
        re.compile(
            rf"\b{_DO}\b.*\b{_PEOPLE}\b|^(?:the |our |my )?(?:guardians?|parents?|consents?)$"
            r"|^consent (?:for|of) \S+(?: \S+)?$|\b(?:how|where|record|get|give)\b.*\bconsent\b",
            re.IGNORECASE,
        ),
    ),
    (
        "help",
        re.compile(
            r"\bhow (?:do|can|should) (?:i|we) (?:start|begin|get started|set (?:it|this) up)\b"
            r"|^(?:get|getting) started$|^(?:set ?up|next steps?|what(?:'s| is) next)$",
            re.IGNORECASE,
        ),
    ),
)


def setup_word(text: str) -> str | None:
    """The name of the word whose form a line asks for, "help" for how to begin; else none."""
    said = " ".join(text.replace("’", "'").split()).strip(" .!?")
    if len(said.split()) > MOST_WORDS or any(one.isdigit() for one in said):
        return None
    return next((name for name, pattern in _FORMS if pattern.search(said)), None)
