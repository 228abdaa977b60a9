"""No sentence that the program can say calls an arm well, diagnoses, or plays pain down."""

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.support.forbidden import FORBIDDEN, faults

ROOT = Path(__file__).parent.parent.parent.parent
#: Every place that holds words which people read.
SOURCES = sorted(
    path
    for folder in ("bot/wording", "bot/blocks", "core/alerts", "core/rest")
    for path in (ROOT / folder).rglob("*.py")
)


def said(path: Path) -> Iterator[str]:
    """The texts in a file, each f-string as one with a dash for what it fills in."""
    tree = ast.parse(path.read_text())
    documents = {
        id(node.body[0].value)
        for node in ast.walk(tree)
        if isinstance(node, ast.Module | ast.ClassDef | ast.FunctionDef)
        and node.body
        and isinstance(node.body[0], ast.Expr)
    }
    parts = {
        id(part) for node in ast.walk(tree) if isinstance(node, ast.JoinedStr)
        for part in node.values
    }  # fmt: skip
    for node in ast.walk(tree):
        if isinstance(node, ast.JoinedStr):
            yield "".join(str(p.value) if isinstance(p, ast.Constant) else "–" for p in node.values)
        elif (
            isinstance(node, ast.Constant)
            and isinstance(node.value, str)
            and id(node) not in documents | parts
        ):
            yield node.value


@pytest.mark.parametrize("path", SOURCES, ids=lambda path: str(path.relative_to(ROOT)))
def test_no_text_says_what_must_not_be_said(path: Path) -> None:
    assert [fault for text in said(path) for fault in faults(text)] == []


@pytest.mark.parametrize(
    "text",
    [
        "Mateo is cleared to throw.",
        "His arm is healthy.",
        "2 of 10 is okay to throw.",
        "That sounds like a strain.",
        "Ice it after the game.",
        "This week's ratio is a risk.",
        "Throw through it.",
    ],
)
def test_the_patterns_find_what_they_are_for(text: str) -> None:
    assert faults(text) != []


def test_saying_not_cleared_and_how_to_record_a_clearance_is_allowed() -> None:
    assert faults("Leo: not cleared. Write “cleared Leo by Dr. Reyes 5/20”.") == []
    assert len(FORBIDDEN) == 9
