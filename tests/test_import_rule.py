"""The one direction of imports: bot imports core; core knows neither bot nor Slack."""

import ast
from collections.abc import Iterator
from pathlib import Path

ROOT = Path(__file__).parent.parent
FORBIDDEN = {"bot", "slack_bolt", "slack_sdk", "tests"}


def imported(tree: ast.AST) -> Iterator[str]:
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            yield from (name.name for name in node.names)
        elif isinstance(node, ast.ImportFrom) and node.module:
            yield node.module


def test_core_imports_neither_bot_nor_slack() -> None:
    wrong = [
        f"{path.relative_to(ROOT)}: {module}"
        for path in sorted((ROOT / "core").rglob("*.py"))
        for module in imported(ast.parse(path.read_text()))
        if module.split(".")[0] in FORBIDDEN
    ]

    assert wrong == []


def test_the_product_never_imports_its_tests() -> None:
    wrong = [
        f"{path.relative_to(ROOT)}: {module}"
        for path in sorted((ROOT / "bot").rglob("*.py"))
        for module in imported(ast.parse(path.read_text()))
        if module.split(".")[0] == "tests"
    ]

    assert wrong == []
