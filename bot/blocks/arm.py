"""Reports of pain, soreness and tiredness: for the author, the staff and the guardians."""

from collections.abc import Container, Sequence
from dataclasses import dataclass
from datetime import date

from sqlmodel import Session, col, select

from bot.blocks.buttons import sore_gone
from bot.blocks.message import Button, Part
from bot.forms.form import opens
from bot.wording import buttons as label
from bot.wording import holds
from bot.wording import pain as say
from bot.wording.words import safe, sentences
from core.ledger.holds import earlier_at_site, hold_of_line, reports_near, sore_arms, stopping
from core.ledger.notices import TOLD_FEELINGS
from core.ledger.people import guardians_of, second_adult, teams_of
from core.ledger.unreached import guardians_unreached
from core.model import Feeling, Line, PainReport, Person, Pitcher, key
from core.pain.holds import HoldReason
from core.reading.urgent import Urgency, urgency


@dataclass(frozen=True, slots=True)
class ArmReport:
    """What one line says of one pitcher's arm."""

    pitcher: Pitcher
    line_id: int
    sites: tuple[str, ...]
    on: date
    stops: bool
    #: Pain, not only soreness or a tired arm: the guardians hear of it too.
    is_pain: bool
    #: Soreness of the throwing arm.
    is_sore: bool
    withdrawn: bool
    #: Why the line put the arm on hold, and how urgent its words are.
    hold: HoldReason | None
    urgency: Urgency | None
    #: Other lines about the same site in the twelve months before.
    earlier: int
    #: The sites as the author is thanked for them: "arm pain" where no number was given.
    thanked_for: tuple[str, ...]

    @property
    def first(self) -> str:
        """What is said before anything else."""
        return holds.FIRST[self.urgency]

    def for_author(self, told: Sequence[str], *, own: bool) -> str:
        """The private answer to the author; `own` where it is the author's own arm."""
        of = "" if own else self.pitcher.name
        if not self.stops:
            return say.noted_for_author(self.thanked_for, told, of)
        hold = holds.HOLD_FOR_AUTHOR if self.hold else ""
        return say.to_author(self.thanked_for, told, self.first, hold, of)


def arm_report(
    session: Session, line: Line, pitcher: Pitcher, reports: Sequence[PainReport]
) -> ArmReport | None:
    """What these reports of a line say, or none when they only say that all is well."""
    told = [report for report in reports if report.feeling in TOLD_FEELINGS]
    if not told:
        return None
    standing = [report for report in told if report.withdrawn_at is None] or told
    hold = hold_of_line(session, line, key(pitcher))
    near = reports_near(session, key(pitcher), standing[0].on)
    stop = stopping(session, near, pitcher)
    return ArmReport(
        pitcher,
        standing[0].line_id,
        tuple(_site(report, goes_on=_goes_on(report, stop)) for report in standing),
        standing[0].on,
        hold is not None or any(key(report) in stop for report in standing),
        any(report.feeling == Feeling.PAIN or key(report) in stop for report in standing),
        bool(sore_arms(standing, pitcher)),
        all(report.withdrawn_at is not None for report in told),
        hold,
        urgency(line.text) if hold is HoldReason.BE_SEEN else None,
        max(earlier_at_site(session, report) for report in standing),
        tuple(
            _site(report, goes_on=_goes_on(report, stop), without_number=say.PAIN)
            for report in standing
        ),
    )


def _goes_on(report: PainReport, stop: Container[int]) -> bool:
    """Whether it stops the arm for being there on the second day still."""
    bad = report.site == "elbow" or bool(report.severity)
    return key(report) in stop and report.feeling != Feeling.PAIN and not bad


def _site(report: PainReport, *, goes_on: bool, without_number: str = "") -> str:
    where = say.TIRED_ARM
    if report.feeling != Feeling.TIRED:
        added = without_number if report.feeling == Feeling.PAIN else ""
        where = say.site(
            report.site, report.severity, report.side, report.when, without_number=added
        )
    if report.feeling == Feeling.SORE:
        where = say.sore(where)
    return say.second_day(where) if goes_on else where


def line_reports(session: Session, line: Line) -> list[ArmReport]:
    """The reports of a line, pitcher by pitcher, withdrawn ones included."""
    rows = session.exec(
        select(PainReport).where(PainReport.line_id == key(line)).order_by(col(PainReport.id))
    ).all()
    by_pitcher: dict[int, list[PainReport]] = {}
    for row in rows:
        by_pitcher.setdefault(row.pitcher_id, []).append(row)
    found = (
        arm_report(session, line, session.get_one(Pitcher, pitcher_id), reports)
        for pitcher_id, reports in by_pitcher.items()
    )
    return [report for report in found if report is not None]


def adults_told(session: Session, report: ArmReport, viewer: Person | None) -> list[str]:
    """The adults who hear of a report, as the author reads it; the author himself left out."""
    told = [say.THE_COACHES]
    if report.is_pain:
        missed = {key(person) for person in guardians_unreached(session, report.line_id)}
        missed |= {key(viewer)} if viewer is not None else set()
        told += [
            safe(person.name)
            for person in guardians_of(session, {key(report.pitcher)})
            if person.slack_id is not None and key(person) not in missed
        ]
    return told


