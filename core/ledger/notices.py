"""What must be told after a line changed the record, and to whom: places, not words."""

from dataclasses import dataclass, replace
from datetime import datetime, time, timedelta
from enum import StrEnum
from zoneinfo import ZoneInfo

from sqlmodel import Session, col, select

from core.audience import Occasion, Told, who_is_told
from core.model import (
    Feeling,
    GuardianLink,
    Line,
    LineState,
    Outing,
    PainReport,
    Person,
    PitcherTeam,
    Team,
    key,
)

MORNING, EVENING = time(8), time(20)


class NoticeKind(StrEnum):
    """What kind of message is owed; the bot has one renderer for each."""

    REACTION = "reaction"
    ANSWER = "answer"
    STAFF_COUNTS = "staff counts"
    PAIN = "pain"
    PAIN_WITHDRAWN = "pain withdrawn"
    KEPT_BACK = "kept back"
    STRANGER = "stranger"
    HINT = "hint"


@dataclass(frozen=True, slots=True)
class Notice:
    """One message that is owed: its natural key, its kind and where it goes.

    `destination` is a Slack channel or user id. With `only_if_shown` the message is brought
    up to date where people see it already, and not begun otherwise.
    """

    slot: str
    kind: NoticeKind
    destination: str
    not_before: datetime
    line_id: int | None = None
    team_id: int | None = None
    person_id: int | None = None
    thread_ts: str | None = None
    only_if_shown: bool = False


def quiet_until(moment: datetime, time_zone: str) -> datetime:
    """The first moment from `moment` on that is outside quiet hours (20:00-08:00 local).

    The hours are the usual ones of youth-sport communication policies (electronic contact
    with minor athletes between 08:00 and 20:00 local time).
    """
    local = moment.astimezone(ZoneInfo(time_zone))
    if MORNING <= local.time() < EVENING:
        return moment
    day = local.date() + timedelta(days=1 if local.time() >= EVENING else 0)
    return datetime.combine(day, MORNING, ZoneInfo(time_zone)).astimezone(moment.tzinfo)


@dataclass(frozen=True, slots=True)
class Heard:
    """What the ledger knows of a line when it works out who must hear of it."""

    line: Line
    now: datetime
    #: Whether the answer must come in words (a reaction is enough for most lines).
    in_words: bool
    by_scorekeeper: bool
    unplaced_pain: bool
    #: The teams that answer for the line: the channel's own, else the author's.
    teams: tuple[Team, ...]


def owed(session: Session, heard: Heard) -> list[Notice]:
    """Every message that the line as it stands now calls for."""
    line = heard.line
    notices = [_answer(heard)]
    if line.deleted_at is None:
        notices.append(_reaction(heard))
    outings = list(session.exec(select(Outing).where(Outing.line_id == key(line))))
    if heard.by_scorekeeper:
        notices += _for_staff(session, heard, NoticeKind.STAFF_COUNTS, outings)
    notices += _pain(session, heard)
    if any(question["code"] == "no consent" for question in line.questions):
        notices += _to_teams(heard, NoticeKind.KEPT_BACK, heard.teams)
    return notices


def _reaction(heard: Heard) -> Notice:
    line = heard.line
    return Notice(
        slot=f"reaction/{key(line)}",
        kind=NoticeKind.REACTION,
        destination=line.channel,
        not_before=heard.now,
        line_id=key(line),
        only_if_shown=line.state in {LineState.TALK, LineState.STRANGER},
    )


def _answer(heard: Heard) -> Notice:
    line = heard.line
    staff_channel = any(team.staff_channel == line.channel for team in heard.teams)
    in_place = staff_channel or line.direct
    return Notice(
        slot=f"answer/{key(line)}",
        kind=NoticeKind.ANSWER,
        destination=line.channel if in_place else line.author_slack_id,
        not_before=heard.now,
        line_id=key(line),
        person_id=line.author_id,
        thread_ts=(line.thread_ts or line.ts) if staff_channel else line.thread_ts,
        only_if_shown=not heard.in_words or line.deleted_at is not None,
    )


