"""What is said once for several: a kind, a list of numbers, all but one, and who it was not."""

from tests.support.reading import entries_of, reading_of


def test_a_kind_goes_on_over_days_told_alike() -> None:
    entries = entries_of("flat ground sun 30 mon 30 tues 25")

    assert [(one["kind"], one["pitches"]) for one in entries] == [
        ("catch", 30),
        ("catch", 30),
        ("catch", 25),
    ]
    assert entries_of("pen mon 25 tues 45p 3ip")[1]["kind"] == "game"


def test_numbers_after_a_kind_go_to_the_names_in_order() -> None:
    entries = entries_of("Will and Mark threw pens, 24 and 26", "coach")

    assert [(one["who"], one["pitches"]) for one in entries] == [("Will", 24), ("Mark", 26)]


def test_everyone_but_one() -> None:
    line = "catch play 40 throws for everyone but Grace, she is resting"

    assert entries_of(line, "coach") == [
        {"who": "everyone", "except": ["Grace"], "kind": "catch", "pitches": 40}
    ]


def test_who_it_was_not() -> None:
    line = "It was Levi who threw 44, not Beckett. Game, 3 innings."

    assert entries_of(line, "guardian") == [
        {"who": "Levi", "kind": "game", "pitches": 44, "outs": 9}
    ]


def test_a_kind_after_a_name_is_his_alone() -> None:
    entries = entries_of("Milo,pen,25p\nGus,game,48p", "coach")

    assert [one["kind"] for one in entries] == ["bullpen", "game"]


def test_cells_may_be_parted_by_commas() -> None:
    line = "Player,Kind,Pitches,Spins\nMilo,pen,25,6\nGus,game,48,10"

    assert [(one["kind"], one["breaking"]) for one in entries_of(line, "coach")] == [
        ("bullpen", 6),
        ("game", 10),
    ]


def test_how_all_feel_at_the_end() -> None:
    line = "Hunter threw 30, Chase 28. All flat ground, all pain free."

    assert [one["pain"] for one in entries_of(line, "coach")] == [[], []]
    assert [one["pain"] for one in entries_of("Leo 20, Max 25. all feel good", "coach")] == [[], []]


def test_a_day_in_a_clause_of_when() -> None:
    line = "No pitches since Saturday when he threw 61 against Willow Bend"

    assert entries_of(line, "guardian") == [{"kind": "game", "on": "2026-08-08", "pitches": 61}]


def test_several_who_counted_alike() -> None:
    line = "Her coach counted 54, she says 54, so I am going with 54. 4 innings"

    assert entries_of(line, "guardian") == [{"kind": "game", "pitches": 54, "outs": 12}]
    assert reading_of("coach has 54, I have 52. 3 innings", "guardian").unread


def test_a_mothers_count_of_another_day_stays() -> None:
    line = "Milo's mom says he threw 20 at home Sunday. Today he did 25 in the pen."

    assert [one["pitches"] for one in entries_of(line, "coach")] == [20, 25]
    assert "on" not in entries_of(line, "coach")[1]


def test_a_limit_of_some_weeks_counts_nothing() -> None:
    assert entries_of("flat ground 30 at 75 percent, no curves for two weeks") == [
        {"kind": "catch", "pitches": 30, "effort": 75}
    ]


def test_the_first_innings_of_a_game() -> None:
    assert entries_of("pitched the 1st 2 innings vs northside 28p")[0]["outs"] == 6
