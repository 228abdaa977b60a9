"""Which day a line names. A weekday is the most recent one; a day ahead is no log."""

import re
from datetime import date, timedelta

from core.reading import groups
from core.reading.board import Board, Handler, Rule, rule, says_no_log, says_unread
from core.reading.entry import UnreadReason

_LONGEST_MONTH = 31  # days
_LATELY = 15  # days: of an older game nobody says "the game of the 9th"
LONGEST_LOOK_BACK = timedelta(days=60)  # an older "4/18" is more likely no date at all


def _ago(days: int) -> Handler:
    def apply(board: Board, match: re.Match[str]) -> None:
        _claim(board, match, board.posted.date() - timedelta(days=days))

    return apply


def _days_ago(board: Board, match: re.Match[str]) -> None:
    count = board.whole(match.start("n"))
    if count is not None and count <= LONGEST_LOOK_BACK.days:
        _claim(board, match, board.posted.date() - timedelta(days=count))


def _weekday(board: Board, match: re.Match[str]) -> None:
    today = board.posted.date()
    item = board.items[match.start("d")]
    back = (today.weekday() - (5 if item.symbol == "sat" else int(item.name))) % 7
    if back == 0 and match.group("last"):
        back = 7
    _claim(board, match, today - timedelta(days=back))


def _logged_day(board: Board, match: re.Match[str]) -> None:
    """As in "Remy's log for Wednesday: ..."."""
    today = board.posted.date()
    item = board.items[match.start("d")]
    back = (today.weekday() - (5 if item.symbol == "sat" else int(item.name))) % 7
    board.claim(match.start("d"), match.end(), "day", today - timedelta(days=back))


def _month_day(board: Board, match: re.Match[str]) -> None:
    day = board.whole(match.start("n"))
    _dated(board, match, int(board.items[match.start("m")].name), day or 0)


def _month_first_or_day_first(board: Board, match: re.Match[str]) -> None:
    pair = board.items[match.start("r")].pair
    assert pair is not None
    left, right = pair
    orders = [(left, right)] if board.lang == "en" else [(right, left), (left, right)]
    dates = [found for m, d in orders if (found := _in_reach(board, m, d)) is not None]
    if (dates and len(set(dates)) == 1) or (dates and board.lang == "en"):
        _claim(board, match, dates[0])
    elif dates:
        board.unread(match.start(), match.end(), UnreadReason.UNCLEAR_DAY)


def _iso(board: Board, match: re.Match[str]) -> None:
    numbers = [int(part) for part in re.split(r"[-/]", board.items[match.start("i")].name)]
    year = numbers[0] if numbers[0] > _LONGEST_MONTH else numbers[2]
    if board.posted.year - (year if year > 99 else 2000 + year) not in (0, 1):
        _of_another_year(board, match)
        return
    if numbers[0] > _LONGEST_MONTH:
        _dated(board, match, numbers[1], numbers[2])
    else:
        left, right = numbers[:2]
        if board.lang == "es" and right <= 12:
            left, right = right, left
        _dated(board, match, left, right)


def _of_another_year(board: Board, match: re.Match[str]) -> None:
    """As in "pen 10/10/10": three sets, a slip of the year, or somebody's birthday?"""
    born = match.start() > 0 and board.items[match.start() - 1].text.lower().startswith("born")
    told = board.has(*groups.FIELDS, *groups.KINDS, "threw") or len(board.items) == 1
    if told and not born:
        board.unread(match.start(), match.end(), UnreadReason.UNKNOWN_NUMBER)
    else:
        board.no_log(match.start(), match.end(), "date")


def _day_of_month(board: Board, match: re.Match[str]) -> None:
    day = board.whole(match.start("n")) or 0
    today = board.posted.date()
    months = [today.month, (today.month - 2) % 12 + 1]
    past = [found for m in months if (found := _in_reach(board, m, day)) is not None]
    if past:
        _claim(board, match, past[0])


def _is_on_the(board: Board, match: re.Match[str]) -> None:
    """As in "la final es el 14": ahead, or no log; Spanish "fue el 14" was that day."""
    if board.items[match.start("n") - 1].text.lower() != "el":
        return
    if board.items[match.start("v")].text.lower() == "fue":
        _day_of_month(board, match)
    elif (board.whole(match.start("n")) or 0) <= _LONGEST_MONTH:
        board.no_log(match.start(), match.end(), "date")


