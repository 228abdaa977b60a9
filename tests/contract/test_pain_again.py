"""An edited message alerts nobody: pain that is new, worse or taken back again is told anew."""

from tests.support.club import Club


def test_pain_that_comes_back_after_it_was_taken_back_is_told_anew(club: Club) -> None:
    said = club.say("mateo", "elbow hurts 2/10")
    club.edit(said, "62p 11cb vs Summit")
    club.edit(said, "62p 11cb vs Summit, elbow hurts 8/10")

    first, taken_back, again = club.in_staff_channel()
    assert first.startswith("*Pain report.* Mateo Cruz: elbow 2/10")
    assert "was taken back" in taken_back
    assert again.startswith("*Pain report.* Mateo Cruz: elbow 8/10")
    assert "elbow 8/10" in club.heard("elena")[-1]


def test_pain_that_is_worse_than_first_said_is_told_anew(club: Club) -> None:
    said = club.say("mateo", "58p 11cb vs Summit, elbow pain 2/10")
    club.edit(said, "58p 11cb vs Summit, elbow pain 7/10")

    assert [text[:42] for text in club.in_staff_channel()] == [
        "*Pain report.* Mateo Cruz: elbow 2/10 (Sat",
        "*Pain report.* Mateo Cruz: elbow 7/10 (Sat",
    ]
    assert len(club.heard("elena")) == 2


def test_a_second_site_is_told_anew(club: Club) -> None:
    said = club.say("mateo", "58p 11cb vs Summit, elbow pain 2/10")
    club.edit(said, "58p 11cb vs Summit, elbow pain 2/10, shoulder pain 3/10")

    assert len(club.in_staff_channel()) == 2
    assert "shoulder 3/10" in club.in_staff_channel()[-1]


def test_an_edit_of_the_count_alone_alarms_nobody_again(club: Club) -> None:
    said = club.say("mateo", "58p 11cb vs Summit, elbow pain 4/10")
    club.edit(said, "61p 11cb vs Summit, elbow pain 4/10")

    assert len(club.in_staff_channel()) == 1
    assert len(club.heard("elena")) == 1


def test_taken_back_a_second_time_is_said_a_second_time(club: Club) -> None:
    said = club.say("mateo", "elbow hurts 5/10")
    for text in ("62p 11cb vs Summit", "elbow hurts 5/10", "62p 11cb vs Summit"):
        club.edit(said, text)

    told = [text for text in club.in_staff_channel() if text.startswith("The report about")]
    assert len(told) == 2
