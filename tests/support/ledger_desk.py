"""One team in a database, and a session in which messages are heard as Slack tells of them."""

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import UTC, date, datetime
from typing import Any

from sqlmodel import Session, col, select

from core.ledger import Deleted, Edited, Notice, Said, correct, record, withdraw
from core.model import (
    AuditEntry,
    GuardianLink,
    Line,
    Membership,
    Outing,
    PainReport,
    Person,
    Pitcher,
    PitcherTeam,
    Role,
    Team,
    Workspace,
    key,
)
from core.store import Store

WORKSPACE, LOG, STAFF = "T1", "CLOG", "CSTAFF"
MATEO, ELENA, DANA = "UMATEO", "UELENA", "UDANA"
#: Saturday 2 May 2026, 18:00 in Chicago, as Slack stamps a message.
TS = "1777762800.000100"
NOW = datetime(2026, 5, 2, 23, 0, tzinfo=UTC)
Event = Said | Edited | Deleted


def said(text: str, ts: str = TS, author: str = MATEO, channel: str = LOG) -> Said:
    """A line that Mateo typed in the log channel, unless said otherwise."""
    return Said(WORKSPACE, channel, ts, author, text)


def edited(text: str, second: int, ts: str = TS) -> Edited:
    """An edit of that line, so many seconds after it."""
    return Edited(said(text, ts), f"{1777762800 + second}.000000")


def deleted(text: str = "", author: str = "", ts: str = TS) -> Deleted:
    """Its deletion; in the short form Slack names neither author nor text."""
    return Deleted(said(text, ts, author))


@dataclass
class Desk:
    """An open session on a database that knows the team."""

    session: Session

    def hear(self, *events: Event) -> list[Notice]:
        """Hear events in this order; gives every notice that they caused."""
        notices: list[Notice] = []
        for event in events:
            match event:
                case Said():
                    notices += record(self.session, event, NOW)
                case Edited():
                    notices += correct(self.session, event, NOW)
                case Deleted():
                    notices += withdraw(self.session, event, NOW)
        self.session.flush()
        return notices

    @property
    def line(self) -> Line:
        """The one line."""
        return self.session.exec(select(Line)).one()

    @property
    def pitcher(self) -> Pitcher:
        """The one pitcher."""
        return self.session.exec(select(Pitcher)).one()

    def outings(self) -> list[Outing]:
        """The outings that count."""
        return [row for row in self.all_outings() if row.withdrawn_at is None]

    def all_outings(self) -> list[Outing]:
        """Every outing on file, withdrawn ones too."""
        return list(self.session.exec(select(Outing).order_by(col(Outing.slot))))

    def pain(self) -> list[PainReport]:
        """Every report on file, withdrawn ones too."""
        return list(self.session.exec(select(PainReport).order_by(col(PainReport.slot))))

    def audit(self) -> list[AuditEntry]:
        """Every change, oldest first."""
        return list(self.session.exec(select(AuditEntry).order_by(col(AuditEntry.id))))


@contextmanager
def desk_on(store: Store) -> Iterator[Desk]:
    """A desk whose session is never committed: each begins with an empty record."""
    with store.reading() as session:
        seed(session)
        yield Desk(session)


def seed(session: Session) -> None:
    """Put the team, a pitcher of 17, his mother and the coach into the database."""
    session.add(Workspace(id=WORKSPACE))
    session.flush()
    team = Team(
        workspace_id=WORKSPACE, name="Herons", time_zone="America/Chicago", log_channel=LOG,
        staff_channel=STAFF, rule_books=["pitch-smart"],
    )  # fmt: skip
    mateo, elena, dana = (
        Person(workspace_id=WORKSPACE, slack_id=slack_id, name=name)
        for slack_id, name in ((MATEO, "Mateo Cruz"), (ELENA, "Elena Cruz"), (DANA, "Dana Mercer"))
    )
    session.add_all([team, mateo, elena, dana])
    session.flush()
    pitcher = Pitcher(
        workspace_id=WORKSPACE, person_id=key(mateo), name="Mateo Cruz",
        birth_date=date(2009, 1, 10), consent_on=date(2026, 2, 1),
    )  # fmt: skip
    session.add(pitcher)
    session.flush()
    of: dict[str, Any] = {"workspace_id": WORKSPACE}
    session.add(PitcherTeam(**of, pitcher_id=key(pitcher), team_id=key(team)))
    session.add(GuardianLink(**of, pitcher_id=key(pitcher), person_id=key(elena)))
    session.add(Membership(**of, team_id=key(team), person_id=key(dana), role=Role.COACH))
    session.flush()
