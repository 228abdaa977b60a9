"""What Slack is asked while a team is set up: who opened Home, and whether channels are joined."""

from datetime import datetime
from typing import Any

from slack_sdk import WebClient
from slack_sdk.errors import SlackApiError
from sqlmodel import Session, select

from bot.errands.errand import Finish, Tools
from core.ledger import Notice, NoticeKind
from core.ledger.audit import put_on_audit
from core.ledger.crew import find_person
from core.matters import matter_notices
from core.model import AuditAction, Errand, Matter, MatterState, Person, Team, key
from core.roster.channels import CHANNELS, IN, NOT_IN, OPEN
from core.roster.first_steps import FIRST, first_matter


def who_opened(tools: Tools, errand: Errand, now: datetime) -> Finish:
    """Ask Slack whether it is an admin or owner of the workspace, and in which zone."""
    slack_id, wrote = str(errand.data["who"]), str(errand.data.get("wrote", ""))
    user: dict[str, Any] = tools.client.users_info(user=slack_id)["user"]
    is_admin = bool(user.get("is_admin") or user.get("is_owner")) and not user.get("is_bot")
    profile = user.get("profile") or {}
    name = str(profile.get("real_name") or user.get("real_name") or user.get("name") or "")
    said = {"admin": is_admin, "tz": str(user.get("tz") or "")}

    def finish(session: Session) -> list[Notice]:
        teams = select(Team.id).where(Team.workspace_id == errand.workspace_id)
        if session.exec(teams).first() is not None:
            return []
        if not is_admin:
            return [_no_team(slack_id, wrote, now)]
        person = find_person(session, errand.workspace_id, slack_id)
        if person is None:
            person = Person(workspace_id=errand.workspace_id, slack_id=slack_id, name=name)
            session.add(person)
            session.flush()
        matter = first_matter(session, person) or Matter(
            workspace_id=errand.workspace_id, kind=FIRST, person_id=key(person), opened_at=now
        )
        matter.data, matter.opened_at = said, now
        session.add(matter)
        session.flush()
        told = matter_notices(session, matter, now)
        if wrote:
            told = [_no_team(slack_id, wrote, now, key(person))]
        return [*told, _home(slack_id, now)]

    return finish


def _home(slack_id: str, now: datetime) -> Notice:
    """The Home tab, which shows the first steps too."""
    slot = f"{NoticeKind.HOME}/{slack_id}"
    return Notice(slot, NoticeKind.HOME, slack_id, now, only_if_shown=True)


def _no_team(slack_id: str, wrote: str, now: datetime, person_id: int | None = None) -> Notice:
    """What is missing: told once to who opens Home, and to each line that is written to the bot.

    An admin, named by `person_id`, gets the button that sets the team up.
    """
    slot = f"{NoticeKind.WELCOME}/nobody/{slack_id}{f'/{wrote}' if wrote else ''}"
    return Notice(slot, NoticeKind.WELCOME, slack_id, now, person_id=person_id)


def look_at_channels(tools: Tools, errand: Errand, now: datetime) -> Finish:
    """Look whether the bot is in both channels, and whether the staff's is private."""
    with tools.store.reading() as session:
        team = session.get(Team, errand.data["team"])
        places = (team.log_channel, team.staff_channel) if team is not None else ("", "")
    log, staff = (_channel(tools.client, place) for place in places)

    def finish(session: Session) -> list[Notice]:
        team = session.get(Team, errand.data["team"], with_for_update=True)
        person = session.get(Person, errand.data["by"])
        if team is None or person is None or (team.log_channel, team.staff_channel) != places:
            return []
        matter = _matter(session, errand, team, now)
        found: dict[str, Any] = {"log": _joined(log), "staff": _staff(staff)}
        place = {"log": places[0], "staff": places[1]}
        if not _is_channel(places[1]):  # moved here earlier, from a channel that was open
            found["staff"] = OPEN
            place["staff"] = matter.data.get("place", place)["staff"]
        elif found["staff"] == OPEN:
            # What minors say of pain must not stand where everybody reads it.
            _move_staff(session, team, person, now)
        matter.data = {**found, "place": place}
        session.add(matter)
        return [*matter_notices(session, matter, now), _home(person.slack_id or "", now)]

    return finish


def _matter(session: Session, errand: Errand, team: Team, now: datetime) -> Matter:
    rows = select(Matter).where(Matter.kind == CHANNELS, Matter.team_id == key(team))
    known = session.exec(rows.where(Matter.person_id == errand.data["by"])).first()
    if known is not None:
        return known
    matter = Matter(
        workspace_id=team.workspace_id,
        kind=CHANNELS,
        person_id=errand.data["by"],
        team_id=key(team),
        state=MatterState.OPEN,
        opened_at=now,
    )
    session.add(matter)
    session.flush()
    return matter


def _move_staff(session: Session, team: Team, person: Person, now: datetime) -> None:
    before, team.staff_channel = team.staff_channel, person.slack_id or ""
    session.add(team)
    put_on_audit(
        session, team, AuditAction.CORRECTED, person.slack_id or "", now,
        before={"staff_channel": before}, after={"staff_channel": team.staff_channel},
    )  # fmt: skip


def _channel(client: WebClient, channel: str) -> dict[str, Any] | None:
    """What Slack says of a channel; none for one that the bot cannot see."""
    if not _is_channel(channel):
        return {"is_member": True, "is_private": True}  # a direct message
    try:
        found: dict[str, Any] = client.conversations_info(channel=channel)["channel"]
    except SlackApiError as refused:
        if refused.response.get("error") in {"channel_not_found", "missing_scope"}:
            return None  # private, and the bot is not in it
        raise
    return found


def _is_channel(place: str) -> bool:
    return place.startswith(("C", "G"))


def _joined(channel: dict[str, Any] | None) -> str:
    return IN if channel is not None and channel.get("is_member") else NOT_IN


def _staff(channel: dict[str, Any] | None) -> str:
    if channel is not None and not channel.get("is_private"):
        return OPEN
    return _joined(channel)
