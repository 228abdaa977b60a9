"""FORMAT.md, the template and the code say the same."""

import re
from importlib.resources import files
from typing import get_args

import pytest

from core.rulebooks import Advice, Band, Cap, Off, Rest, RuleBook, parse_book, template
from core.rulebooks.book import AgeRule, Counting, Season
from core.rulebooks.measure import Unit

PAGE = (files("core.rulebooks") / "FORMAT.md").read_text(encoding="utf-8")


EVERYONE = """
[[rule]]
verb = "cap"
name = "x"
unit = "days"
window = "day"
max = 1
cite = "x"
"""


def keys(
    *models: type[Cap | Rest | Off | Advice | Band | RuleBook | AgeRule | Counting | Season],
) -> set[str]:
    return {field.alias or name for model in models for name, field in model.model_fields.items()}


def test_the_template_is_a_valid_book() -> None:
    assert parse_book(template(), "template.toml").id == "my-league"


def test_every_key_is_explained() -> None:
    known = keys(RuleBook, AgeRule, Counting, Season, Band, Cap, Rest, Off, Advice)

    assert {key for key in known if not re.search(rf"[`\[ ]{key}[`\] =]", PAGE)} == set()


def test_every_unit_is_explained() -> None:
    assert {unit for unit in get_args(Unit) if f"`{unit}`" not in PAGE} == set()


def test_every_rule_printed_on_the_page_loads() -> None:
    rules = re.findall(r"```toml\n(\[\[rule\]\].*?)```", PAGE, re.DOTALL)
    head = (
        template()
        .split("[[rule]]")[0]
        .replace("12 and under", "7–12")
        .replace("13 and up", "13–14")
    )

    for rule in rules:
        parse_book(head + rule + EVERYONE, "page")
    assert len(rules) == 2


@pytest.mark.parametrize(
    "row", [r for r in PAGE.splitlines() if r.startswith("| ") and ", `" in r and "cap, " in r]
)
def test_every_recipe_uses_known_units(row: str) -> None:
    units = re.findall(r"cap, `([a-z-]+)`", row)

    assert set(units) <= set(get_args(Unit))
