"""Rule book and outings in; days of rest, next eligible date, pitches allowed and why out."""

from core.rest.answering import answer, required
from core.rest.breaches import breaches
from core.rest.breakpoints import per_inning
from core.rest.coach import coach_limits
from core.rest.outlook import Outlook
from core.rest.plan import Assignment, Plan, expected_pitches, weekend_plan
from core.rest.schedules import Game
from core.rest.staff import Arm, Cost, StaffLine, staff_sheet
from core.rest.standing import Standing, TimeOff, Total, standing
from core.rest.values import (
    NO_PITCH_LIMIT,
    Phase,
    Reason,
    RestAnswer,
    RestError,
    RestOwed,
    Thrower,
    Thrown,
)
from core.rest.whatif import WhatIf, most_leaving, what_if
from core.rest.yearly import YearOfInnings, year_of_innings

__all__ = [
    "NO_PITCH_LIMIT",
    "Arm",
    "Assignment",
    "Cost",
    "Game",
    "Outlook",
    "Phase",
    "Plan",
    "Reason",
    "RestAnswer",
    "RestError",
    "RestOwed",
    "StaffLine",
    "Standing",
    "Thrower",
    "Thrown",
    "TimeOff",
    "Total",
    "WhatIf",
    "YearOfInnings",
    "answer",
    "breaches",
    "coach_limits",
    "expected_pitches",
    "most_leaving",
    "per_inning",
    "required",
    "staff_sheet",
    "standing",
    "weekend_plan",
    "what_if",
    "year_of_innings",
]
