"""A question with everything its answer needs."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date, time

from sqlmodel import Session

from core.ledger.binding import Books
from core.ledger.crew import Crew
from core.ledger.who import Arm
from core.model import Pitcher
from core.reading.asking import Asked


@dataclass(frozen=True, slots=True)
class Question:
    """Who asks what, where; `today` and `time` are the team's local day and time."""

    session: Session
    asked: Asked
    crew: Crew
    books: Books
    today: date
    time: time = time(0)
    #: Whom a name that fits several means, as chosen since: by the name as typed, the id.
    chosen: Mapping[str, int] = field(default_factory=dict)

    @property
    def days(self) -> list[date]:
        """The days asked about; today where none was named."""
        return list(self.asked.days) or [self.today]

    def pitchers(self, arms: list[Arm]) -> list[Pitcher]:
        """The stored pitchers of these arms, in their order."""
        return [self.session.get_one(Pitcher, arm.pitcher_id) for arm in arms]