def _to_teams(heard: Heard, kind: NoticeKind, teams: tuple[Team, ...] | list[Team]) -> list[Notice]:
    return [
        Notice(
            slot=f"{kind}/{key(heard.line)}/team/{key(team)}",
            kind=kind,
            destination=team.staff_channel,
            not_before=heard.now,
            line_id=key(heard.line),
            team_id=key(team),
        )
        for team in teams
    ]


def _for_staff(
    session: Session, heard: Heard, kind: NoticeKind, rows: list[Outing] | list[PainReport]
) -> list[Notice]:
    teams = teams_of(session, {row.pitcher_id for row in rows})
    # In the staff channel itself the line and the thread under it tell the staff.
    elsewhere = [team for team in teams if team.staff_channel != heard.line.channel]
    standing = any(row.withdrawn_at is None for row in rows)
    return [
        replace(notice, only_if_shown=not standing) for notice in _to_teams(heard, kind, elsewhere)
    ]


def _pain(session: Session, heard: Heard) -> list[Notice]:
    line = heard.line
    reports = [
        report
        for report in session.exec(select(PainReport).where(PainReport.line_id == key(line)))
        if report.feeling in TOLD_FEELINGS
    ]
    notices = _for_staff(session, heard, NoticeKind.PAIN, reports) if reports else []
    if heard.unplaced_pain and not reports:
        others = [team for team in heard.teams if team.staff_channel != line.channel]
        notices += _to_teams(heard, NoticeKind.PAIN, others)
    pain = [report for report in reports if report.feeling == Feeling.PAIN]
    if pain and Told.GUARDIANS in who_is_told(Occasion.PAIN).told:
        notices += _guardians(session, heard, pain)
    return notices + [_withdrawn(heard, notice) for notice in notices if _gone(reports)]


TOLD_FEELINGS = frozenset({Feeling.PAIN, Feeling.SORE, Feeling.TIRED})


def _gone(reports: list[PainReport]) -> bool:
    return bool(reports) and all(report.withdrawn_at is not None for report in reports)


def _guardians(session: Session, heard: Heard, pain: list[PainReport]) -> list[Notice]:
    standing = any(report.withdrawn_at is None for report in pain)
    pitchers = {report.pitcher_id for report in pain}
    return [
        Notice(
            slot=f"{NoticeKind.PAIN}/{key(heard.line)}/person/{key(person)}",
            kind=NoticeKind.PAIN,
            destination=person.slack_id,
            not_before=heard.now,
            line_id=key(heard.line),
            person_id=key(person),
            only_if_shown=not standing,
        )
        for person in guardians_of(session, pitchers)
        if person.slack_id is not None and key(person) != heard.line.author_id
    ]


def _withdrawn(heard: Heard, notice: Notice) -> Notice:
    """The words that follow a pain notice whose report was taken back: adults decide."""
    waits = notice.team_id is None
    zone = heard.teams[0].time_zone if heard.teams else "UTC"
    return replace(
        notice,
        slot=notice.slot.replace(NoticeKind.PAIN, NoticeKind.PAIN_WITHDRAWN, 1),
        kind=NoticeKind.PAIN_WITHDRAWN,
        not_before=quiet_until(notice.not_before, zone) if waits else notice.not_before,
        only_if_shown=False,
    )


def teams_of(session: Session, pitcher_ids: set[int]) -> list[Team]:
    """The teams that any of these pitchers throws for."""
    links = select(PitcherTeam.team_id).where(col(PitcherTeam.pitcher_id).in_(pitcher_ids))
    return list(session.exec(select(Team).where(col(Team.id).in_(links)).order_by(col(Team.id))))


def guardians_of(session: Session, pitcher_ids: set[int]) -> list[Person]:
    """The guardians of any of these pitchers, those without a Slack account included."""
    links = select(GuardianLink.person_id).where(col(GuardianLink.pitcher_id).in_(pitcher_ids))
    people = select(Person).where(col(Person.id).in_(links)).order_by(col(Person.id))
    return list(session.exec(people))
