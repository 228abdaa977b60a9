"""Who can throw: the staff on one day or several, arm by arm, or in groups where they are many."""

from collections.abc import Callable, Iterable, Sequence
from datetime import date
from typing import TypeVar

from bot.wording.answers import RULES_GOVERN
from bot.wording.asked import COACH_DECIDES, costs, no_record, own_limits, unknown, why
from bot.wording.holds import stands_shortly
from bot.wording.words import counted, day, innings_of, listed, safe, sentences
from core.ledger.asked import ArmDay, SheetAnswer

#: From so many arms on they are told in groups: a dozen rows with their reasons fill a phone.
MANY = 7
_Key = TypeVar("_Key")


def sheet(answer: SheetAnswer) -> str:
    """The staff on each day asked about."""
    days = [_sheet_day(on, arms, answer) for on, arms in answer.days]
    kept_out = [no_record(answer.no_record)] if answer.no_record else []
    return "\n\n".join([*days, *kept_out, f"{RULES_GOVERN} {COACH_DECIDES}"])


def _sheet_day(on: date, arms: Sequence[ArmDay], answer: SheetAnswer) -> str:
    free = [one for one in arms if one.may_throw_so_many(answer.need)]
    one_arm = len(free) == 1 or len(arms) == 1
    rested = "has its rest done" if one_arm else "have their rest done"
    what = "may still throw by rule today" if answer.left else rested
    if answer.need is not None:
        what = f"may throw {answer.need} or more by rule"
    head = f"*{day(on)}*: {len(free)} of {counted(len(arms), 'arm')} {what}."
    too_few = [one for one in arms if one.may_throw and one not in free]
    resting = [one for one in arms if not one.may_throw]
    if len(arms) >= MANY:
        rows = [*_free_groups(free), *_short_groups(too_few), *_resting_groups(resting)]
    else:
        rows = [*map(_free, free), *map(_short, too_few), *map(_resting, resting)]
    return sentences([head, *(f"• {row}" for row in rows), _two_counts(arms)])


def _free(one: ArmDay) -> str:
    told = own_limits(one)
    cost = f"{costs(one)}{unknown(one)}"
    return f"{safe(one.pitcher.name)}: {_most(one)}.{cost}{f' {told}' if told else ''}"


def _most(one: ArmDay) -> str:
    """How much the books and the coach allow: "up to 45 (coach's limit 45)"."""
    found = one.rest
    assert found is not None
    mark = f" (coach's limit {one.coachs_limit})" if one.coachs_limit else ""
    most = f"up to {found.pitches_allowed}" if found.pitches_limited else "no pitch limit"
    if found.outs_allowed is not None:
        most += f", {innings_of(found.outs_allowed)}"
    return f"{most}{mark}"


def _short(one: ArmDay) -> str:
    """An arm whose rest is done, but not for as many as were asked for."""
    allowed = one.rest.pitches_allowed if one.rest is not None else 0
    return f"{safe(one.pitcher.name)}: only up to {allowed}."


def _resting(one: ArmDay) -> str:
    name = safe(one.pitcher.name)
    if one.status.bars_pitching:
        return f"{name}: {stands_shortly(one.status)}"
    if one.rest is None:
        return f"{name}: could not be worked out ({safe(one.problem)})."
    again = one.rest.next_eligible
    earliest = f"earliest {day(again)}" if again else "no date within a year"
    return f"{name}: rests, {earliest} by rule. {why(one.rest)}"


def _free_groups(arms: Sequence[ArmDay]) -> list[str]:
    """Those who may throw, by how much; then what using them costs, and of whom nothing is known.

    An arm that a clinician limits keeps a row of its own.
    """
    limited = [one for one in arms if own_limits(one)]
    others = [one for one in arms if one not in limited]
    rows = [f"{_capital(most)}: {_names(group)}." for most, group in _grouped(others, _most)]
    rows += [f"{safe(one.pitcher.name)}: {_most(one)}. {own_limits(one)}" for one in limited]
    by_cost = [(cost.strip(), group) for cost, group in _grouped(arms, costs) if cost]
    rows += [
        f"{cost}{'' if len(by_cost) == 1 else f' ({_names(group)})'}" for cost, group in by_cost
    ]
    unlogged = [one for one in arms if not one.has_record]
    if unlogged:
        whom = "any of these" if len(unlogged) == len(arms) else _names(unlogged)
        rows.append(f"Nothing on record of {whom}: days without a line are unknown.")
    return rows


def _short_groups(arms: Sequence[ArmDay]) -> list[str]:
    return [f"Only {most}: {_names(group)}." for most, group in _grouped(arms, _most)]


def _resting_groups(arms: Sequence[ArmDay]) -> list[str]:
    """Those who rest, by the day on which they may throw again; each with what he owes."""
    rows = [_resting(one) for one in arms if one.status.bars_pitching or one.rest is None]
    rest = [one for one in arms if not one.status.bars_pitching and one.rest is not None]
    rest.sort(key=lambda one: (one.rest and one.rest.next_eligible) or date.max)
    for earliest, group in _grouped(rest, _earliest):
        told = [f"{safe(one.pitcher.name)}{_owed(one)}" for one in group]
        rows.append(f"Rest, {earliest} by rule: {', '.join(told)}.")
    books = dict.fromkeys(
        reason.title for one in rest if one.rest for reason in one.rest.why if reason.binds
    )
    if books:
        named = listed([safe(title) for title in books])
        rows.append(f"By {named}; “rest” with a name gives the reason.")
    return rows


def _earliest(one: ArmDay) -> str:
    again = one.rest.next_eligible if one.rest is not None else None
    return f"earliest {day(again)}" if again else "no date within a year"


def _owed(one: ArmDay) -> str:
    """The count that owes the rest: " (62 on Sat 2 May)"."""
    owed = [
        reason
        for reason in (one.rest.why if one.rest is not None else ())
        if reason.binds and reason.on is not None and reason.pitches is not None
    ]
    return f" ({owed[0].pitches} on {day(owed[0].on)})" if owed and owed[0].on else ""


def _two_counts(arms: Sequence[ArmDay]) -> str:
    """Whose outing has two counts of which nobody has said yet whether they are one."""
    told = [
        f"{safe(one.pitcher.name)}, {listed([day(on) for on in one.two_counts_on])}"
        for one in arms
        if one.two_counts_on
    ]
    if not told:
        return ""
    return f"Two counts of one outing? {'; '.join(told)}. The larger stands until that is answered."


def _grouped(
    arms: Iterable[ArmDay], by: Callable[[ArmDay], _Key]
) -> Iterable[tuple[_Key, list[ArmDay]]]:
    found: dict[_Key, list[ArmDay]] = {}
    for one in arms:
        found.setdefault(by(one), []).append(one)
    return found.items()


def _names(arms: Sequence[ArmDay]) -> str:
    return listed([safe(one.pitcher.name) for one in arms])


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
