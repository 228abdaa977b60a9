"""What can be wrong with a team file, by file and line, in words that say what to change."""

from collections.abc import Sequence
from dataclasses import dataclass


class TeamLoadError(Exception):
    """A team could not be loaded; nothing was written."""


class DirectoryError(TeamLoadError):
    """Slack did not give the list of people or channels."""


@dataclass(frozen=True, slots=True)
class Problem:
    """One thing to change (or, as a note, to know) and where it stands."""

    file: str
    line: int | None
    says: str

    def __str__(self) -> str:
        """The problem as one line of text."""
        where = self.file if self.line is None else f"{self.file}, line {self.line}"
        return f"{where}: {self.says}"


class TeamFileError(TeamLoadError):
    """Everything that is wrong with a team file, in the order of its lines."""

    def __init__(self, problems: Sequence[Problem]) -> None:
        self.problems = tuple(sorted(problems, key=lambda p: (p.file, p.line or 0)))
        super().__init__("\n".join(map(str, self.problems)))
