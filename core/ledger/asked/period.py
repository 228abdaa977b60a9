"""The days that a question about the past covers."""

from datetime import date, timedelta

from dateutil.relativedelta import relativedelta

from core.reading.asking import Asked, Span


def period(
    asked: Asked, today: date, season_start: date | None, last_outing: date | None
) -> tuple[date, date]:
    """First and last day, both included; a single day, or today, where no span was named."""
    starts = {
        Span.WEEK: today - timedelta(days=today.weekday()),
        Span.MONTH: today.replace(day=1),
        Span.LAST_DAYS: today - timedelta(days=(asked.back or 7) - 1),
        Span.SINCE: asked.days[0] if asked.days else today,
        Span.SEASON: season_start or date(today.year, 1, 1),
        Span.YEAR: date(today.year, 1, 1),
        Span.TWELVE_MONTHS: today - relativedelta(years=1) + timedelta(days=1),
        Span.LAST_OUTING: last_outing or today,
        Span.EVER: date.min,
    }
    if asked.span in starts:
        return starts[asked.span], today
    if asked.span is Span.LAST_WEEK:
        monday = today - timedelta(days=today.weekday() + 7)
        return monday, monday + timedelta(days=6)
    if asked.span is Span.LAST_MONTH:
        last = today.replace(day=1) - timedelta(days=1)
        return last.replace(day=1), last
    days = asked.days or (today,)
    return days[0], days[-1]
