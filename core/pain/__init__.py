"""Which reports of pain stop an arm for the day; it judges no injury.

Any pain of 1 or more, or pain without a number, in the throwing arm stops throwing for the
day and tells the adults: the American Academy of Pediatrics advises to stop pitching at
once on arm pain (Pediatrics 129(3):e842-e856, 2012). There is no published score below
which throwing is all right.
"""

from dataclasses import dataclass

#: Of 10: a report of pain from here on is a hold, soreness from here on is pain. A team may set
#: a lower one, never a higher.
PAIN_THRESHOLD = 3
#: Sites of the throwing arm. An "arm" with no part named counts, and so does a hand that is
#: numb or tingles: facts that a clinician asks for first. The names are those that the reader
#: of lines gives.
ARM_SITES = frozenset({"elbow", "shoulder", "forearm", "arm", "bicep", "tricep"})


@dataclass(frozen=True, slots=True)
class Report:
    """A report of pain: the site as a singular English word, the side where it was said."""

    site: str | None
    severity: int | None = None
    side: str | None = None
    sore: bool = False
    tired: bool = False


def stops_throwing(report: Report, throws: str, threshold: int = PAIN_THRESHOLD) -> bool:
    """Whether throwing stops for the day; `throws` is "L" or "R".

    A side that was not said counts as the throwing side. Soreness in so many words stops
    nothing unless it is at the elbow, or as bad as the team's `threshold` (of 10).
    """
    if not _in_throwing_arm(report, throws):
        return False
    bad = report.severity is not None and report.severity >= threshold
    return not report.sore or report.site == "elbow" or bad


def is_sore_arm(report: Report, throws: str) -> bool:
    """Whether it is soreness of the throwing arm: it stands until it is said to be gone, and a
    second report of it within 14 days is pain.
    """
    return report.sore and _in_throwing_arm(report, throws)


def lingers(report: Report, throws: str) -> bool:
    """Whether it is soreness of the throwing arm, or a tired arm: pain once it is still there on
    the second day.
    """
    return report.tired or is_sore_arm(report, throws)


def _in_throwing_arm(report: Report, throws: str) -> bool:
    if report.tired or report.severity == 0 or report.site not in ARM_SITES:
        return False
    return report.side is None or report.side[:1].upper() == throws.upper()
