"""No sentence of ours promises, diagnoses or advises medicine: every string is searched.

The list is what a youth-sport health message must not say: no diagnosis, no "safe", no
clearance by a bot, no advice on medicine or ice (the American Academy of Pediatrics and the
interval-throwing programmes leave these to a clinician).
"""

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

WORDING = sorted((Path(__file__).parent.parent.parent / "bot" / "wording").glob("*.py"))
FORBIDDEN = re.compile(
    r"\b(safe to|is safe|you are safe|perfectly fine|you're fine|healthy|low[- ]risk|no risk|"
    r"risk-free|good to go|ready to throw|throw through|play through|tough it out|"
    r"probably (a|an|just)|sprain|tendinitis|strain|tear|ibuprofen|painkiller|ice it|"
    r"injection|diagnos\w+|you are cleared|is cleared)\b",
    re.IGNORECASE,
)


def sentences(path: Path) -> Iterator[str]:
    tree = ast.parse(path.read_text())
    docstrings = {
        ast.get_docstring(node, clean=False)
        for node in ast.walk(tree)
        if isinstance(node, ast.Module | ast.FunctionDef | ast.ClassDef)
    }
    texts = (node.value for node in ast.walk(tree) if isinstance(node, ast.Constant))
    yield from (text for text in texts if isinstance(text, str) and text not in docstrings)


@pytest.mark.parametrize("path", WORDING, ids=lambda path: path.stem)
def test_nothing_that_people_read_promises_or_diagnoses(path: Path) -> None:
    wrong = [text for text in sentences(path) if FORBIDDEN.search(text)]

    assert wrong == []


def test_the_search_finds_what_it_looks_for() -> None:
    assert FORBIDDEN.search("It is probably just a strain; you are safe to throw.")
