"""A typed question for the log: what is asked, of whom, about which days. It reads, nothing more.

`ask` gives an `Asked`, or None for everything that the log cannot answer: talk, log lines,
questions about snacks. The words and the shapes of questions are data, in `vocabulary/`.
"""

from core.reading.asking.asked import CHILD, ME, Activity, Asked, PlannedGame, Span, Topic
from core.reading.asking.reader import ask

__all__ = ["CHILD", "ME", "Activity", "Asked", "PlannedGame", "Span", "Topic", "ask"]
