"""A real workspace's teams, read from one TOML file and the CSV roster beside it.

`FORMAT.md` in this folder says what the two files hold.
"""

from bot.team_file.directory import Directory, ListedDirectory, SlackChannel, SlackPerson
from bot.team_file.load import load_team_file
from bot.team_file.problems import DirectoryError, Problem, TeamFileError, TeamLoadError
from bot.team_file.report import LoadReport
from bot.team_file.slack_directory import read_directory, signed_in_workspace

__all__ = [
    "Directory",
    "DirectoryError",
    "ListedDirectory",
    "LoadReport",
    "Problem",
    "SlackChannel",
    "SlackPerson",
    "TeamFileError",
    "TeamLoadError",
    "load_team_file",
    "read_directory",
    "signed_in_workspace",
]
