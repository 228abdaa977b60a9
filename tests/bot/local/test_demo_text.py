"""Slack's text on the screen, after "Formatting text for app surfaces" (docs.slack.dev)."""

import pytest

from bot.local.mrkdwn import as_text, emoji

NAMES = {"U0MATEO0001": "Mateo Rivas", "C017LOG0001": "17u-pitching-log"}


def shown(message: str) -> str:
    return as_text(message, lambda slack_id: NAMES.get(slack_id, slack_id)).plain


@pytest.mark.parametrize(
    ("message", "expected"),
    [
        ("*Game*, Tue 26 May", "Game, Tue 26 May"),
        ("R&amp;D &lt;b&gt; 3 &gt; 2", "R&D <b> 3 > 2"),
        ("a :baseball: under it", "a ⚾ under it"),
        ("at 4:15, 5:30", "at 4:15, 5:30"),
        ("hello <@U0MATEO0001>", "hello @Mateo Rivas"),
        ("in <#C017LOG0001|17u-pitching-log>", "in #17u-pitching-log"),
        ("<https://example.org|the rules>", "the rules (https://example.org)"),
        ("<!here> now", "@here now"),
        ("3 * 4 * 5", "3 * 4 * 5"),
        ("2*3*4", "2*3*4"),
        ("`*not bold*`", "*not bold*"),
        ("two\n*lines*", "two\nlines"),
    ],
)
def test_a_message_reads_as_in_slack(message: str, expected: str) -> None:
    assert shown(message) == expected


def test_a_star_makes_bold_and_only_what_stands_between() -> None:
    text = as_text("*Mateo* threw", str)

    assert [(text.plain[s.start : s.end], str(s.style)) for s in text.spans] == [("Mateo", "bold")]


def test_an_emoji_without_a_picture_keeps_its_name() -> None:
    assert emoji("no_such_thing") == ":no_such_thing:"
