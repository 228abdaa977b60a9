"""Daily throws over time: this week against the weeks before it, never a risk."""

from core.load.averages import Averages, averages
from core.load.daily import Day, daily
from core.load.week import WeekLoad, week_load

__all__ = ["Averages", "Day", "WeekLoad", "averages", "daily", "week_load"]
