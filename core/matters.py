"""What waits for somebody's word: opened by one person, settled once, told as it stands."""

from collections.abc import Mapping
from datetime import datetime, timedelta
from typing import Any, Final

from sqlmodel import Session

from core.ledger.by_hand import ByHandError, Hand, Refusal
from core.ledger.notices import Notice, NoticeKind
from core.ledger.people import teams_of
from core.model import Matter, MatterState, Person, Team, key

#: Kinds of matter.
DELETION: Final = "deletion"
ROSTER: Final = "roster"
MOVED: Final = "moved"

#: Whether the staff channel hears of a matter too.
TOLD_TO_STAFF: Final = frozenset({DELETION})


def open_matter(
    hand: Hand,
    kind: str,
    data: Mapping[str, Any],
    *,
    team_id: int | None = None,
    pitcher_id: int | None = None,
) -> Matter:
    """Begin a matter of the person's; its id is known when this returns."""
    matter = Matter(
        workspace_id=hand.person.workspace_id,
        kind=kind,
        person_id=key(hand.person),
        team_id=team_id,
        pitcher_id=pitcher_id,
        data=dict(data),
        opened_at=hand.now,
    )
    hand.session.add(matter)
    hand.session.flush()
    return matter


def settle(
    hand: Hand,
    matter_id: int,
    kind: str,
    state: MatterState,
    *,
    within: timedelta | None = None,
    by_another: bool = False,
) -> Matter:
    """Settle an open matter once, by whoever began it, or with `by_another` by somebody else.

    Raises `ByHandError`: gone when it is settled already or older than `within`.
    """
    matter = hand.session.get(Matter, matter_id, with_for_update=True)
    if matter is None or matter.kind != kind or matter.workspace_id != hand.person.workspace_id:
        raise ByHandError(Refusal.GONE)
    if (matter.person_id == key(hand.person)) is by_another:
        raise ByHandError(Refusal.NOT_ALLOWED)
    too_old = within is not None and hand.now - matter.opened_at > within
    if matter.state != MatterState.OPEN or too_old:
        raise ByHandError(Refusal.GONE)
    matter.state, matter.settled_at = state, hand.now
    matter.settled_by = key(hand.person)
    hand.session.add(matter)
    return matter


def matter_notices(session: Session, matter: Matter, now: datetime) -> list[Notice]:
    """The messages that show a matter as it stands: to whoever began it, and to the staff."""
    person = session.get_one(Person, matter.person_id)
    notices = [_to_person(matter, person, now)] if person.slack_id else []
    if matter.kind in TOLD_TO_STAFF:
        notices += [_to_staff(matter, team, now) for team in _teams(session, matter)]
    return notices


def _to_person(matter: Matter, person: Person, now: datetime) -> Notice:
    return Notice(
        slot=f"{NoticeKind.MATTER}/{key(matter)}/person/{key(person)}",
        kind=NoticeKind.MATTER,
        destination=person.slack_id or "",
        not_before=now,
        team_id=matter.team_id,
        person_id=key(person),
    )


def _to_staff(matter: Matter, team: Team, now: datetime) -> Notice:
    return Notice(
        slot=f"{NoticeKind.MATTER}/{key(matter)}/team/{key(team)}",
        kind=NoticeKind.MATTER,
        destination=team.staff_channel,
        not_before=now,
        team_id=key(team),
    )


def _teams(session: Session, matter: Matter) -> list[Team]:
    if matter.pitcher_id is not None:
        return teams_of(session, {matter.pitcher_id})
    team = session.get(Team, matter.team_id) if matter.team_id is not None else None
    return [team] if team is not None else []
