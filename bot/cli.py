"""The command line: `spinkeeper run`, `spinkeeper manifest`, `spinkeeper team load`, …"""

import json
import logging
from collections.abc import Sequence
from pathlib import Path
from typing import Annotated, NoReturn

import typer
from rich.console import Console

from bot.clock import SystemClock
from bot.settings import Settings, SettingsError, load_settings

app = typer.Typer(no_args_is_help=True, add_completion=False, pretty_exceptions_enable=False)
team = typer.Typer(no_args_is_help=True, help="Teams and their rosters.")
calendar = typer.Typer(no_args_is_help=True, help="A team's games and practices.")
rulebook = typer.Typer(no_args_is_help=True, help="A league's limits, as a file.")
app.add_typer(team, name="team")
app.add_typer(calendar, name="calendar")
app.add_typer(rulebook, name="rulebook")

out, err = Console(soft_wrap=True), Console(stderr=True, soft_wrap=True)


@app.callback()
def spinkeeper() -> None:
    """A Slack assistant that keeps a youth pitching log."""


@app.command()
def run() -> None:
    """Start the bot: on Slack when tokens are set, else in a local workspace with a demo team."""
    _begin_logging()
    settings = _settings()
    if _transport(settings) == "local":
        from bot.local.terminal import run_local

        run_local(settings)
        return
    from bot.access import SlackAccessError
    from bot.run import run_on_slack
    from core.store import StoreError

    try:
        run_on_slack(settings)
    except (SlackAccessError, StoreError) as problem:
        _stop(str(problem))


@app.command()
def manifest(
    http: Annotated[
        str | None,
        typer.Option(metavar="URL", help="The bot's public https address; without, Socket Mode."),
    ] = None,
) -> None:
    """Print the app manifest (JSON) that Slack asks for when the app is made."""
    from bot.manifest import AddressError, make_manifest

    try:
        made = make_manifest(http)
    except AddressError as problem:
        _stop(str(problem))
    # As it is, not by rich: a terminal's width must not break a line of JSON.
    typer.echo(json.dumps(made, indent=2, ensure_ascii=False))


@team.command("load")
def team_load(
    file: Annotated[Path, typer.Argument(help="The TOML team file; its CSV roster stands beside.")],
    dry_run: Annotated[bool, typer.Option(help="Only show what would change.")] = False,
) -> None:
    """Bring the workspace's teams to what FILE and its roster say."""
    from bot.access import SlackAccessError
    from bot.team_file import DirectoryError, TeamFileError
    from bot.team_load import load_from_slack
    from core.rulebooks import RuleBookError
    from core.store import StoreError

    try:
        lines = load_from_slack(_settings(), file, SystemClock(), dry_run=dry_run)
    except (
        SlackAccessError, StoreError, TeamFileError, DirectoryError, RuleBookError
    ) as problem:  # fmt: skip
        _stop(str(problem))
    for line in lines:
        out.print(line, markup=False, highlight=False)


@team.command("export")
def team_export(
    file: Annotated[Path, typer.Argument(help="The TOML file to write; the roster goes beside.")],
) -> None:
    """Write the workspace's teams as FILE and its roster; loading them again changes nothing."""
    from bot.team_export import ExportError, export_files
    from core.store import StoreError

    try:
        written = export_files(_settings(), file)
    except (StoreError, ExportError) as problem:
        _stop(str(problem))
    for path in written:
        out.print(f"Written: {path}", markup=False, highlight=False)


@rulebook.command("new")
def rulebook_new() -> None:
    """Print a commented template of a rule-book file."""
    from core.rulebooks import template

    out.print(template(), markup=False, highlight=False, end="")


@rulebook.command("check")
def rulebook_check(file: Annotated[Path, typer.Argument(help="A rule-book file.")]) -> None:
    """Validate FILE and print its tables back in words."""
    from core.rulebooks import RuleBookError, describe, load_books

    try:
        (book,) = load_books([str(file)])
    except RuleBookError as problem:
        _stop(str(problem))
    out.print(describe(book), markup=False, highlight=False)


@calendar.command("import")
def calendar_import(
    team: Annotated[str, typer.Argument(help="The team's name, or a part of it.")],
    source: Annotated[str, typer.Argument(help="An iCalendar file, or its https address.")],
) -> None:
    """Bring TEAM's games and practices to what an iCalendar FILE or address says."""
    from bot.calendar_command import CommandError, import_calendar

    try:
        told = import_calendar(_settings(), team, source, SystemClock().now())
    except CommandError as problem:
        _stop(str(problem))
    out.print(told, markup=False, highlight=False)


@calendar.command("export")
def calendar_export(
    file: Annotated[Path, typer.Argument(help="The .ics file to write.")],
    team: Annotated[str, typer.Option(help="For the staff of this team: every arm.")] = "",
    person: Annotated[
        str, typer.Option("--for", metavar="NAME", help="For a guardian or a pitcher.")
    ] = "",
) -> None:
    """Write rest days, days of no throwing, games and practices as an iCalendar FILE."""
    from bot.calendar_command import CommandError, export_calendar

    try:
        told = export_calendar(_settings(), team, person, file, SystemClock().now())
    except CommandError as problem:
        _stop(str(problem))
    out.print(told, markup=False, highlight=False)


def main(arguments: Sequence[str] | None = None) -> None:
    """Run the command line; a wrong setting or file ends with one sentence and status 2."""
    app(args=list(arguments) if arguments is not None else None)


def _begin_logging() -> None:
    logging.basicConfig(level=logging.WARNING, format="%(levelname)s %(name)s: %(message)s")
    # The client's failures are logged where they are handled, by id.
    logging.getLogger("slack_sdk.web.base_client").setLevel(logging.CRITICAL)


def _settings() -> Settings:
    try:
        return load_settings()
    except SettingsError as problem:
        _stop(str(problem))


def _transport(settings: Settings) -> str:
    try:
        return settings.transport
    except SettingsError as problem:
        _stop(str(problem))


def _stop(sentence: str) -> NoReturn:
    err.print(sentence, markup=False, highlight=False)
    raise typer.Exit(2)


if __name__ == "__main__":
    main()
