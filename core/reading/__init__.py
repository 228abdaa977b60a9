"""A typed line becomes entries, or says what in it is unclear."""

from core.reading.entry import Detail, Entry, Pain, Reading, Unread, UnreadReason
from core.reading.reader import read

__all__ = ["Detail", "Entry", "Pain", "Reading", "Unread", "UnreadReason", "read"]
