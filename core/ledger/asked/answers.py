"""What questions are answered with: figures and reasons, no sentences."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, time

from core.ledger.logged import Logged
from core.load import WeekLoad
from core.mix import Mix, Window
from core.model import CoachLimit, Pitcher
from core.pain.status import NOTHING_STANDS, ArmStatus
from core.reading.asking import Activity, Asked
from core.rest import RestAnswer
from core.rest.coach import OWN
from core.rest.plan import Plan
from core.rest.staff import Cost
from core.rest.standing import Total
from core.rest.whatif import WhatIf


@dataclass(frozen=True, slots=True)
class ArmDay:
    """One pitcher on one day: what the books allow, and whether pain stands against it."""

    pitcher: Pitcher
    on: date
    rest: RestAnswer | None
    #: Why no book answers, in its own words.
    problem: str = ""
    costs: tuple[Cost, ...] = ()
    status: ArmStatus = NOTHING_STANDS
    limit: CoachLimit | None = None
    #: Whether any outing is on record: days without a line are unknown, not days off.
    has_record: bool = True
    #: Days of outings with two counts of which nobody has said yet whether they are one.
    two_counts_on: tuple[date, ...] = ()

    @property
    def may_throw(self) -> bool:
        """Whether nothing on record speaks against it; the coach decides all the same."""
        return self.rest is not None and self.rest.eligible and not self.status.bars_pitching

    def may_throw_so_many(self, need: int | None) -> bool:
        """Whether he may throw, and as many as were asked for."""
        return self.may_throw and (
            need is None or self.rest is None or self.rest.pitches_allowed >= need
        )

    @property
    def coachs_limit(self) -> int | None:
        """The coach's own limit, where it is what binds: pitches a day."""
        binds = self.rest is not None and any(
            reason.binds and reason.rulebook == OWN for reason in self.rest.why
        )
        return self.limit.pitches if self.limit is not None and binds else None


@dataclass(frozen=True, slots=True)
class SheetAnswer:
    """Who can throw on which day, most pitches first; `left` for what is left of today."""

    days: tuple[tuple[date, tuple[ArmDay, ...]], ...]
    left: bool = False
    #: Pitchers of whom nothing is kept, for want of consent.
    no_record: tuple[str, ...] = ()
    #: Their ids, in the same order.
    no_record_ids: tuple[int, ...] = ()
    #: The count that was asked for ("who can give me 40"): pitches.
    need: int | None = None


@dataclass(frozen=True, slots=True)
class WhenAnswer:
    """One pitcher on the days asked about, and what the coach allows besides pitching."""

    arms: tuple[ArmDay, ...]
    activity: Activity | None = None
    rest_day: Mapping[str, str] | None = None
    own: bool = False
    #: Asked whether the arm is well, which no answer says.
    of_the_arm: bool = False
    #: Asked by a pitcher or a guardian: told in a sentence, not in the staff's short form.
    for_family: bool = False


@dataclass(frozen=True, slots=True)
class Counts:
    """What one pitcher threw in the days asked about."""

    pitcher: Pitcher
    outings: tuple[Logged, ...]
    #: For the staff: this week's throws beside the weeks before.
    load: WeekLoad | None = None
    status: ArmStatus = NOTHING_STANDS


@dataclass(frozen=True, slots=True)
class ThrownAnswer:
    """Counts of each pitcher asked about, over these days (both included)."""

    first: date
    last: date
    counts: tuple[Counts, ...]


@dataclass(frozen=True, slots=True)
class SeasonAnswer:
    """Totals against the caps, and the mix over the windows."""

    pitcher: Pitcher
    on: date
    totals: tuple[Total, ...]
    mix: Mapping[Window, Mix]
    problem: str = ""
    load: WeekLoad | None = None
    status: ArmStatus = NOTHING_STANDS


@dataclass(frozen=True, slots=True)
class WhatIfAnswer:
    """What follows if he throws so many on a date."""

    pitcher: Pitcher
    found: WhatIf | None
    problem: str = ""
    status: ArmStatus = NOTHING_STANDS


@dataclass(frozen=True, slots=True)
class MostAnswer:
    """The most that he can throw on a date and still go on the later one; null for never."""

    pitcher: Pitcher
    on: date
    later: date
    most: int | None
    problem: str = ""
    status: ArmStatus = NOTHING_STANDS


@dataclass(frozen=True, slots=True)
class PlanAnswer:
    """A weekend plan: `names` gives the pitcher's name for each key of the plan."""

    plan: Plan
    names: Mapping[str, str]
    games: Mapping[str, tuple[date, str, int]]
    #: Left out although a book might allow them: pain was reported and stands.
    not_cleared: tuple[str, ...] = ()
    #: Games that were asked about and have begun already: the rest is planned.
    past: tuple[tuple[date, time], ...] = ()


