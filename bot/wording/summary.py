"""The Monday summary: the sentence that matters first, then arm by arm, then what waits."""

from collections.abc import Iterator, Sequence
from datetime import timedelta
from itertools import groupby

from bot.wording.answers import RULES_GOVERN
from bot.wording.asked import COACH_DECIDES, amount, total_name
from bot.wording.holds import reported, stands_shortly
from bot.wording.twice import one_outing_or_two
from bot.wording.words import counted, day, days_between, listed, percent, safe, sentences
from core.due.summary import Summary
from core.due.waiting import Waiting
from core.due.week import ArmWeek
from core.mix import Mix
from core.rest import TimeOff

UNKNOWN_DAYS = "A day without a line is unknown, not a day off."


def summary(found: Summary, page_size: int) -> list[str]:
    """The paragraphs of the message in the staff channel."""
    return [
        sentences([_heading(found), _in_short(found.weeks)]),
        *(_arm(one) for one in found.page(1)),
        _more(found, page_size),
        _to_decide(found),
        _days(found),
        f"{UNKNOWN_DAYS} {RULES_GOVERN} {COACH_DECIDES}",
    ]


def page(found: Summary, number: int) -> list[str]:
    """A further page, in the thread."""
    return [f"*Page {number}*, {found.team.name}", *(_arm(one) for one in found.page(number))]


def _heading(found: Summary) -> str:
    return f"*Monday summary, {safe(found.team.name)}*, {days_between(found.first, found.last)}"


def _in_short(weeks: Sequence[ArmWeek]) -> str:
    """How many arms stand where, in one sentence."""
    if not weeks:
        return "No arm with consent on file yet, so nothing is counted."
    held = sum(one.status.held for one in weeks)
    stopped = sum(one.status.bars_pitching for one in weeks) - held
    unknown = sum(not one.status.bars_pitching and one.rest.problem is not None for one in weeks)
    done = sum(one.may_throw for one in weeks)
    parts = [
        _number(done, "has its rest done", "have their rest done"),
        _number(len(weeks) - held - stopped - unknown - done, "is resting", "are resting"),
        _number(stopped, "is stopped after pain or soreness", "are stopped after pain or soreness"),
        _number(held, "is on hold", "are on hold"),
        _number(unknown, "could not be worked out", "could not be worked out"),
    ]
    return f"{counted(len(weeks), 'arm')}: {', '.join(part for part in parts if part)}."


def _number(number: int, one: str, many: str) -> str:
    return f"{number} {one if number == 1 else many}" if number else ""


def _arm(one: ArmWeek) -> str:
    return f"*{safe(one.pitcher.name)}*: {_status(one)}\n{_thrown(one)}"


def _status(one: ArmWeek) -> str:
    if one.status.bars_pitching:
        return stands_shortly(one.status)
    if one.rest.problem is not None:
        return f"rest could not be worked out ({safe(one.rest.problem)})."
    if one.may_throw:
        return "rest done."
    if one.rest.next_eligible is None:
        return "resting, no date within a year by rule."
    return f"resting, earliest {day(one.rest.next_eligible)} by rule."


def _thrown(one: ArmWeek) -> str:
    if not one.lines_last_week:
        return " ".join(["No line last week.", *_spin(one)])
    return " ".join([_counts(one), *_mix(one), *_spin(one)])


def _counts(one: ArmWeek) -> str:
    if not one.outings:
        return "No outing from the mound."
    told = counted(one.outings, "outing")
    if one.uncounted == one.outings:
        return f"{told}, not counted: the longest rest stands until a count is added."
    told += f", {counted(one.pitches, 'pitch', 'pitches')}."
    if one.uncounted:
        told += f" {one.uncounted} of them not counted: the longest rest stands until then."
    return told


def _mix(one: ArmWeek) -> Iterator[str]:
    """Last week's share in games, with the week before beside it."""
    if one.mix.share is None:
        if one.mix.games:
            yield "Breaking balls not counted."
        return
    before = f"the week before {_share(one.before)}" if one.before.typed else "none counted before"
    yield f"Breaking balls {_share(one.mix)}, {before}."
    if one.mix.untyped:
        yield f"{counted(one.mix.untyped, 'pitch', 'pitches')} of unknown type left out."


def _share(mix: Mix) -> str:
    return f"{percent(mix.share or 0.0)} ({mix.breaking} of {mix.typed})"


def _spin(one: ArmWeek) -> Iterator[str]:
    if one.spin is not None:
        yield f"Spin reps {one.spin.reps} of {one.spin.planned}."


