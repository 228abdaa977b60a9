"""Answers to questions in plain words: the data, for whoever may have it."""

from core.ledger.asked.answers import (
    ArmDay,
    Counts,
    FormAnswer,
    HelpAnswer,
    LastLine,
    MostAnswer,
    NoRecord,
    NotUnderstood,
    PlanAnswer,
    Refused,
    Reply,
    SeasonAnswer,
    SheetAnswer,
    ThrownAnswer,
    WhatIfAnswer,
    WhenAnswer,
)
from core.ledger.asked.from_line import asked_here, asks_in_short, replies, says_a_word
from core.ledger.asked.last_line import speaks_of_last

__all__ = [
    "ArmDay",
    "Counts",
    "FormAnswer",
    "HelpAnswer",
    "LastLine",
    "MostAnswer",
    "NoRecord",
    "NotUnderstood",
    "PlanAnswer",
    "Refused",
    "Reply",
    "SeasonAnswer",
    "SheetAnswer",
    "ThrownAnswer",
    "WhatIfAnswer",
    "WhenAnswer",
    "asked_here",
    "asks_in_short",
    "replies",
    "says_a_word",
    "speaks_of_last",
]
