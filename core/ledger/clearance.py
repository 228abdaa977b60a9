"""Where a pitcher's arm stands on a day: pain on record, holds, a clinician's limits."""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime
from typing import Any, NamedTuple

from sqlmodel import Session, col, select

from core.ledger.answers import GONE, Answer, Answers
from core.ledger.holds import (
    STOPPING,
    as_cleared,
    as_held,
    clearances_by_pitcher,
    holds_by_pitcher,
    sore_arms,
    stopping,
)
from core.ledger.people import guardians_of
from core.ledger.question import Question, QuestionCode
from core.model import Clearance, Feeling, Hold, Line, PainReport, Pitcher, key
from core.pain.clearance import Said, has_lapsed, not_cleared_or_sore_since, not_cleared_since
from core.pain.holds import end_of
from core.pain.status import ArmStatus, ClinicianLimit
from core.store.together import together


class _SaidAt(NamedTuple):
    """A statement with its place among the others."""

    at: datetime
    rank: int
    number: int
    said: Said

    def order(self) -> tuple[datetime, int, int]:
        return self.at, self.rank, self.number


#: From this age (years) a pitcher speaks for himself.
ADULT = 18


def arm_status(session: Session, pitcher: Pitcher, on: date) -> ArmStatus:
    """What stands against throwing on a day, as `arm_records` says."""
    return arm_records(session, [pitcher])[key(pitcher)].status(on)


@dataclass(frozen=True, slots=True)
class ArmRecord:
    """What is on record of one arm's pain: since when a report stands, and the clearances."""

    since: date | None
    held: bool
    newest: Clearance | None
    #: Whether what stands is soreness and nothing worse, and the day of the last word of it.
    sore: bool = False
    last_word: date | None = None

    def has_lapsed(self, on: date) -> bool:
        """Whether it was soreness alone, and so long ago that it no longer stands."""
        return self.sore and self.last_word is not None and has_lapsed(self.last_word, on)

    def status(self, on: date) -> ArmStatus:
        """What stands against throwing on a day."""
        lapsed = self.has_lapsed(on)
        return ArmStatus(
            since=None if lapsed else self.since,
            held=self.held,
            limits=_limits(self.newest, on),
            clinician=self.newest.clinician if self.newest else "",
            cleared_on=self.newest.on if self.newest else None,
            sore=self.sore and not lapsed,
        )


def arm_records(session: Session, pitchers: Sequence[Pitcher]) -> dict[int, ArmRecord]:
    """What is on record of each of these arms.

    A report counts whatever became of its line. A hold ends only by a clinician's clearance;
    other pain also where a guardian, or a pitcher who is an adult himself, has confirmed in so
    many words that it is gone: "no pain" beside the counts of a day ends nothing.
    """
    ids = [key(one) for one in pitchers]
    mine = col(PainReport.pitcher_id).in_(ids)
    hurt = mine & col(PainReport.feeling).in_(STOPPING)
    # That nothing hurts says something only of an arm that did.
    arms_that_hurt = select(PainReport.pitcher_id).where(hurt)
    spoken = hurt | (
        (col(PainReport.feeling) == Feeling.NO_PAIN)
        & col(PainReport.pitcher_id).in_(arms_that_hurt)
    )
    holds, clearances, reports, lines = together(
        session,
        (Hold, col(Hold.pitcher_id).in_(ids)),
        (Clearance, col(Clearance.pitcher_id).in_(ids) & col(Clearance.withdrawn_at).is_(None)),
        (PainReport, spoken),
        (Line, col(Line.id).in_(select(PainReport.line_id).where(spoken))),
    )
    by_id = {key(one): one for one in lines}
    said = _said(session, reports, by_id, {key(one): one for one in pitchers})
    held, cleared = holds_by_pitcher(holds), clearances_by_pitcher(clearances)
    words = _last_words(reports)
    return {one: _record(held[one], cleared[one], said[one], words.get(one)) for one in ids}


def _last_words(reports: Iterable[PainReport]) -> dict[int, date]:
    """The day on which each arm was last said to be sore, "not gone yet" included."""
    found: dict[int, date] = {}
    for one in reports:
        if one.feeling == Feeling.SORE:
            last = max(one.on, one.not_gone_on or one.on)
            found[one.pitcher_id] = max(last, found.get(one.pitcher_id, last))
    return found


def _record(
    holds: list[Hold],
    clearances: list[Clearance],
    said: list[_SaidAt],
    last_word: date | None,
) -> ArmRecord:
    ended = [as_cleared(row) for row in clearances]
    held = [hold.on for hold in holds if end_of(as_held(hold), ended) is None]
    # Of one moment a clearance counts last.
    cleared = (_SaidAt(row.said_at, 1, 0, Said(row.on, pain_free=True)) for row in clearances)
    told = sorted([*said, *cleared], key=_SaidAt.order)
    not_cleared = not_cleared_since(one.said for one in told)
    standing = [*held, *([not_cleared] if not_cleared else [])]
    newest = clearances[-1] if clearances else None
    if not standing:
        sore = not_cleared_or_sore_since(one.said for one in told)
        return ArmRecord(sore, False, newest, sore is not None, last_word)
    return ArmRecord(min(standing), bool(held), newest)


def _limits(newest: Clearance | None, on: date) -> tuple[ClinicianLimit, ...]:
    """The limits of the newest clearance that are in force on a day."""
    stored = newest.limits if newest is not None else []
    limits = map(ClinicianLimit.from_json, stored)
    return tuple(one for one in limits if one.until is None or one.until >= on)


def _said(
    session: Session,
    reports: Iterable[PainReport],
    lines: Mapping[int, Line],
    pitchers: Mapping[int, Pitcher],
) -> dict[int, list[_SaidAt]]:
    """What was said of each arm that may stop it, or say that the pain is gone."""
    by_pitcher: dict[int, list[PainReport]] = defaultdict(list)
    for report in reports:
        by_pitcher[report.pitcher_id].append(report)
    found: dict[int, list[_SaidAt]] = defaultdict(list)
    for pitcher_id, rows in by_pitcher.items():
        stop = stopping(session, rows, pitchers[pitcher_id])
        sore = sore_arms(rows, pitchers[pitcher_id])
        for report in rows:
            line = lines[report.line_id]
            if report.feeling in STOPPING:
                number = key(report)
                said = Said(report.on, stops=number in stop, sore=number in sore)
            elif report.withdrawn_at is None and _confirmed(line.answers, pitcher_id):
                said = Said(report.on, pain_free=True)
            else:
                continue
            found[pitcher_id].append(_SaidAt(line.posted_at, 0, key(report), said))
    return found


def _confirmed(stored: list[dict[str, Any]], pitcher_id: int) -> bool:
    """Whether it was answered that the pain is gone, by somebody who may say so."""
    answers = Answers(tuple(Answer.from_json(one) for one in stored))
    return answers.value(Question(QuestionCode.PAIN_FREE, pitcher_id=pitcher_id)) == GONE


def may_clear(session: Session, pitcher: Pitcher, on: date) -> set[int]:
    """The people (ids) who may say that this arm is free of pain again."""
    people = {key(person) for person in guardians_of(session, {key(pitcher)})}
    if age_on(pitcher.birth_date, on) >= ADULT and pitcher.person_id is not None:
        people.add(pitcher.person_id)
    return people


def age_on(born: date, on: date) -> int:
    """Age in whole years."""
    return on.year - born.year - ((on.month, on.day) < (born.month, born.day))