def _more(found: Summary, page_size: int) -> str:
    more = len(found.weeks) - page_size
    return f"{counted(more, 'more arm')} in the thread." if more > 0 else ""


def _to_decide(found: Summary) -> str:
    rows = [
        *(_stopped(one) for one in found.weeks if one.status.since is not None),
        *(said for one in found.asked for said in one_outing_or_two(one)),
        _lines(
            [one for one in found.asked if not one.two_counts],
            "question unanswered",
            "questions unanswered",
        ),
        _lines(found.unread, "line not read", "lines not read"),
        _silent(found.silent),
        *(_cap(one) for one in found.weeks if one.rest.near_caps),
        *(_break(one, off) for one in found.weeks for off in one.rest.breaks),
        _no_consent([safe(one.name) for one in found.no_consent]),
    ]
    standing = [f"• {row}" for row in rows if row]
    return sentences(["*To decide*", *(standing or ["Nothing waits for you."])])


def _stopped(one: ArmWeek) -> str:
    status = one.status
    assert status.since is not None
    what = "is on hold" if status.held else f"is stopped after {reported(status)}"
    until = (
        "an adult records a licensed clinician's clearance"
        if status.held
        else "the family says that it is gone; a licensed clinician should check it"
    )
    return f"{safe(one.pitcher.name)} {what} since {day(status.since)}: no throwing until {until}."


def _lines(waiting: Sequence[Waiting], one: str, many: str) -> str:
    if not waiting:
        return ""
    days: dict[str, list[str]] = {}
    for line in waiting:
        days.setdefault(safe(line.author), []).append(day(line.on))
    who = listed([f"{name} ({listed(list(dict.fromkeys(on)))})" for name, on in days.items()])
    return f"{counted(len(waiting), one, many)}: {who}."


def _silent(weeks: Sequence[ArmWeek]) -> str:
    if not weeks:
        return ""
    names = [f"{safe(one.pitcher.name)} ({_last_line(one)})" for one in weeks]
    return f"No line for ten days or more: {listed(names)}."


def _last_line(one: ArmWeek) -> str:
    return f"last {day(one.last_line)}" if one.last_line is not None else "none yet"


def _cap(one: ArmWeek) -> str:
    caps = [
        f"{amount(cap.used, cap.unit)} of {amount(cap.maximum or 0, cap.unit)} "
        f"({total_name(cap).lower()})"
        for cap in one.rest.near_caps
    ]
    return f"{safe(one.pitcher.name)} nears a cap: {listed(caps)}."


def _break(one: ArmWeek, off: TimeOff) -> str:
    span = counted(off.needed_months or 0, "month")
    if off.needed_months is None:
        span = counted(off.needed_weeks or 0, "week")
    assert off.start_by is not None
    what = "competition" if off.of == "competition" else "throwing"
    return (
        f"{safe(one.pitcher.name)}: {span} off from {what} a year would have to begin by "
        f"{day(off.start_by)}, as far as the log shows."
    )


def _no_consent(names: Sequence[str]) -> str:
    return f"No consent on file, so nothing is counted: {listed(names)}." if names else ""


def _days(found: Summary) -> str:
    """Who has his rest done on which day; days that change nothing are named together."""
    days = [found.today + timedelta(days=n) for n in range(7)]
    able = {on: [safe(one.pitcher.name) for one in found.weeks if on in one.free_on] for on in days}
    rows: list[str] = []
    before: list[str] = []
    for names, run in groupby(days, key=lambda on: able[on]):
        span = list(run)
        of = f"({len(names)} of {len(found.weeks)})"
        rows.append(f"{days_between(span[0], span[-1])}: {_able(names, before)} {of}")
        before = names
    held = [one for one in found.weeks if one.status.bars_pitching]
    barred = [one for one in found.weeks if not one.free_on and one not in held]
    head = "*Who can throw by rule, if nobody throws before*"
    return sentences([head, *rows, _left_out("Not this week", barred), _left_out(_NO_DATE, held)])


_NO_DATE = "Stopped, so no day is named"


def _left_out(why: str, weeks: Sequence[ArmWeek]) -> str:
    return f"{why}: {listed([safe(one.pitcher.name) for one in weeks])}." if weeks else ""


def _able(names: Sequence[str], before: Sequence[str]) -> str:
    """The names; after the first day only those who join, where nobody leaves."""
    joining = [name for name in names if name not in before]
    if before and joining and set(before) <= set(names):
        return f"also {listed(joining)}"
    return listed(names) or "nobody"
