"""A second team, a move to another team, the end of a season: the record stays with its pitcher."""

from enum import StrEnum

from sqlmodel import select

from core.consent.asking import requests
from core.ledger.audit import put_on_audit
from core.ledger.by_hand import ByHandError, Hand, Refusal
from core.ledger.notices import Notice, NoticeKind
from core.matters import MOVED, open_matter
from core.model import (
    AuditAction,
    MatterState,
    Pitcher,
    PitcherTeam,
    Team,
    key,
)
from core.roster.errors import RosterError, Wrong
from core.roster.keep import staffed_pitcher
from core.roster.people import is_staff


class Move(StrEnum):
    """What becomes of a pitcher on a team."""

    ALSO = "also"  # throws for another team too
    MOVES = "moves"  # leaves this team for another
    LEAVES = "leaves"  # the season is over, he graduated, or he stopped


def move_pitcher(
    hand: Hand, pitcher_id: int, team_id: int, move: Move, to_team: int | None
) -> list[Notice]:
    """Move a pitcher; his family is told who sees the record now.

    Raises `RosterError`, `ByHandError` for who is not of the staff of `team_id`.
    """
    pitcher = staffed_pitcher(hand, pitcher_id)
    place = hand.session.get(PitcherTeam, (pitcher_id, team_id))
    if place is None:
        raise ByHandError(Refusal.GONE)
    if not is_staff(hand.session, hand.person, team_id):
        raise ByHandError(Refusal.NOT_ALLOWED)
    before = _teams(hand, pitcher_id)
    if move is not Move.LEAVES:
        _join(hand, pitcher, to_team, before)
    if move is not Move.ALSO:
        hand.session.delete(place)
    hand.session.flush()
    put_on_audit(
        hand.session, pitcher, AuditAction.CORRECTED, hand.slack_id, hand.now,
        before={"teams": before}, after={"teams": _teams(hand, pitcher_id)},
    )  # fmt: skip
    team = hand.session.get_one(Team, team_id)
    told = [] if move is Move.LEAVES or to_team is None else _tell_staff(hand, pitcher, to_team)
    return told + requests(hand.session, pitcher, team, hand.now, anew=True)


def _join(hand: Hand, pitcher: Pitcher, to_team: int | None, before: list[int]) -> None:
    team = hand.session.get(Team, to_team) if to_team is not None else None
    if team is None or team.workspace_id != pitcher.workspace_id:
        raise RosterError("to", Wrong.NO_TEAM)
    if key(team) in before:
        raise RosterError("to", Wrong.ON_TEAM)
    hand.session.add(
        PitcherTeam(workspace_id=pitcher.workspace_id, pitcher_id=key(pitcher), team_id=key(team))
    )


def _tell_staff(hand: Hand, pitcher: Pitcher, to_team: int) -> list[Notice]:
    """The staff of the team that a pitcher joins hear of it, and from whom."""
    matter = open_matter(
        hand, MOVED, {"name": pitcher.name}, team_id=to_team, pitcher_id=key(pitcher)
    )
    matter.state, matter.settled_at = MatterState.DONE, hand.now
    team = hand.session.get_one(Team, to_team)
    return [
        Notice(
            slot=f"{NoticeKind.MATTER}/{key(matter)}/team/{to_team}",
            kind=NoticeKind.MATTER,
            destination=team.staff_channel,
            not_before=hand.now,
            team_id=to_team,
        )
    ]


def _teams(hand: Hand, pitcher_id: int) -> list[int]:
    places = select(PitcherTeam.team_id).where(PitcherTeam.pitcher_id == pitcher_id)
    return sorted(hand.session.exec(places))
