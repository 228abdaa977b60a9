"""Reading rule-book files: a book is taken whole or refused whole, with the line to change."""

import difflib
import tomllib
from collections.abc import Iterable, Sequence
from functools import lru_cache
from importlib.resources import files
from pathlib import Path
from typing import Any

from pydantic import ValidationError

from core.rulebooks.book import RuleBook
from core.rulebooks.checks import Place, faults
from core.rulebooks.complaints import VERBS, says
from core.rulebooks.errors import RuleBookError
from core.rulebooks.places import line_of

_BOOKS = files("core.rulebooks") / "books"


@lru_cache(maxsize=1)
def builtin_ids() -> tuple[str, ...]:
    """The ids of the rule books that come with the project, in alphabetical order."""
    names = (file.name for file in _BOOKS.iterdir())
    return tuple(sorted(n.removesuffix(".toml") for n in names if n.endswith(".toml")))


def own_ids(folder: Path | None) -> tuple[str, ...]:
    """The ids of the rule-book files in a folder (no folder, none), in alphabetical order.

    They are named, not read: `load_books` says whether a file can be used.
    """
    return tuple(sorted(file.stem for file in folder.glob("*.toml"))) if folder else ()


def template() -> str:
    """A commented rule-book file to start from."""
    return (files("core.rulebooks") / "template.toml").read_text(encoding="utf-8")


def load_books(ids_or_paths: Sequence[str], folder: Path | None = None) -> tuple[RuleBook, ...]:
    """Load books in the order given, each once.

    A book is a built-in id, a path, or the name of a file inside `folder`.

    Raises RuleBookError when nothing is named, when a book is unknown, or when a file is refused.
    """
    if not ids_or_paths:
        raise RuleBookError(
            f"no rule book is named: give at least one of {', '.join(builtin_ids())} or a file"
        )
    return tuple(_load(name, folder) for name in dict.fromkeys(ids_or_paths))


def _load(name: str, folder: Path | None) -> RuleBook:
    if name in builtin_ids():
        return _builtin(name)
    for path in _candidates(name, folder):
        if path.is_file():
            return read_book(path)
    near = difflib.get_close_matches(name, builtin_ids(), n=1)
    hint = f"did you mean {near[0]}? " if near else ""
    raise RuleBookError(
        f"no rule book {name}: {hint}the built-in ones are {', '.join(builtin_ids())}; "
        "for another one give the path of its TOML file"
    )


def _candidates(name: str, folder: Path | None) -> Iterable[Path]:
    yield Path(name)
    if folder is not None:
        yield folder / name
        yield folder / f"{name}.toml"


@lru_cache(maxsize=64)
def _builtin(name: str) -> RuleBook:
    return parse_book((_BOOKS / f"{name}.toml").read_text(encoding="utf-8"), f"{name}.toml")


def read_book(path: Path) -> RuleBook:
    """Read one file. Raises RuleBookError when it cannot be read or is refused."""
    try:
        text = path.read_text(encoding="utf-8")
    except (OSError, UnicodeDecodeError) as error:
        raise RuleBookError(f"{path} cannot be read as UTF-8 text: {error}") from error
    return parse_book(text, str(path))


@lru_cache(maxsize=64)
def parse_book(text: str, name: str) -> RuleBook:
    """A validated book from TOML text; `name` stands in the messages.

    Raises RuleBookError that lists every fault with its line and what to change.
    """
    try:
        data = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise RuleBookError(
            f"{name} is no valid TOML: {error}: text stands in quotes, items of a list have commas"
        ) from error
    try:
        book = RuleBook.model_validate(data)
    except ValidationError as error:
        found = [(_place(e["loc"]), says(e)) for e in error.errors()]
        raise RuleBookError(_report(name, text, data, found)) from error
    unfit = [(fault.at, fault.says) for fault in faults(book)]
    if unfit:
        raise RuleBookError(_report(name, text, data, unfit))
    return book


def _place(loc: Place) -> Place:
    """The path without the tags that only the parser knows of."""
    kept = [p for n, p in enumerate(loc) if not (n == 2 and loc[0] == "rule" and p in VERBS)]
    return tuple(kept)


def _report(name: str, text: str, data: dict[str, Any], found: list[tuple[Place, str]]) -> str:
    lines = sorted({(line_of(text, at), _label(data, at) + says) for at, says in found})
    return f"{name} was not taken. " + " ".join(f"Line {n}: {says}." for n, says in lines)


def _label(data: dict[str, Any], at: Place) -> str:
    """Names the band or rule that the path leads into."""
    try:
        entry = data[str(at[0])][at[1]]
        return f"{at[0]} {entry['name']}: " if "name" in entry else ""
    except (IndexError, KeyError, TypeError):
        return ""
