import pytest

from core.alerts import THRESHOLDS, Key, Threshold, threshold
from core.reading.settings import ListOrder, SettingOrder, list_order, setting_order

IDS = [row.key for row in THRESHOLDS]


def test_every_key_has_exactly_one_row() -> None:
    assert sorted(IDS) == sorted(Key)


@pytest.mark.parametrize("row", THRESHOLDS, ids=IDS)
def test_a_row_has_a_default_in_its_range_and_one_sentence_of_meaning(row: Threshold) -> None:
    assert row.low < row.high
    assert row.default is None or row.low <= row.default <= row.high
    assert row.default is not None or row.starts_off
    assert row.meaning.endswith((".", ")."))


@pytest.mark.parametrize("row", THRESHOLDS, ids=IDS)
def test_both_ends_of_a_range_are_taken_and_nothing_beyond(row: Threshold) -> None:
    def value(typed: int) -> SettingOrder | None:
        return setting_order(f"set {row.key} {typed} for Leo")

    assert value(row.low) == SettingOrder(row.key, "Leo", row.low)
    assert value(row.high) == SettingOrder(row.key, "Leo", row.high)
    for typed in (row.low - 1, row.high + 1):
        refused = value(typed)
        assert refused is not None
        assert refused.unclear == str(typed)


def test_every_name_means_one_threshold() -> None:
    names = [name.casefold() for row in THRESHOLDS for name in (row.key, *row.also_called)]

    assert len(names) == len(set(names))


@pytest.mark.parametrize(
    ("text", "order"),
    [
        ("set mix 18% for Mateo", SettingOrder(Key.MIX, "Mateo", 18)),
        ("Set the mix to 18 percent", SettingOrder(Key.MIX, "", 18)),
        ("set mix for Mateo 18%", SettingOrder(Key.MIX, "Mateo", 18)),
        ("mix off for Leo", SettingOrder(Key.MIX, "Leo")),
        ("mix default for Leo", SettingOrder(Key.MIX, "Leo", is_default=True)),
        ("low mix on for Leo", SettingOrder(Key.LOW_MIX, "Leo", 8)),
        ("set week on", SettingOrder(Key.WEEK_PITCHES, unclear="on")),
        ("set pain off", SettingOrder(Key.PAIN, unclear="off")),
        ("set mix 18% or so", SettingOrder(Key.MIX, unclear="18% or so")),
        ("mix for Leo", None),
        ("pain no", None),
        ("tired no", None),
        ("mix 18", None),
        ("62p 11cb vs Summit", None),
    ],
)
def test_what_is_a_setting(text: str, order: SettingOrder | None) -> None:
    assert setting_order(text) == order


@pytest.mark.parametrize(
    ("text", "order"),
    [
        ("thresholds", ListOrder(alerts=False)),
        ("show the thresholds for Leo", ListOrder(alerts=False, who="Leo")),
        ("alerts", ListOrder(alerts=True)),
        ("thresholds are silly", None),
    ],
)
def test_what_is_a_list(text: str, order: ListOrder | None) -> None:
    assert list_order(text) == order


def test_the_pain_threshold_can_only_be_tightened() -> None:
    # Any arm pain of 1 or more stops for the day (American Academy of Pediatrics, Pediatrics
    # 129(3):e842-e856, 2012); when a hold follows is the staff's to tighten.
    row = threshold(Key.PAIN)

    assert row.default == row.high
    assert not row.may_be_off
