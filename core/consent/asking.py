"""The messages about consent: the request to those who may say it, the news to the staff."""

from collections.abc import Iterable
from dataclasses import replace
from datetime import date, datetime
from zoneinfo import ZoneInfo

from sqlmodel import Session

from core.audience import Occasion, who_is_told
from core.consent.standing import may_consent
from core.ledger.notices import Notice, NoticeKind, quiet_until
from core.ledger.people import teams_of
from core.ledger.watch import watch
from core.model import ConsentEvent, ConsentWay, Person, Pitcher, Team, key


def consent_slot(pitcher: Pitcher, person: Person) -> str:
    """The one message about a pitcher's consent that a person has."""
    return f"{NoticeKind.CONSENT}/{key(pitcher)}/{key(person)}"


def ask_for_consent(session: Session, pitcher: Pitcher, now: datetime) -> list[Notice]:
    """Ask those who may agree and have an account, once; not between 20:00 and 08:00.

    Asking again brings the message up to date.
    """
    team = first_team(session, pitcher)
    if team is None or pitcher.consent_on is not None:
        return []
    return requests(session, pitcher, team, now)


def bring_up_to_date(session: Session, pitcher: Pitcher, now: datetime) -> list[Notice]:
    """The requests that people see already, after something was said."""
    team = first_team(session, pitcher)
    return requests(session, pitcher, team, now, only_if_shown=True) if team else []


def requests(
    session: Session,
    pitcher: Pitcher,
    team: Team,
    now: datetime,
    *,
    only_if_shown: bool = False,
    anew: bool = False,
) -> list[Notice]:
    """The message about consent for everybody who may say it, by the hours of `team`."""
    waits = who_is_told(Occasion.CONSENT).waits_for_morning and not only_if_shown
    at = quiet_until(now, team.time_zone) if waits else now
    return [
        Notice(
            slot=consent_slot(pitcher, person),
            kind=NoticeKind.CONSENT,
            destination=person.slack_id,
            not_before=at,
            team_id=key(team),
            person_id=key(person),
            only_if_shown=only_if_shown,
            anew=anew,
        )
        for person in may_consent(session, pitcher, local_day(team, now))
        if person.slack_id is not None
    ]


def tell_kept_back(session: Session, pitcher: Pitcher, now: datetime) -> list[Notice]:
    """The staff hear once of each pitcher that his lines are kept back."""
    return [_kept_back(key(pitcher), team, now) for team in teams_of(session, {key(pitcher)})]


def tell_staff(session: Session, event: ConsentEvent, now: datetime) -> list[Notice]:
    """The staff of the pitcher's teams hear what was said; what was kept back is brought up."""
    notices = []
    for team in teams_of(session, {event.pitcher_id}):
        said = Notice(
            slot=f"{NoticeKind.CONSENT_SAID}/{key(event)}/{key(team)}",
            kind=NoticeKind.CONSENT_SAID,
            destination=team.staff_channel,
            not_before=now,
            team_id=key(team),
        )
        kept_back = _kept_back(event.pitcher_id, team, now)
        told = [] if event.way == ConsentWay.FILE else [said]  # who loads a file knows what it says
        notices += [*told, replace(kept_back, only_if_shown=True)]
    return notices


def _kept_back(pitcher_id: int, team: Team, now: datetime) -> Notice:
    return Notice(
        slot=f"{NoticeKind.KEPT_BACK}/{pitcher_id}/{key(team)}",
        kind=NoticeKind.KEPT_BACK,
        destination=team.staff_channel,
        not_before=now,
        team_id=key(team),
    )


def tell_of_line(
    session: Session, withdrawn: Iterable[ConsentEvent], now: datetime
) -> list[Notice]:
    """What the staff hear of consent that a line withdrew."""
    notices = []
    for row in withdrawn:
        pitcher = session.get_one(Pitcher, row.pitcher_id)
        notices += tell_staff(session, row, now) + bring_up_to_date(session, pitcher, now)
        notices += watch(session, {key(pitcher)}, now)
    return notices


def first_team(session: Session, pitcher: Pitcher) -> Team | None:
    """The team whose zone the pitcher's days go by."""
    return next(iter(teams_of(session, {key(pitcher)})), None)


def local_day(team: Team | None, now: datetime) -> date:
    """The local day of a moment (UTC)."""
    return now.astimezone(ZoneInfo(team.time_zone if team else "UTC")).date()
