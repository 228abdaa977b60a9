"""A club of many teams in one workspace, for the benchmarks: invented people, all alike."""

from datetime import date

from bot.local.records import Channel, Person
from bot.local.workspace import Workspace
from core import model
from core.model import GuardianLink, Membership, Pitcher, PitcherTeam, Role, Team, key
from core.store import Store

ZONE = "America/Chicago"
#: Teams, and pitchers of each; every pitcher types for himself and has one guardian.
TEAMS, ARMS = 20, 10
FIRST = ("Ari", "Bo", "Cal", "Dez", "Eli", "Finn", "Gus", "Hal", "Ike", "Jud")


def make_club(store: Store, ws: Workspace) -> list[tuple[str, str, str]]:
    """Put the club into the workspace and the database.

    Gives who writes where, in the order in which they write: account, log channel, and the
    name of the pitcher whom a coach writes for; empty where pitchers write for themselves.
    """
    writers: list[list[tuple[str, str, str]]] = []
    for number in range(TEAMS):
        names = [f"{first} Number{number}" for first in FIRST[:ARMS]]
        coach = ws.add_person(f"Coach Number{number}")
        arms = [ws.add_person(name) for name in names]
        parents = [ws.add_person(f"Parent of {name}") for name in names]
        log = ws.add_channel(f"log-{number}", [coach, *arms, *parents])
        staff = ws.add_channel(f"staff-{number}", [coach], private=True)
        _store_team(
            store, ws.team_id, number, coach, list(zip(arms, parents, strict=True)), (log, staff)
        )
        own = [(one.id, log.id, "") for one in arms]
        writers.append([*own, (coach.id, log.id, names[number % ARMS])])
    return [of_team[turn] for turn in range(ARMS + 1) for of_team in writers]


def _store_team(
    store: Store,
    workspace: str,
    number: int,
    coach: Person,
    families: list[tuple[Person, Person]],
    channels: tuple[Channel, Channel],
) -> None:
    log, staff = channels
    with store.writing() as session:
        team = Team(
            workspace_id=workspace, name=f"Team {number}", time_zone=ZONE, log_channel=log.id,
            staff_channel=staff.id, rule_books=["pitch-smart"], season_start=date(2026, 3, 1),
        )  # fmt: skip
        head = model.Person(workspace_id=workspace, slack_id=coach.id, name=coach.real_name)
        session.add_all([team, head])
        session.flush()
        session.add(
            Membership(
                workspace_id=workspace, team_id=key(team), person_id=key(head), role=Role.COACH
            )
        )
        for own, parent in families:
            himself, guardian = (
                model.Person(workspace_id=workspace, slack_id=one.id, name=one.real_name)
                for one in (own, parent)
            )
            session.add_all([himself, guardian])
            session.flush()
            pitcher = Pitcher(
                workspace_id=workspace, name=himself.name, birth_date=date(2009, 3, 3),
                person_id=key(himself), consent_on=date(2026, 2, 1), breaking_pitch="curveball",
            )  # fmt: skip
            session.add(pitcher)
            session.flush()
            session.add_all([
                PitcherTeam(workspace_id=workspace, pitcher_id=key(pitcher), team_id=key(team)),
                GuardianLink(
                    workspace_id=workspace, pitcher_id=key(pitcher), person_id=key(guardian)
                ),
            ])  # fmt: skip
