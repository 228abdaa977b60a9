"""What is said of a coach's own limit."""

from datetime import date

from bot.wording.words import counted, day, safe

LIFTED = "Lifted: no limit of the coach's stands for that pitcher any more. The rule books' do."


def book_named(pitcher: str, on: date, title: str) -> str:
    """A rule book that was named for one outing."""
    return (
        f"Rule book for {safe(pitcher)} on {day(on)}: {safe(title)}, beside the others. Where they "
        "differ, the stricter one stands."
    )


def limit_set(pitcher: str, pitches: int, first: date, last: date | None) -> str:
    """A limit as it stands now."""
    if last is None:
        span = f"from {day(first)} until you lift it (“no limit for {safe(pitcher)}”)"
    elif last == first:
        span = f"on {day(first)}"
    else:
        span = f"from {day(first)} to {day(last)}"
    return (
        f"Coach's limit for {safe(pitcher)}: at most {counted(pitches, 'pitch', 'pitches')} a day, "
        f"{span}. Where a rule book allows less, the book stands."
    )