def staff_parts(session: Session, line: Line, author: str, team_pitchers: set[int]) -> list[Part]:
    """The notice in the staff channel, with what the staff must do for the families."""
    return [
        Part(_staff_report(session, report, author, line.author_id), _for_staff(report))
        for report in line_reports(session, line)
        if key(report.pitcher) in team_pitchers
    ]


def copy_parts(session: Session, line: Line, author: str, team_pitchers: set[int]) -> list[Part]:
    """The staff's notice for a second adult: of those of whom no guardian is on file."""
    alone = {one for one in team_pitchers if not guardians_of(session, {one})}
    found = staff_parts(session, line, author, alone)
    return [Part(say.COPIED), *found] if found else []


def _for_staff(report: ArmReport) -> tuple[Button, ...]:
    carried = {"line": report.line_id, "pitcher": key(report.pitcher)}
    gone = sore_gone(report.pitcher) if report.is_sore and not report.stops else ()
    return (*_buttons(report), *gone, Button(label.TO_FAMILY, opens("family"), carried))


def _buttons(report: ArmReport) -> tuple[Button, ...]:
    """A hold ends by a clinician's clearance alone, so that is what there is to press."""
    if not report.hold:
        return ()
    return (Button(label.CLEARANCE, opens("clearance"), {"pitcher": key(report.pitcher)}),)


def _staff_report(session: Session, report: ArmReport, author: str, author_id: int | None) -> str:
    guardians = guardians_of(session, {key(report.pitcher)})
    unreached = [key(person) for person in guardians_unreached(session, report.line_id)]
    missing = [person.name for person in guardians if person.slack_id is None]
    second = "" if guardians or not report.is_pain else _second(session, report, author_id)
    told = [
        person.name
        for person in guardians
        if person.slack_id is not None and key(person) not in {author_id, *unreached}
    ]
    return sentences(
        [
            report.first,
            say.to_staff(report.pitcher.name, report.sites, report.on, author, report.stops),
            holds.hold_for_staff(report.pitcher.name, report.hold) if report.hold else "",
            say.seen_before(report.earlier),
            say.families_told(told) if report.is_pain else "",
            _pass_on(report, missing, bool(guardians)) if report.is_pain else "",
            second,
            say.WITHDRAWN_MARK if report.withdrawn else "",
            "" if report.is_pain and missing else say.NOT_A_DOCTOR,  # the words to pass on say it
        ]
    )


def _second(session: Session, report: ArmReport, author_id: int | None) -> str:
    """Who of the staff has a copy, where no guardian is on file."""
    teams = teams_of(session, {key(report.pitcher)})
    people = [second_adult(session, team, author_id) for team in teams]
    return say.copied_to([safe(one.name) for one in people if one is not None])


def _pass_on(report: ArmReport, missing: Sequence[str], has_guardian: bool) -> str:
    """What the staff must do for guardians without an account, with the words to pass on."""
    asked = say.pass_on(missing, has_guardian)
    words = [_for_guardian(report, name).splitlines() for name in missing]
    return sentences([asked, *(f"> {line}" for lines in words for line in lines)])


def unreached_text(session: Session, line: Line, team_pitchers: set[int]) -> str:
    """Said to the staff of guardians who did not get their notice."""
    names = [
        (person.name, report.pitcher.name)
        for report in line_reports(session, line)
        if key(report.pitcher) in team_pitchers
        for person in guardians_unreached(session, key(line))
        if _is_guardian(session, person, report)
    ]
    return "\n".join(say.unreached(guardian, pitcher) for guardian, pitcher in names)


def guardian_parts(session: Session, line: Line, guardian: Person) -> list[Part]:
    """The notice to one guardian: own children only."""
    reports = [
        report
        for report in line_reports(session, line)
        if report.is_pain and _is_guardian(session, guardian, report)
    ]
    return [
        Part(
            sentences(
                [
                    report.first,
                    _for_guardian(report, guardian.name, report.first),
                    holds.hold_for_family(report.pitcher.name) if report.hold else "",
                    say.WITHDRAWN_MARK if report.withdrawn else "",
                ]
            ),
            _buttons(report),
        )
        for report in reports
    ]


def _for_guardian(report: ArmReport, guardian: str, first: str = "") -> str:
    name = report.pitcher.name
    return say.to_guardian(guardian, name, report.sites, report.on, report.stops, first)


def withdrawn_text(
    session: Session, line: Line, viewer: Person | None, team_pitchers: Container[int]
) -> str:
    """The words that follow a report that was taken back, for a guardian or a team's staff."""
    reports = [report for report in line_reports(session, line) if report.withdrawn]
    if viewer is not None:
        reports = [report for report in reports if _is_guardian(session, viewer, report)]
    else:
        reports = [report for report in reports if key(report.pitcher) in team_pitchers]
    return "\n".join(
        say.withdrawn(report.pitcher.name, report.sites, report.on) for report in reports
    )


def _is_guardian(session: Session, person: Person, report: ArmReport) -> bool:
    guardians = guardians_of(session, {key(report.pitcher)})
    return any(key(one) == key(person) for one in guardians)
