"""Signs that nobody sees: joiners, zero-width spaces, soft hyphens, marks of direction.

They come with pasted text, and must not cut a word or a number in two.
"""

import re

_INVISIBLE = re.compile("[\u00ad\u200b-\u200f\u202a-\u202e\u2060-\u2069\ufeff]")


def places_seen(text: str) -> list[int] | None:
    """The places of the signs that people see; none when they see all of them."""
    if text.isascii() or not _INVISIBLE.search(text):
        return None
    return [place for place, sign in enumerate(text) if not _INVISIBLE.match(sign)]
