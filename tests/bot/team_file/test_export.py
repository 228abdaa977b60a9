"""The export is the same file back: loading it changes nothing, whatever the file held."""

from bot.team_file.export import export
from tests.support.team_files import LEE, NICO, TEAM, WORKSPACE, Club, csv_of, with_year

SEASON = {"kind": '"in season"', "from": "2026-03-01", "until": "2026-06-30"}
EVENT = {
    "name": '"Spring “Cup”"', "from": "2026-05-09", "until": "2026-05-10",
    "rule_books": '["little-league"]',
}  # fmt: skip


def test_an_export_loads_without_a_change_and_exports_the_same_again(club: Club) -> None:
    lee = LEE | {"consent date": "2026-02-01", "also called": "Lefty;L-Train"}
    toml = with_year(
        TEAM
        | {
            "age_group": '"12U"',
            "account_age": "17",
            "season_start": "2026-03-01",
            "assistants": '["@al"]',
        },
        seasons=[SEASON],
        events=[EVENT],
        rest_day={"hit": '"hitting is \\"fine\\""'},
    )
    club.load(toml, csv_of(NICO, lee))
    with club.store.reading() as session:
        first = export(session, WORKSPACE)

    report = club.load(first.toml, first.roster)

    assert report.changes_nothing, report.lines()
    with club.store.reading() as session:
        assert export(session, WORKSPACE) == first


def test_a_corrected_export_changes_just_that(club: Club) -> None:
    club.load(with_year(), csv_of(NICO, LEE))
    with club.store.reading() as session:
        found = export(session, WORKSPACE)

    report = club.load(found.toml, found.roster.replace("2012-06-01,R", "2012-06-01,L"))

    changed = [
        line for line in report.lines() if line.startswith(("Pitcher changed", "Pitcher added"))
    ]
    assert changed == ["Pitcher changed: Lee Hart"]