@dataclass(frozen=True, slots=True)
class NoRecord:
    """A pitcher without consent on file: nothing is kept of him, so nothing can be said."""

    name: str


@dataclass(frozen=True, slots=True)
class Glance:
    """One pitcher at a glance: today, the last outings (newest first), the season so far."""

    today: ArmDay
    last: tuple[Logged, ...]
    outings: int
    mix: Mix


@dataclass(frozen=True, slots=True)
class StatsAnswer:
    """Pitchers at a glance; `own` where it is the asker's own arm."""

    glances: tuple[Glance, ...]
    own: bool = False


@dataclass(frozen=True, slots=True)
class KeptOf:
    """What is kept about one pitcher: numbers of rows, and who may read them."""

    pitcher: Pitcher
    outings: int
    since: date | None
    reports: int
    guardians: tuple[str, ...]
    teams: tuple[str, ...]
    #: Whether the asker may have the record deleted.
    may_delete: bool = False


@dataclass(frozen=True, slots=True)
class DataAnswer:
    """What is kept about pitchers; `own` where it is about the asker."""

    kept: tuple[KeptOf, ...]
    own: bool = False


@dataclass(frozen=True, slots=True)
class DeleteAnswer:
    """How a record is deleted: `mine` are those (id, name) that the asker may have deleted.

    `guardians` may, where a minor asks about himself and has none of his own.
    """

    mine: tuple[tuple[int, str], ...]
    guardians: tuple[str, ...] = ()
    is_staff: bool = False


@dataclass(frozen=True, slots=True)
class ConsentAnswer:
    """The pitchers (ids) to whose record the asker may agree, and `on` which day it is asked."""

    mine: tuple[int, ...]
    on: date


@dataclass(frozen=True, slots=True)
class NotForYou:
    """A word of the table that is for others; `words` are those for the asker."""

    word: str
    words: tuple[str, ...]
    is_guardian: bool = False


@dataclass(frozen=True, slots=True)
class HelpAnswer:
    """What can be asked, for that person: the words of the table that are for him."""

    words: tuple[str, ...]
    is_staff: bool
    #: Those that come first; empty where every word is told of.
    first: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class FormAnswer:
    """A word that opens a form: a button does, for a message cannot."""

    word: str
    form: str
    #: A pitcher to be added, by the name as typed.
    name: str = ""
    #: Pitchers on the roster whom that name may mean already: id and name.
    known: tuple[tuple[int, str], ...] = ()
    #: Asked for the count of what a line told of without one.
    asks_count: bool = False


@dataclass(frozen=True, slots=True)
class LastLine:
    """The author's newest line in the log, to be put right or undone; none where there is none."""

    line_id: int | None
    #: What its count should be, where that was said.
    pitches: int | None = None


@dataclass(frozen=True, slots=True)
class AnswerTaken:
    """A typed answer that was taken, for the question of another line."""

    line_id: int


@dataclass(frozen=True, slots=True)
class WhichQuestion:
    """A typed answer that may be of several questions: each as its line and place."""

    asked: tuple[tuple[int, int], ...]
    #: Whoever typed it cannot tell.
    unsure: bool = False


@dataclass(frozen=True, slots=True)
class Refused:
    """Not answered: the asker may not know; the words give no hint of the answer."""

    own_names: tuple[str, ...]
    staff_only: bool = False
    #: A coach's own roster holds nobody yet.
    empty_roster: bool = False


@dataclass(frozen=True, slots=True)
class NotUnderstood:
    """Asked back: what could not be read, or which name fits nobody or several."""

    asked: Asked
    unclear: tuple[str, ...] = ()
    typed: str = ""
    #: Those whom the name may mean: id and name.
    offered: tuple[tuple[int, str], ...] = ()
    #: Whether the asker keeps the roster, and may add somebody whom it does not hold.
    may_add: bool = False
    #: The games that have begun already, where all have.
    past: tuple[tuple[date, time], ...] = ()


Reply = (
    SheetAnswer
    | WhenAnswer
    | ThrownAnswer
    | SeasonAnswer
    | WhatIfAnswer
    | MostAnswer
    | PlanAnswer
    | StatsAnswer
    | DataAnswer
    | DeleteAnswer
    | ConsentAnswer
    | NotForYou
    | HelpAnswer
    | FormAnswer
    | LastLine
    | AnswerTaken
    | WhichQuestion
    | NoRecord
    | Refused
    | NotUnderstood
)
