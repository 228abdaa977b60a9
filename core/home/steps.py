"""What is still to be done until a team's log is complete: channels, pitchers, consent."""

from collections.abc import Sequence
from dataclasses import dataclass

from sqlmodel import Session, col, select

from core.model import GuardianLink, Matter, Person, Pitcher, Team, key
from core.roster.channels import CHANNELS, IN
from core.store.together import together


@dataclass(frozen=True, slots=True)
class Steps:
    """The open steps of a team's set-up; nothing of it where all is done."""

    empty_roster: bool = False
    #: The look at the channels of which not all were found as they should be.
    channels: Matter | None = None
    no_consent: tuple[Pitcher, ...] = ()
    #: Of those without consent: no guardian with an account could be asked.
    nobody_to_ask: tuple[Pitcher, ...] = ()

    def __bool__(self) -> bool:
        """Whether anything is open."""
        return self.empty_roster or self.channels is not None or bool(self.no_consent)


def open_steps(session: Session, team: Team, everybody: Sequence[Pitcher]) -> Steps:
    """What is open for a team with these pitchers."""
    waiting = [one for one in everybody if one.consent_on is None]
    ids = [key(one) for one in waiting]
    of_team = (col(Matter.kind) == CHANNELS) & (col(Matter.team_id) == key(team))
    linked = select(GuardianLink.person_id).where(col(GuardianLink.pitcher_id).in_(ids))
    looks, links, people = together(
        session,
        (Matter, of_team),
        (GuardianLink, col(GuardianLink.pitcher_id).in_(ids)),
        (Person, col(Person.id).in_(linked) & col(Person.slack_id).is_not(None)),
    )
    here = {key(one) for one in people}
    asked = {one.pitcher_id for one in links if one.person_id in here}
    unasked = [one for one in waiting if one.person_id is None and key(one) not in asked]
    return Steps(not everybody, _open_look(looks), tuple(waiting), tuple(unasked))


def _open_look(looks: Sequence[Matter]) -> Matter | None:
    """The newest look at the team's channels, where something was amiss."""
    done = [one for one in looks if "log" in one.data]
    last = max(done, key=key, default=None)
    if last is None or last.data["log"] == last.data["staff"] == IN:
        return None
    return last