def _of_the(board: Board, match: re.Match[str]) -> None:
    """As in Spanish "el juego del 9": of the last days, or still to come."""
    if board.items[match.start("n") - 1].text.lower() != "del":
        return
    today, day = board.posted.date(), board.whole(match.start("n")) or 0
    back = next((n for n in range(_LATELY) if (today - timedelta(days=n)).day == day), None)
    place = match.start("n") - 1
    if back is None:
        board.no_log(place, match.end(), "date")
    else:
        board.claim(place, match.end(), "day", today - timedelta(days=back))


def _on_the(board: Board, match: re.Match[str]) -> None:
    """As in "el 3 vs Garza Mora tiré 50": his own day; of others "el 12 tiró 40" may be a shirt."""
    if board.author == "pitcher" and board.items[match.start("n") - 1].text.lower() == "el":
        _day_of_month(board, match)


def _weekday_and_day(board: Board, match: re.Match[str]) -> None:
    """As in "Saturday 16: ...": a date, where the weekday before it agrees."""
    item, today = board.items[match.start("d")], board.posted.date()
    weekday = 5 if item.symbol == "sat" else int(item.name)
    for back in range((today.weekday() - weekday) % 7, _LONGEST_MONTH, 7):
        day = today - timedelta(days=back)
        if day.day == board.whole(match.start("n")):
            _claim(board, match, day)
            return


def _dated(board: Board, match: re.Match[str], month: int, day: int) -> None:
    found = _in_reach(board, month, day)
    if found is not None:
        _claim(board, match, found)
    else:
        board.no_log(match.start(), match.end(), "date")


def _in_reach(board: Board, month: int, day: int) -> date | None:
    """The latest such date up to the posted day, if not too long ago."""
    today = board.posted.date()
    for year in (today.year, today.year - 1):
        try:
            found = date(year, month, day)
        except ValueError:
            return None
        if found <= today:
            return found if today - found <= LONGEST_LOOK_BACK else None
    return None


def _claim(board: Board, match: re.Match[str], day: date) -> None:
    board.claim(match.start(), match.end(), "day", day)


def _ahead(board: Board, match: re.Match[str]) -> None:
    """As in "back thursday", "by friday": a day that lies ahead."""
    first = board.items[match.start()]
    if first.symbol != "site" or first.name == "back":
        board.no_log(match.start(), match.end(), "day ahead")


def _cause(board: Board, match: re.Match[str]) -> None:
    """As in "shoulder is tight after yesterday's game": when it came from, not when it is."""
    if any(claim.key in ("pain", "tired") for claim in board.claims):
        board.no_log(match.start(), match.end(), "day of the cause")


def _cause_or_day(board: Board, match: re.Match[str]) -> None:
    """As in "arm tired after last night": no day of its own; with counts beside it, of which?

    In "arm tired after last night. catch only, 20 throws" the sentence that counts names no day.
    """
    day = match.end() - 1
    sentence = board.sentence[day]
    loose = [i for i in board.free_numbers() if board.sentence[i] == sentence]
    if any(board.items[i].symbol == "num" for i in loose):
        board.unread(day, day + 1, UnreadReason.UNCLEAR_DAY)
    else:
        board.no_log(day, day + 1, "day of the cause")


def _heads_days(board: Board, match: re.Match[str]) -> None:
    """As in "this weekend: Fri 30 p, Sat 15 p": the days themselves follow."""
    if sum(claim.key == "day" for claim in board.claims) > 1:
        board.no_log(match.start(), match.start() + 1, "heading of days")


def _from_then(board: Board, match: re.Match[str]) -> None:
    """As in Spanish "brazo cansado de ayer": since then, and tired today."""
    if board.items[match.start("d")].text.lower().startswith("de "):
        board.no_log(match.start("d"), match.end(), "day of the cause")


def _today(board: Board, match: re.Match[str]) -> None:
    _claim(board, match, board.posted.date())


_NOT_COUNTED = "(?! (fill|dash)* (unit|innings|percent|mph|balls|forstrikes))"

