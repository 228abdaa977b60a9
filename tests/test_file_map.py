"""DEVELOPERS.md's file map is the packages' own descriptions, no more and no less.

`python tests/test_file_map.py` writes the map into DEVELOPERS.md.
"""

import ast
from pathlib import Path

ROOT = Path(__file__).parent.parent
PAGE = ROOT / "DEVELOPERS.md"
BEGIN, END = "<!-- file map: begin -->\n", "<!-- file map: end -->"


def first_sentence(path: Path) -> str:
    description = ast.get_docstring(ast.parse(path.read_text())) or ""
    paragraph = " ".join(description.split("\n\n")[0].split())
    return paragraph.split(". ")[0].removesuffix(".")


def described() -> list[str]:
    """One line for each room and for each file that is a room of its own."""
    lines = []
    for top in ("core", "bot"):
        lines.append(f"- `{top}`: {first_sentence(ROOT / top / '__init__.py')}")
        for path in sorted((ROOT / top).iterdir()):
            room = path / "__init__.py" if path.is_dir() else path
            if room.suffix == ".py" and room.exists() and path.name != "__init__.py":
                lines.append(f"  - `{path.relative_to(ROOT)}`: {first_sentence(room)}")
    return lines


def shown() -> list[str]:
    page = PAGE.read_text()
    return page[page.index(BEGIN) + len(BEGIN) : page.index(END)].splitlines()


def test_the_file_map_is_what_the_files_say() -> None:
    assert shown() == described()


def test_every_file_says_what_it_is_for() -> None:
    silent = [
        str(path.relative_to(ROOT))
        for top in ("core", "bot")
        for path in (ROOT / top).rglob("*.py")
        if not first_sentence(path)
    ]

    assert silent == []


if __name__ == "__main__":
    whole = PAGE.read_text()
    head, tail = whole[: whole.index(BEGIN) + len(BEGIN)], whole[whole.index(END) :]
    PAGE.write_text(head + "\n".join(described()) + "\n" + tail)
