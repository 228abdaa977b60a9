from datetime import date, datetime

import pytest

from core.pain.status import ClinicianLimit, LimitKind
from core.reading.clearing import clearance_order

POSTED = datetime.fromisoformat("2026-05-22T18:00")
JUNE_1 = date(2026, 6, 1)


@pytest.mark.parametrize(
    ("text", "who", "clinician", "on"),
    [
        ("cleared Mateo by Dr. Reyes 5/20", "Mateo", "Dr. Reyes", date(2026, 5, 20)),
        ("Mateo was cleared by Dr Reyes on 5/20", "Mateo", "Dr Reyes", date(2026, 5, 20)),
        ("Cleared Mateo Cruz by Ana Reyes, today", "Mateo Cruz", "Ana Reyes", date(2026, 5, 22)),
        ("cleared by Dr. Reyes yesterday", "", "Dr. Reyes", date(2026, 5, 21)),
        ("cleared Mateo by Dr. Reyes May 20", "Mateo", "Dr. Reyes", date(2026, 5, 20)),
    ],
)
def test_name_clinician_and_day(text: str, who: str, clinician: str, on: date) -> None:
    order = clearance_order(text, POSTED)

    assert order is not None
    assert (order.who, order.clinician, order.on, order.problem) == (who, clinician, on, "")


@pytest.mark.parametrize(
    ("typed", "limits"),
    [
        ("no breaking balls until 6/1", [ClinicianLimit(LimitKind.NO_BREAKING, None, JUNE_1)]),
        ("no games until june 1", [ClinicianLimit(LimitKind.NO_PITCHING, None, JUNE_1)]),
        ("catch play only", [ClinicianLimit(LimitKind.ONLY_CATCH)]),
        (
            "30 throws at 60 ft",
            [ClinicianLimit(LimitKind.MOST_THROWS, 30), ClinicianLimit(LimitKind.MOST_FEET, 60)],
        ),
        ("no curves; max 40 pitches", [
            ClinicianLimit(LimitKind.NO_BREAKING), ClinicianLimit(LimitKind.MOST_THROWS, 40),
        ]),
        ("no restrictions", []),
    ],
)  # fmt: skip
def test_limits_are_kept_as_data(typed: str, limits: list[ClinicianLimit]) -> None:
    order = clearance_order(f"cleared Mateo by Dr. Reyes 5/20, {typed}", POSTED)

    assert order is not None
    assert (list(order.limits), order.problem) == (limits, "")
    assert [ClinicianLimit.from_json(one.as_json()) for one in limits] == limits


@pytest.mark.parametrize(
    ("text", "problem"),
    [
        ("cleared Mateo", "name"),
        ("cleared Mateo by his doctor 5/20", "name"),
        ("cleared Mateo by coach 5/20", "name"),
        ("cleared Mateo by Dr. Reyes", "day"),
        ("cleared Mateo by Dr. Reyes 5/30", "day"),
        ("cleared Mateo by Dr. Reyes tomorrow", "day"),
        ("cleared Mateo by Dr. Reyes 13/45", "day"),
        ("cleared Mateo by Dr. Reyes 5/20, go easy", "limit"),
        ("cleared Mateo by Dr. Reyes 5/20, no games until soon", "limit"),
    ],
)
def test_what_is_missing_or_cannot_be_read_is_named(text: str, problem: str) -> None:
    order = clearance_order(text, POSTED)

    assert order is not None
    assert order.problem == problem


@pytest.mark.parametrize(
    "text", ["elbow cleared up, 40p", "we cleared the bases 40p 3cb", "62p 11cb vs Summit", ""]
)
def test_other_lines_are_no_clearance(text: str) -> None:
    assert clearance_order(text, POSTED) is None
