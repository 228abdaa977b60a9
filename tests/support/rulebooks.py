"""A club's own rule-book folder, with one invented league in it."""

from pathlib import Path

from core.rulebooks import template


def own_books(where: Path) -> Path:
    """A folder with the book `hill-league`, made from the template that the program prints."""
    folder = where / "books"
    folder.mkdir()
    text = template()
    title = next(line for line in text.splitlines() if line.startswith("title ="))
    id_ = next(line for line in text.splitlines() if line.startswith("id ="))
    text = text.replace(title, 'title = "Hill League"').replace(id_, 'id = "hill-league"')
    (folder / "hill-league.toml").write_text(text, encoding="utf-8")
    return folder
