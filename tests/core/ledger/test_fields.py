from datetime import date

from core.audience import Subject
from core.ledger.decide import Kept
from core.ledger.fields import snapshot
from core.ledger.who import Arm
from core.reading import Entry, Pain


def test_two_pains_of_one_site_are_two_reports() -> None:
    pains = (Pain("elbow", 3, when="during"), Pain("elbow", 6, when="next day"))
    entry, arm = Entry(pain=pains), Arm(1, "Mateo Cruz")

    kept = Kept(arm, "1/0", date(2026, 5, 2), None, entry, (), frozenset({Subject.ARM}))

    felt = snapshot(kept)["felt"]
    assert [one["severity"] for one in felt.values()] == [3, 6]


def test_a_report_of_pain_alone_is_no_outing() -> None:
    entry, arm = Entry(pain=(Pain("elbow"),)), Arm(1, "Mateo Cruz")

    kept = Kept(arm, "1/0", date(2026, 5, 2), None, entry, (), frozenset({Subject.ARM}))

    assert snapshot(kept)["outing"] is None
