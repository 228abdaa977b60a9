"""The one way into the record: record a line, correct it, withdraw it.

Each runs in the caller's open transaction and returns what must be told, to whom.
"""

from core.ledger.lines import correct, record, withdraw
from core.ledger.messages import Deleted, Edited, Said
from core.ledger.notices import Notice, NoticeKind

__all__ = [
    "Deleted",
    "Edited",
    "Notice",
    "NoticeKind",
    "Said",
    "correct",
    "record",
    "withdraw",
]
