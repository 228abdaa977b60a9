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


def limit_set(
    pitcher: str, pitches: int, first: date, last: date | None, by_book: tuple[int, str] | None
) -> str:
    """A limit as it stands now; `by_book` is a lower number of a book, and the book's name."""
    if last is None:
        span = f"from {day(first)} until you lift it (“no limit for {safe(pitcher)}”)"
    elif last == first:
        span = f"on {day(first)}"
    else:
        span = f"from {day(first)} to {day(last)}"
    return (
        f"Coach's limit for {safe(pitcher)}: at most {counted(pitches, 'pitch', 'pitches')} a day, "
        f"{span}. {_book(by_book)}"
    )


def _book(by_book: tuple[int, str] | None) -> str:
    if by_book is None:
        return "Where a rule book allows less, the book stands."
    most, title = by_book
    return (
        f"{safe(title)} allows no more than {counted(most, 'pitch', 'pitches')} a day, so "
        f"*{most}* still stands."
    )
