"""Rules across the files: ages, accounts, guardians, duplicates, books, channels, staff."""

import pytest

from core.audience import LOWEST_ACCOUNT_AGE
from tests.support.team_files import LEE, NICO, TEAM, Club, csv_of, toml_of


def test_a_pitcher_under_the_lowest_age_may_not_have_an_account(club: Club) -> None:
    said = club.problems(roster=csv_of(NICO | {"birth date": "2010-05-05"}))

    # Slack's Developer Policy: no use by children under 16. He turns 16 the day after.
    assert LOWEST_ACCOUNT_AGE == 16
    assert said == [
        "roster.csv, line 2: Nico Vale: is 15 and may not have an account before 16 (Slack's "
        "terms do not allow accounts under 16); empty the account cell, guardians and staff "
        "log for this pitcher."
    ]


def test_a_pitcher_may_have_an_account_from_the_birthday_on(club: Club) -> None:
    report = club.load(roster=csv_of(NICO | {"birth date": "2010-05-04"}))

    assert report.plan.pitchers[0].wanted.account is not None


def test_the_strictest_of_a_pitchers_teams_sets_the_account_age(club: Club) -> None:
    older = TEAM | {
        "key": '"b"',
        "name": '"Egrets"',
        "log_channel": '"log-2"',
        "account_age": "18",
    }

    said = club.problems(toml_of(TEAM, older), csv_of(NICO | {"teams": "a;b"}))

    assert len(said) == 1
    assert "is 17 and may not have an account before 18" in said[0]


@pytest.mark.parametrize("born", ["2003-05-04", "2021-05-05", "2027-01-01"])
def test_a_birth_date_outside_youth_ball_is_a_slip(club: Club, born: str) -> None:
    said = club.problems(roster=csv_of(LEE | {"birth date": born}))

    assert said == [
        f"roster.csv, line 2: Lee Hart: the birth date {born} makes an age outside 5 to 22 "
        "today; correct the year."
    ]


def test_a_minor_needs_a_guardian_and_an_adult_does_not(club: Club) -> None:
    alone = NICO | {"guardians": ""}

    minor = club.problems(roster=csv_of(alone))
    adult = club.load(roster=csv_of(alone | {"birth date": "2008-05-04"}))

    assert minor == [
        "roster.csv, line 2: Nico Vale: is under 18 and has no guardian; name at least one."
    ]
    assert adult.notes == ()


def test_the_same_pitcher_twice_is_refused(club: Club) -> None:
    said = club.problems(roster=csv_of(LEE, LEE | {"name": "lee hart"}))

    assert said == ["roster.csv, line 3: lee hart: stands on line 2 already; take one out."]


def test_one_account_for_two_pitchers_is_refused(club: Club) -> None:
    said = club.problems(roster=csv_of(NICO, NICO | {"name": "Pat Vale"}))

    assert len(said) == 2
    assert all("the account is that of another pitcher too" in line for line in said)


def test_a_minor_cannot_be_scorekeeper_or_anybodys_guardian(club: Club) -> None:
    keeper = club.problems(toml_of(TEAM | {"scorekeepers": '["@nico"]'}))
    guardian = club.problems(roster=csv_of(NICO, LEE | {"guardians": "@nico"}))

    expected = (
        "roster.csv, line 2: Nico Vale: is under 18 and cannot be staff, scorekeeper or "
        "guardian; name an adult."
    )
    assert keeper == [expected]
    assert guardian == [expected]


def test_an_unknown_team_key_or_rule_book_names_the_known_ones(club: Club) -> None:
    said = club.problems(
        toml_of(TEAM | {"rule_books": '["pitch-smrat"]'}), csv_of(LEE | {"teams": "z"})
    )

    assert said == [
        "roster.csv, line 2: Lee Hart: no team has the key “z”; the keys are a.",
        "team.toml, line 7: the rule book “pitch-smrat” is not known and no file beside this "
        "one; built in are little-league, pitch-smart.",
    ]


def test_a_rule_book_of_ones_own_is_read_before_it_is_taken(club: Club) -> None:
    (club.folder / "league.toml").write_text("id = 1\n", encoding="utf-8")

    said = club.problems(toml_of(TEAM | {"rule_books": '["league.toml"]'}))

    assert len(said) == 1
    assert said[0].startswith("team.toml, line 7: the rule book “league.toml” cannot be used: ")


def test_the_staff_channel_must_be_private_and_another_one(club: Club) -> None:
    is_open = club.problems(toml_of(TEAM | {"staff_channel": '"open-staff"'}))
    same = club.problems(toml_of(TEAM | {"log_channel": '"staff"'}))

    assert is_open == [
        "team.toml, line 6: #open-staff is open to everybody; staff answers hold pain: make "
        "it private."
    ]
    assert same == [
        "team.toml, line 5: is a staff channel; players write here, so it must be another channel."
    ]


def test_two_teams_may_not_log_in_one_channel(club: Club) -> None:
    said = club.problems(toml_of(TEAM, TEAM | {"key": '"b"', "name": '"Egrets"'}))

    assert len(said) == 2
    assert all("is the log channel of another team too" in line for line in said)


def test_somebody_whom_slack_does_not_know_or_knows_twice_is_named(club: Club) -> None:
    said = club.problems(
        toml_of(TEAM | {"coaches": '["@nobody"]', "log_channel": '"gone"'}),
        csv_of(LEE | {"guardians": "Sam Twice"}),
    )

    assert said == [
        "roster.csv, line 2: Lee Hart: guardian: 2 people in Slack answer to “Sam Twice”: "
        "write the member id (profile, ⋮, Copy member ID) of the one you mean.",
        "team.toml, line 5: no channel “gone” is in sight; correct the name, and invite the "
        "app to it first if it is private.",
        "team.toml, line 8: nobody in Slack is called “@nobody”; correct it or write the "
        "member id.",
    ]


def test_what_is_worth_knowing_is_noted_and_stops_nothing(club: Club) -> None:
    lee = LEE | {"consent date": "", "guardians": "Old Hart (no account)"}

    report = club.load(toml_of(TEAM | {"log_channel": '"log-2"'}), csv_of(lee))

    assert [str(note) for note in report.notes] == [
        "team.toml, line 5: the app is not in #log-2 yet; invite it there (/invite).",
        "roster.csv, line 2: Lee Hart: has no consent date: nothing is counted until a guardian "
        "agrees, in Slack or on paper.",
        "roster.csv, line 2: Lee Hart: no guardian has an account: notices for the family "
        "reach the staff alone.",
    ]
