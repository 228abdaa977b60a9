"""The words in which a rule book is told back."""

import pytest

from core.rulebooks import Cap, describe, parse_book, template
from core.rulebooks.measure import Window
from core.rulebooks.words import rule_words, window_words

HEAD = """\
My League (my-league), 2026 rules, page 12
Published by Whoever writes the rules: https://league.example/rules
Valid from 2026-01-01 until 2026-12-31. typed from the league's own page on 2026-02-01
Counts: game, scrimmage, showcase, tryout. A day begins at midnight.
Age: on the day itself.

12 and under (age 9 to 12)
  [regular] daily-max: at most 70 pitches in a day (a batter begun may be finished). \
Source: 2026 rules, 4.1.
"""
TAIL = """\

13 and up (age 13 to 15)
  daily-max: at most 90 pitches in a day (a batter begun may be finished). Source: 2026 rules, 4.1.
  rest: rest by pitches in a day: 1–25: 0 days, 26–40: 1 day, 41–60: 2 days, 61+: 4 days. \
Source: 2026 rules, 4.2, table.
  consecutive-days: at most 2 days pitched in any 3 days in a row. Source: 2026 rules, 4.3.
  week-max: at most 30 outs in the 7 days from Monday. Source: 2026 rules, 4.4.
  caught-before: no pitching in a day after 4 or more innings caught that day. \
Source: 2026 rules, 4.6.
  months-off: 4 months off competition in twelve months (reported, not enforced). \
Source: 2026 rules, preface.
Not in this file: what the rules say and this file cannot, one sentence each
"""


def test_the_template_is_told_back() -> None:
    told = describe(parse_book(template(), "template.toml"))

    assert told.startswith(HEAD)
    assert told.endswith(TAIL)


@pytest.mark.parametrize(
    ("window", "words"),
    [
        ("game", "in a game"),
        ("other-games", "in another game of the day"),
        ("season", "in the season"),
        ({"days": 7}, "in any 7 days in a row"),
        ({"days": 1, "back": 1}, "on the day before"),
        ({"days": 2, "back": 1}, "in the 2 days up to the day before"),
        ({"days": 1, "back": 2}, "on the day 2 days before"),
        ({"days": 3, "from": "friday"}, "in the 3 days from Friday"),
        ({"months": 12}, "in any 12 months"),
        (
            {"same": "tournament", "days": 4},
            "in the tournament (or in 4 days where it is not named)",
        ),
        ({"last": "day", "within": 4}, "on the last day pitched, up to 4 days back"),
        ({"last": "outing", "within": 4}, "in the last outing, up to 4 days back"),
    ],
)
def test_a_window_in_words(window: object, words: str) -> None:
    assert window_words(Window.model_validate(window)) == words


@pytest.mark.parametrize(
    ("keys", "words"),
    [
        ({"unit": "games", "max": 1}, "at most 1 game as pitcher in a day"),
        (
            {"unit": "innings-begun", "max": 3},
            "at most 3 innings begun in a day (a part counts as a whole one)",
        ),
        ({"max": 40, "kinds": ["bullpen"]}, "at most 40 pitches in a day (bullpen only)"),
        (
            {"max": 0, "when": [{"unit": "pitches", "window": "other-games", "at_least": 31}]},
            "no pitching in a day after 31 or more pitches in another game of the day",
        ),
        (
            {
                "unit": "caught-innings",
                "max": 0,
                "when": [
                    {"unit": "caught-innings", "window": "day", "at_least": 1},
                    {"unit": "pitches", "window": "day", "at_least": 21},
                ],
            },
            "no catching in a day after catching that day and 21 or more pitches that day",
        ),
        (
            {
                "max": 30,
                "when": [{"unit": "days", "window": {"days": 1, "back": 1}, "at_least": 1}],
            },
            "at most 30 pitches in a day after pitching on the day before",
        ),
        (
            {"unit": "outs", "window": {"months": 12}, "max": 180, "uncounted": "skip"},
            "at most 180 outs in any 12 months (outings without a count left out)",
        ),
    ],
)
def test_a_cap_in_words(keys: dict[str, object], words: str) -> None:
    cap = {"verb": "cap", "name": "x", "cite": "x", "unit": "pitches", "window": "day", **keys}

    assert rule_words(Cap.model_validate(cap)) == words


@pytest.mark.parametrize(
    ("old", "new", "line"),
    [
        ('"midnight"', '"game"', "A game counts for the day on which it began."),
        ('"midnight"', '"04:00"', "A day begins at 04:00."),
        ("# intentional_walk = 4", "intentional_walk = 1", "without pitches counts 1 pitch."),
        ('on = "birthday"', 'on = "08-31"\nyear = -1', "Age: on 08-31 of the year before."),
        (
            'on = "birthday"',
            'on = "08-31"\nseason_from = "09-01"',
            "Age: on 08-31; from 09-01 a date belongs to the next year.",
        ),
    ],
)
def test_the_way_of_counting_in_words(old: str, new: str, line: str) -> None:
    assert line in describe(parse_book(template().replace(old, new), "template.toml"))
