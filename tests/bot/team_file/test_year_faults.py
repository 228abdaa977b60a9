"""Faults of a team's seasons, events and rest-day words, by line and in plain words.

The small club's own keys end on line 8, so that its first further table begins on line 9.
"""

import pytest

from tests.support.team_files import TEAM, Club, toml_of, with_year

SPRING = {"kind": '"in season"', "from": "2026-03-02", "until": "2026-07-31"}
CUP = {"name": '"Cup"', "from": "2026-05-30", "until": "2026-05-31", "rule_books": '["x"]'}


def test_every_fault_is_reported_where_it_stands(club: Club) -> None:
    summer = {"kind": '"summer"', "until": '"1 July"', "coach": '"@rae"'}
    cup = {"name": '""', "from": "2026-05-30", "until": "2026-05-31", "rule_books": "[]"}

    said = club.problems(
        with_year(seasons=[SPRING, summer], events=[cup], rest_day={"run": '"yes"', "hit": '" "'})
    )

    assert said == [
        "team.toml, line 13: from is missing; add it.",
        "team.toml, line 14: kind “summer” is not known; write build-up, in season, fall, off or "
        "school record only.",
        "team.toml, line 15: until “1 July” is no date that can be read one way only; write "
        "year-month-day, like 2012-06-01.",
        "team.toml, line 16: coach is not known here; take it out or correct its spelling.",
        "team.toml, line 18: name is empty; fill it in.",
        "team.toml, line 21: rule_books is empty; name at least one.",
        "team.toml, line 23: run is not known here; take it out or correct its spelling.",
        "team.toml, line 24: hit is empty; fill it in, or leave the key out.",
    ]


def test_seasons_of_a_team_share_no_day(club: Club) -> None:
    fall = {"kind": '"fall"', "from": "2026-07-31", "until": "2026-10-31"}

    said = club.problems(with_year(seasons=[SPRING, fall]))

    assert said == [
        "team.toml, line 15: the season shares days with the one on line 9 (in season, "
        "2026-03-02 to 2026-07-31); let each day be in one."
    ]


def test_seasons_may_follow_each_other_day_by_day_in_any_order(club: Club) -> None:
    fall = {"kind": '"fall"', "from": "2026-08-01", "until": "2026-10-31"}

    report = club.load(with_year(seasons=[fall, SPRING]))

    assert len(report.plan.teams[0].seasons) == 2


def test_seasons_of_two_teams_and_events_may_overlap(club: Club) -> None:
    egrets = TEAM | {"key": '"b"', "name": '"Egrets"', "log_channel": '"log-2"'}
    cup = CUP | {"rule_books": '["pitch-smart"]'}
    day = cup | {"name": '"League day"'}

    report = club.load(
        with_year(seasons=[SPRING], events=[cup, day]) + with_year(egrets, seasons=[SPRING])
    )

    assert [len(team.events) for team in report.plan.teams] == [2, 0]


@pytest.mark.parametrize(
    ("until", "says"),
    [
        ("2026-03-01", "until 2026-03-01 is before from 2026-03-02; correct one of them."),
        ("2062-07-31", "until 2062-07-31 is more than a year after from; correct the year."),
    ],
)
def test_the_last_day_follows_within_a_year(club: Club, until: str, says: str) -> None:
    season = club.problems(with_year(seasons=[SPRING | {"until": until}]))
    cup = CUP | {"from": "2026-03-02", "until": until, "rule_books": '["pitch-smart"]'}
    event = club.problems(with_year(events=[cup]))

    assert season == event == [f"team.toml, line 12: {says}"]


def test_an_unknown_rule_book_is_named_where_it_stands(club: Club) -> None:
    said = club.problems(
        with_year(seasons=[SPRING | {"rule_books": '["pitch-smrat"]'}], events=[CUP])
    )

    assert [line[: line.index(" is not known")] for line in said] == [
        "team.toml, line 13: the rule book “pitch-smrat”",
        "team.toml, line 18: the rule book “x”",
    ]


def test_a_season_may_not_take_every_book_away(club: Club) -> None:
    said = club.problems(with_year(seasons=[SPRING | {"rule_books": "[]"}]))

    assert said == ["team.toml, line 13: rule_books is empty; name at least one."]


def test_a_coachs_word_has_up_to_200_characters(club: Club) -> None:
    club.load(with_year(rest_day={"hit": f'"{"x" * 200}"'}))

    longer = club.problems(with_year(rest_day={"hit": f'"{"x" * 201}"'}))
    no_words = club.problems(with_year(rest_day={"hit": "true"}))

    assert longer == ["team.toml, line 10: hit is longer than 200 characters; shorten it."]
    assert no_words == [
        'team.toml, line 10: hit must be words between quotes, like "hitting is fine".'
    ]


@pytest.mark.parametrize(
    ("key", "value", "says"),
    [
        ("seasons", '"fall"', "must be tables; write [[teams.seasons]] above each."),
        ("events", '["Cup"]', "must be tables; write [[teams.events]] above each."),
        ("rest_day", '"hit"', "must be a table; write [teams.rest_day] above its keys."),
    ],
)
def test_what_is_no_table_is_refused(club: Club, key: str, value: str, says: str) -> None:
    said = club.problems(toml_of(TEAM | {key: value}))

    assert said == [f"team.toml, line 9: {key} {says}"]
