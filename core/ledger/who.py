"""From a name as typed to the pitchers it can mean."""

import re
import unicodedata
from collections.abc import Sequence
from dataclasses import dataclass

from rapidfuzz import fuzz, process

from core.ledger.question import Question, QuestionCode

#: A near miss is offered in a question, never taken: 0 (nothing alike) to 100 (the same).
NEAR_MISS = 75


@dataclass(frozen=True, slots=True)
class Arm:
    """A pitcher as lines can name him."""

    pitcher_id: int
    name: str
    also_called: tuple[str, ...] = ()
    slack_id: str | None = None
    consented: bool = True


def plain(name: str) -> str:
    """A name without accents, invisible characters, case or a possessive, for comparing."""
    kept = (
        character
        for character in unicodedata.normalize("NFKD", name)
        if unicodedata.category(character) not in {"Mn", "Cf", "Cc"}
    )
    folded = " ".join("".join(kept).casefold().replace("’", "'").split())
    return folded.removesuffix("'s").strip(" .,:;!")


def names_of(arm: Arm) -> set[str]:
    """Every plain form under which a line may name this pitcher."""
    full = plain(arm.name)
    first, *rest = full.split() or [""]  # a name of signs alone is called by no line
    forms = {full, first, *map(plain, arm.also_called)} - {""}
    if rest:
        forms |= {rest[-1], f"{first} {rest[-1][0]}"}
    return forms


def find(typed: str, arms: Sequence[Arm]) -> list[Arm]:
    """The pitchers that a name or a mention as typed can mean: none, one or several."""
    if typed.startswith("<@"):
        slack_id = typed.strip("<@>").partition("|")[0]
        return [arm for arm in arms if arm.slack_id == slack_id]
    wanted = plain(typed)
    whole = [arm for arm in arms if wanted == plain(arm.name)]
    return whole or [arm for arm in arms if wanted in names_of(arm)]


def find_one(typed: str, arms: Sequence[Arm]) -> Arm | Question:
    """The one pitcher whom a name means, or the question that names those it may mean."""
    found = find(typed, arms)
    if len(found) == 1:
        return found[0]
    code = QuestionCode.TWO_PEOPLE if found else QuestionCode.UNKNOWN_NAME
    offered = found or near(typed, arms)
    return Question(
        code,
        about=typed,
        choices=tuple(arm.name for arm in offered),
        values=tuple(str(arm.pitcher_id) for arm in offered),
    )


def near(typed: str, arms: Sequence[Arm]) -> list[Arm]:
    """Pitchers whose name is almost the typed one, best first, at most three."""
    spoken = {form: arm for arm in arms for form in names_of(arm)}
    hits = process.extract(
        plain(typed), list(spoken), scorer=fuzz.ratio, score_cutoff=NEAR_MISS, limit=6
    )
    unique = {spoken[form].pitcher_id: spoken[form] for form, _score, _index in hits}
    return list(unique.values())[:3]


def is_named_in(words: str, arm: Arm) -> bool:
    """Whether free words name this pitcher under any form that a line may name him by."""
    spoken = re.split(r"[^\w']+", plain(words))
    said = f" {' '.join(plain(word) for word in spoken)} "
    return any(f" {form} " in said for form in names_of(arm))
