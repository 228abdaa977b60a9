"""What is said about a fault in a rule-book file: what is wrong and what to write instead."""

import difflib

from pydantic import BaseModel
from pydantic_core import ErrorDetails

from core.rulebooks.book import AgeRule, Band, Counting, RuleBook, Season, Superseded
from core.rulebooks.measure import Condition, Window
from core.rulebooks.rules import Advice, Cap, Off, Rest, Row

VERBS = ("cap", "rest", "off", "advice")


def _keys_of(model: type[BaseModel]) -> set[str]:
    return {field.alias or name for name, field in model.model_fields.items()}


_WHERE: tuple[tuple[type[BaseModel], str], ...] = (
    (RuleBook, "above the first [section]"),
    (Band, "in a [[band]]"),
    (AgeRule, "in [age]"),
    (Counting, "in [counting]"),
    (Season, "in [season]"),
    (Superseded, "in [superseded]"),
    (Window, "in a window"),
    (Condition, "in a condition (when)"),
    (Row, "in a row"),
    (Cap, 'in a rule with verb = "cap"'),
    (Rest, 'in a rule with verb = "rest"'),
    (Off, 'in a rule with verb = "off"'),
    (Advice, 'in a rule with verb = "advice"'),
)
_HOMES = {
    key: [where for other, where in _WHERE if key in _keys_of(other)]
    for model, _ in _WHERE
    for key in _keys_of(model)
}
_TEXTS = '["one", "other"]'
_SHAPES = {
    "age": "[13, 14]",
    "grade": "[9, 12]",
    "level": '["varsity"]',
    "when": '[{ unit = "days", window = { days = 1, back = 1 }, at_least = 1 }]',
    "rows": "[{ from = 1, to = 20, days = 0 }, { from = 21, days = 1 }]",
}
_INNINGS = "for innings type outs (innings times three) or innings-begun (a part counts as one)"


def says(error: ErrorDetails) -> str:
    """One fault in a sentence without a full stop."""
    key = str(error["loc"][-1]) if error["loc"] else "file"
    named = next((part for part in reversed(error["loc"]) if isinstance(part, str)), key)
    if error["type"] == "union_tag_invalid":
        return f"{error['ctx']['tag']} is no verb: use one of {', '.join(VERBS)}"
    if error["type"] == "missing" and named == key:
        return f"{key} is missing: add it"
    if error["type"] == "extra_forbidden":
        return f"{key} is not known here: {_instead(key, error['loc'])}"
    if error["type"] in ("missing", "tuple_type", "too_short", "too_long"):
        return f"{named}: write a list in brackets, such as {_SHAPES.get(named, _TEXTS)}"
    if error["type"] == "string_pattern_mismatch":
        return f"{named}: small letters, digits and dashes only, not {error['input']}"
    if error["type"] == "literal_error":
        hint = f"; {_INNINGS}" if key == "unit" and "inning" in str(error["input"]) else ""
        return f"{key}: {error['input']} is not known: use {error['ctx']['expected']}{hint}"
    if error["type"] == "union_tag_not_found":
        return f"the rule has no verb: add verb = one of {', '.join(VERBS)}"
    message = error["msg"].removeprefix("Value error, ")
    return f"{key}: {message}" if error["type"] != "value_error" else message


def _instead(key: str, loc: tuple[int | str, ...]) -> str:
    """What to do with a key that is not known where it stands."""
    homes = _HOMES.get(key, [])
    if len(loc) == 2 and key in RuleBook.model_fields:
        # Whatever is typed below a [section] belongs to it, which is easily forgotten.
        homes = ["above the first [section]"]
    if len(homes) == 1:
        return f"it stands {homes[0]}"
    near = [] if homes else difflib.get_close_matches(key, _HOMES, n=1)
    return f"perhaps {near[0]}" if near else "take it out"
