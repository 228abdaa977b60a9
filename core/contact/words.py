"""The words by which somebody ends, or takes up again, what the bot writes unasked."""

import re
from dataclasses import dataclass
from enum import StrEnum


class Wish(StrEnum):
    """What somebody wants."""

    NO_REMINDERS = "no reminders"
    REMINDERS = "reminders"
    NO_CONTACT = "no contact"  # nothing to the child any more
    CONTACT = "contact"


@dataclass(frozen=True, slots=True)
class ContactWish:
    """A wish as typed; `who` is the child named, empty for "my son", "him"."""

    wish: Wish
    who: str = ""


_POLITE = r"(?:(?:please|pls|hi|hello|can you|could you|you (?:can|may)|ok(?:ay)? to),? )*"
_WRITE = (
    r"(?:contact|message|text|dm|pm|nudge|remind|write(?: to)?|talk to|ping|send (?:messages|texts|"
    r"anything) to)"
)
_WRITING = (
    r"(?:contacting|messaging|texting|nudging|reminding|writing(?: to)?|pinging|"
    r"sending (?:messages|texts|anything) to)"
)
_THINGS = r"(?:nudges?|reminders?|messages?|texts?|notifications?|updates?)"
_NOT = r"(?:do not|don'?t|dont|never)"
_WHO = r"(?P<who>(?!me\b|us\b).+?)"
_AGAIN = r"(?: any ?more| again| directly| yourself)*"
_ME = r"(?: (?:to|for) (?:me|us))?"
_FORMS: tuple[tuple[Wish, str], ...] = (
    (Wish.NO_CONTACT, rf"{_NOT} {_WRITE} {_WHO}{_AGAIN}"),
    (Wish.NO_CONTACT, rf"stop {_WRITING} {_WHO}{_AGAIN}"),
    (Wish.NO_CONTACT, rf"(?:stop|no(?: more)?) (?:the |any )?{_THINGS} (?:to|for) {_WHO}{_AGAIN}"),
    (Wish.NO_CONTACT, rf"opt {_WHO} out"),
    (Wish.CONTACT, rf"(?:start )?{_WRITE} {_WHO} again"),
    (Wish.CONTACT, rf"(?:start )?{_THINGS} (?:to|for) {_WHO} again"),
    (Wish.CONTACT, rf"start (?:the )?{_THINGS} (?:to|for) {_WHO}"),
    (Wish.CONTACT, rf"opt {_WHO} in"),
    (Wish.NO_REMINDERS, rf"(?:stop|stop it|unsubscribe|mute|opt (?:me )?out|quit|{_THINGS} off)"),
    (
        Wish.NO_REMINDERS,
        rf"(?:stop|no(?: more)?) (?:the |all |any |these |sending )*{_THINGS}{_ME}",
    ),
    (
        Wish.NO_REMINDERS,
        rf"(?:stop {_WRITING} (?:me|us)|{_NOT} {_WRITE} (?:me|us){_AGAIN})",
    ),
    (Wish.REMINDERS, rf"(?:start|resume|unmute|subscribe|opt (?:me )?in|{_THINGS} on)"),
    (Wish.REMINDERS, rf"(?:start|resume) (?:the |all |sending )*{_THINGS}{_ME}(?: again)?"),
    (Wish.REMINDERS, rf"{_WRITE} (?:me|us) again"),
    # Spanish, with or without accents.
    (Wish.NO_REMINDERS, r"(?:parar|pare|pararlo|alto|basta|ya basta|cancelar)"),
    (
        Wish.NO_REMINDERS,
        r"(?:no (?:quiero )?(?:m[aá]s )?|sin (?:m[aá]s )?|parar (?:los )?)"
        r"(?:mensajes|recordatorios|avisos)",
    ),
    (Wish.NO_REMINDERS, r"no me (?:escriban?|manden? (?:m[aá]s )?mensajes)(?: m[aá]s)?"),
    (
        Wish.NO_CONTACT,
        rf"no (?:le )?(?:escriban?|manden? (?:m[aá]s )?mensajes|contacten?)(?: m[aá]s)? a {_WHO}",
    ),
    (Wish.REMINDERS, r"(?:empezar|reanudar|activar)(?: (?:los )?(?:recordatorios|mensajes))?"),
    (Wish.CONTACT, rf"(?:escriban?|contacten?) (?:otra vez|de nuevo) a {_WHO}"),
)
_PATTERNS = tuple(
    (wish, re.compile(rf"^\W*{_POLITE}{form}(?:,? (?:please|pls|thanks|thank you))?\W*$", re.I))
    for wish, form in _FORMS
)
#: A child of the writer's, not by name.
_MINE = re.compile(
    r"^(?:him|her|them|it|my (?:son|daughter|child|kid|boy|girl|player|pitcher)"
    r"|mi (?:hijo|hija|niñ[oa]))$",
    re.I,
)
#: What goes on about something else is no wish: "don't text Leo 40 pitches".
_NO_NAME = re.compile(r"\d|[,;:?]|\b(?:until|about|if|when|because|before|after)\b", re.I)


def contact_wish(text: str) -> ContactWish | None:
    """The wish that a whole message is, or none."""
    said = " ".join(text.replace("’", "'").split())
    for wish, pattern in _PATTERNS:
        found = pattern.match(said)
        if found is None:
            continue
        who = (found.groupdict().get("who") or "").strip()
        if _MINE.match(who):
            return ContactWish(wish)
        if who and (_NO_NAME.search(who) or len(who.split()) > 3):
            continue
        return ContactWish(wish, who)
    return None
