from hypothesis import given
from hypothesis import strategies as st
from wcwidth import iter_graphemes

from bot.cut import cut, length, pieces

FAMILY = "👩‍👩‍👧‍👦"  # one character to people, seven to Python, eleven UTF-16 units


def test_what_fits_stays_as_it_is() -> None:
    assert cut("Leo", 3) == "Leo"
    assert cut(FAMILY, 11) == FAMILY


def test_a_cut_shows_that_it_is_one() -> None:
    assert cut("Leonard", 4) == "Leo…"


def test_no_character_is_cut_in_two() -> None:
    assert cut("e\u0301e\u0301", 3) == "e\u0301…"
    assert cut(FAMILY * 3, 24) == FAMILY * 2 + "…"


@given(st.text(), st.integers(min_value=12, max_value=40))
def test_every_piece_is_short_enough_and_nothing_is_lost(text: str, longest: int) -> None:
    cut_up = list(pieces(text, longest))

    assert all(length(piece) <= longest for piece in cut_up)
    assert length(cut(text, longest)) <= longest
    if all(length(sign) <= longest for sign in iter_graphemes(text)):
        assert "".join(cut_up) == text
