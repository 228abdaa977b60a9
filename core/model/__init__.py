"""What is stored: people, their teams' calendar, the pitching record, and owed messages."""

from core.model.alerts import Alert, AlertSeen, AlertState, ThresholdSetting
from core.model.base import Stored, key
from core.model.calendar import CoachLimit, OutingBook, Season, SeasonKind, TeamEvent
from core.model.club import (
    ConsentAct,
    ConsentEvent,
    ConsentWay,
    Errand,
    Matter,
    MatterState,
)
from core.model.contact import FamilyMessage, OptOut
from core.model.games import CalendarEntry, CalendarSource, CalledOff, EntryKind, GameAnswer
from core.model.health import Clearance, Hold
from core.model.home import HomeTab
from core.model.message import MessageState, OutboxMessage
from core.model.people import (
    STAFF_ROLES,
    BreakingPitch,
    GuardianLink,
    Membership,
    Person,
    PitchCaller,
    Pitcher,
    PitcherTeam,
    Role,
    Team,
    Workspace,
)
from core.model.record import (
    FORM_TS,
    AuditAction,
    AuditEntry,
    Feeling,
    JoinedAs,
    Line,
    LineState,
    Outing,
    PainReport,
)
from core.model.schedule import DAILY, DailyLook, Reminder, ScheduleKind, TeamSchedule

__all__ = [
    "DAILY",
    "FORM_TS",
    "STAFF_ROLES",
    "Alert",
    "AlertSeen",
    "AlertState",
    "AuditAction",
    "AuditEntry",
    "BreakingPitch",
    "CalendarEntry",
    "CalendarSource",
    "CalledOff",
    "Clearance",
    "CoachLimit",
    "ConsentAct",
    "ConsentEvent",
    "ConsentWay",
    "DailyLook",
    "EntryKind",
    "Errand",
    "FamilyMessage",
    "Feeling",
    "GameAnswer",
    "GuardianLink",
    "Hold",
    "HomeTab",
    "JoinedAs",
    "Line",
    "LineState",
    "Matter",
    "MatterState",
    "Membership",
    "MessageState",
    "OptOut",
    "OutboxMessage",
    "Outing",
    "OutingBook",
    "PainReport",
    "Person",
    "PitchCaller",
    "Pitcher",
    "PitcherTeam",
    "Reminder",
    "Role",
    "ScheduleKind",
    "Season",
    "SeasonKind",
    "Stored",
    "Team",
    "TeamEvent",
    "TeamSchedule",
    "ThresholdSetting",
    "Workspace",
    "key",
]