DAY_RULES: tuple[Rule, ...] = (
    rule(
        "after yesterday's game",
        "after (the|hisher|last)* (weekday|sat|yesterday|daybefore) (anygame|bullpen|catch|live)",
        _cause,
    ),
    rule(
        "tired after last night",
        "(said_arm|tired|sore) (today|adv)* after (the|hisher|last)*"
        " (weekday|sat|yesterday|daybefore)",
        _cause_or_day,
    ),
    rule(
        "tired for what was yesterday, Spanish",
        "said_arm adv* for (the|of)+ (yesterday|daybefore)",
        says_no_log("day of the cause"),
    ),
    rule("brazo cansado de ayer", "said_arm adv* <d:yesterday|daybefore>", _from_then),
    rule(
        "tired from saturday",
        "said_arm (after|adv)* from (the|hisher|last)* (weekday|sat|yesterday|daybefore|game)",
        says_no_log("day of the cause"),
    ),
    rule(
        "better than tuesday",
        "than (the|on|last|hisher)* (weekday|sat|yesterday|daybefore)",
        says_no_log("day compared"),
    ),
    rule(
        "cuz i start saturday",
        "<c:cause> (i|the|he)? <v:gamelike|pitches|threw|throwing> (on|again|adv)* (weekday|sat)"
        " (?! (said_)?num)",
        says_no_log("day ahead"),
    ),
    rule(
        "back on thursday",
        "(site|before|by) (on)? (weekday|sat|yesterday|daybefore)"
        " (?! plan (he|i|said_who) (threw|went|had))",
        _ahead,
    ),
    rule("days ago", "(about)? <n:num> daysago", _days_ago),
    rule("ago, Spanish order", "agobefore (about)? <n:num> daysword", _days_ago),
    rule(
        "some days ago, Spanish order",
        "agobefore vague daysword",
        says_unread(UnreadReason.UNCLEAR_DAY),
    ),
    rule("some days ago", "vague daysago", says_unread(UnreadReason.UNCLEAR_DAY)),
    rule("day before yesterday", "daybefore", _ago(2)),
    rule("yesterday", "yesterday", _ago(1)),
    rule("today", "today", _today),
    rule("written out", "(weekday (comma)?)? <i:isodate>", _iso),
    rule(
        "month and day",
        "((weekday|sat) (comma)?)? <m:month> (dot)? (the)? <n:num|ord>" + _NOT_COUNTED,
        _month_day,
    ),
    rule("day and month", "<n:num|ord> of <m:month>", _month_day),
    rule("slash", "((weekday|sat) (comma)?)? <r:ratio>" + _NOT_COUNTED, _month_first_or_day_first),
    rule(
        "saturday 16:",
        "<d:weekday|sat> <n:num> (?= colon)",
        _weekday_and_day,
    ),
    rule("on the 9th", "on the <n:ord>", _day_of_month),
    rule("es el 14, fue el 14", "<v:is> the <n:num>" + _NOT_COUNTED, _is_on_the),
    rule("el 3 vs Lobos", "(^|mark|newline) the <n:num> (?= (said_vs|vs|threw))", _on_the),
    rule("el juego del 16", "(anygame|bullpen|catch|practice) of <n:num>" + _NOT_COUNTED, _of_the),
    rule("weekday and day of month", "(weekday|sat) (comma)? the <n:ord>", _day_of_month),
    rule("log for saturday", "(logthis|countword) for <d:weekday|sat>", _logged_day),
    rule(
        "for saturday put down", "for <d:weekday|sat> (?= (comma|adv|word)* logthis)", _logged_day
    ),
    rule("for saturday", "for (weekday|sat) (?! anygame)", says_unread(UnreadReason.UNCLEAR_DAY)),
    rule("weekday", "<last:last>? <d:weekday>", _weekday),
    rule("saturday", "<last:last>? <d:sat>", _weekday),
    rule(
        "this weekend: fri 30, sat 20",
        "otherday (colon|dash|comma|newline|said_who)* (?= said_day)",
        _heads_days,
    ),
    rule("other day", "otherday", says_unread(UnreadReason.UNCLEAR_DAY)),
)
