"""Answers to questions in plain words: the sentence first, the reasons under it."""

from collections.abc import Iterable, Sequence
from datetime import date

from bot.wording.answers import KIND_NAMES, RULES_GOVERN
from bot.wording.holds import limits, stands
from bot.wording.load import week as week_load
from bot.wording.pain import NOT_A_DOCTOR
from bot.wording.words import (
    counted,
    day,
    innings_of,
    listed,
    percent,
    plain,
    safe,
    sentences,
    starts,
    weekday,
)
from core.ledger.asked import (
    ArmDay,
    Counts,
    MostAnswer,
    PlanAnswer,
    SeasonAnswer,
    ThrownAnswer,
    WhatIfAnswer,
    WhenAnswer,
)
from core.ledger.logged import Logged
from core.mix import Window
from core.reading.asking import Activity
from core.rest import Reason, RestAnswer, Total

COACH_DECIDES = "The coach decides."


def no_record(names: Sequence[str]) -> str:
    """Said of pitchers without consent on file."""
    whom = "him" if len(names) == 1 else "them"
    return (
        f"{listed([safe(one) for one in names])}: I keep no record (no consent on file), so I "
        f"cannot say anything about {whom}."
    )


def unknown(one: ArmDay) -> str:
    """That nothing is on record of an arm."""
    return "" if one.has_record else " (nothing on record; days without a line are unknown)"


def costs(one: ArmDay, *, for_family: bool = False) -> str:
    """What using him costs: up to so many pitches, back on that day; in a sentence to a family."""
    if not one.costs:
        return ""
    if for_family:
        return f" {'; '.join(_costs_in_words(one))}."
    steps = [
        f"{cost.pitches} → {day(cost.next_eligible) if cost.next_eligible else 'no date'}"
        for cost in one.costs
    ]
    return f" Back after {', '.join(steps)}"


def _costs_in_words(one: ArmDay) -> Iterable[str]:
    """First "Up to 20 pitches: back Sunday", then "up to 35: back Monday"."""
    for place, cost in enumerate(one.costs):
        most = f"up to {cost.pitches}" if place else f"Up to {counted(cost.pitches, *PITCH)}"
        back = weekday(cost.next_eligible, one.on) if cost.next_eligible else ""
        yield f"{most}: back {back}" if back else f"{most}: no date within a year"


PITCH = ("pitch", "pitches")


def why(rest: RestAnswer) -> str:
    """The reasons that bind, with the book each stands in."""
    return " ".join(f"{_reason(reason)}." for reason in rest.why if reason.binds)


def _reason(reason: Reason) -> str:
    band = f", {reason.band}" if reason.band else ""
    return f"{_capital(plain(reason.says))} ({safe(reason.title)}{band})"


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def when(answer: WhenAnswer) -> str:
    """One pitcher, or a few, on the days asked about."""
    family = answer.for_family
    parts = [_capital(_when_one(one, answer.own, for_family=family)) for one in answer.arms]
    if answer.activity is not None and answer.activity is not Activity.THROW:
        parts = [_activity(one, answer) for one in answer.arms]
    told = [own_limits(one) for one in answer.arms]
    told += dict.fromkeys(_two_counts(one) for one in answer.arms)
    if answer.of_the_arm:
        stops = [one for one in answer.arms if one.status.bars_pitching]
        first = [_capital(_when_one(one, answer.own)) for one in stops]
        others = [_capital(_arm(one, answer.own)) for one in answer.arms if one not in stops]
        return sentences([*first, OF_THE_ARM, *others, *told])
    return sentences([*parts, *told, closing(answer.arms)])


def closing(arms: Iterable[ArmDay]) -> str:
    """Who decides: a clinician while pain or a hold stands against all of these arms."""
    if all(one.status.since is not None for one in arms):
        return NOT_A_DOCTOR
    return f"{RULES_GOVERN} {COACH_DECIDES}"


OF_THE_ARM = (
    "I'm a bot, not a doctor, and cannot say whether an arm is OK. A licensed clinician decides. "
    "If it hurts, is sore or feels tired: no throwing today, and tell a coach and a parent."
)


def _arm(one: ArmDay, own: bool) -> str:
    """What stands on record of an arm that was asked about; rest that is done is no yes."""
    if one.status.bars_pitching or one.rest is None or not one.rest.eligible:
        return _when_one(one, own)
    name = "" if own else f"{safe(one.pitcher.name)}: "
    return (
        f"{name}by the counts no rest is owed on {day(one.on)}. Counts say nothing of how the arm "
        "feels."
    )


def _two_counts(one: ArmDay) -> str:
    """That a question about two counts is open, and what stands until it is answered."""
    if not one.two_counts_on:
        return ""
    days = listed([day(on) for on in one.two_counts_on])
    return (
        f"Two counts are logged for {days}, and it is still open whether they are one outing. "
        "Until that is answered the larger count owes the rest."
    )


def own_limits(one: ArmDay | Counts | SeasonAnswer | WhatIfAnswer | MostAnswer) -> str:
    """A clinician's limits, beside every answer about that arm."""
    shown_already = one.status.bars_pitching and one.status.since is None
    return "" if shown_already else limits(one.status)


def _when_one(one: ArmDay, own: bool, *, for_family: bool = False) -> str:
    name = "" if own else f"{safe(one.pitcher.name)}: "
    if one.status.bars_pitching:
        return f"{name}{stands(one.status)}"
    if one.rest is None:
        return f"{name}rest could not be worked out ({safe(one.problem)}). Ask the coach first."
    if one.rest.eligible:
        beside = f"{costs(one, for_family=for_family)}{unknown(one)}"
        return f"{name}{_most(one)} on {day(one.on)} by rule{f'.{beside}' if beside else ''}."
    earliest = (
        f"earliest {day(one.rest.next_eligible)} by rule"
        if one.rest.next_eligible
        else "no date within a year by rule"
    )
    return f"{name}not on {day(one.on)}; {earliest}. {why(one.rest)}"


def today_of(one: ArmDay) -> str:
    """What stands of an arm on a day, with nobody's name, and a clinician's limits."""
    told = _when_one(one, own=True, for_family=True)
    return sentences([_capital(told), own_limits(one)])


def _most(one: ArmDay) -> str:
    assert one.rest is not None
    if not one.rest.pitches_limited:
        return "rest done, no pitch limit"
    limit = f" (the coach's own limit is {one.coachs_limit})" if one.coachs_limit else ""
    return f"rest done, up to {counted(one.rest.pitches_allowed, 'pitch', 'pitches')}{limit}"


ACTIVITIES = {
    Activity.THROW: "throwing",
    Activity.CATCH: "catch play",
    Activity.POSITION: "another position",
    Activity.CATCHER: "catching",
    Activity.HIT: "hitting",
}


def _activity(one: ArmDay, answer: WhenAnswer) -> str:
    """What else he may do: the coach's own words, where the coach has written any."""
    assert answer.activity is not None
    what, name = ACTIVITIES[answer.activity], safe(one.pitcher.name)
    if one.status.bars_pitching and answer.activity is not Activity.HIT:
        return f"{name}: {stands(one.status)}"
    words = (answer.rest_day or {}).get(answer.activity)
    said = f"the coach says: {safe(words)}" if words else "ask the coach"
    if one.rest is not None and not one.rest.eligible:
        return (
            f"{name}, {what} on {day(one.on)}: it is a rest day from pitching. The books ask for "
            f"rest from pitching; about {what}, {said}."
        )
    barred = answer.activity is Activity.CATCHER and one.rest and not one.rest.may_catch
    if barred:
        return f"{name}: no catching on {day(one.on)} by rule. {why(one.rest) if one.rest else ''}"
    return f"{name}, {what} on {day(one.on)}: it is no rest day from pitching; {said}."


def thrown(answer: ThrownAnswer) -> str:
    """What was thrown, outing by outing, with the sums."""
    if answer.first == answer.last:
        span = day(answer.first)
    elif answer.first == date.min:
        span = f"up to {day(answer.last)}"
    else:
        span = f"{day(answer.first)} to {day(answer.last)}"
    return sentences(
        text
        for one in answer.counts
        for text in (_thrown_by(one, span), week_load(one.load), limits(one.status))
    )


def _thrown_by(one: Counts, span: str) -> str:
    outings = [outing for outing in one.outings if outing.kind != "off"]
    head = f"*{safe(one.pitcher.name)}*, {span}: "
    if not outings:
        return f"{head}no line. A day without a line is unknown, not a day off."
    pitched = [outing for outing in outings if outing.kind != "catch"]
    total = sum(outing.pitches or 0 for outing in pitched)
    throws = sum(outing.pitches or 0 for outing in outings if outing.kind == "catch")
    parts = [counted(total, "pitch", "pitches")] if pitched else []
    parts += [f"{counted(throws, 'throw')} in catch play"] if throws else []
    uncounted = sum(outing.pitches is None for outing in outings)
    if uncounted:
        parts.append(f"{counted(uncounted, 'outing')} without a count")
    return sentences([head + listed(parts) + ".", *(f"• {outing(one)}" for one in outings)])


def outing(one: Logged) -> str:
    """One outing in a row: its day, kind and counts."""
    head = f"{day(one.on)}, {KIND_NAMES[one.kind].lower()}"
    if one.kind == "off":
        return head
    noun = ("throw", "throws") if one.kind == "catch" else ("pitch", "pitches")
    pitches = "not counted" if one.pitches is None else counted(one.pitches, *noun)
    breaking = f", {counted(one.breaking, 'breaking ball')}" if one.breaking is not None else ""
    pitched = f", {innings_of(one.outs)}" if one.outs is not None else ""
    return f"{head}: {pitches}{breaking}{pitched}"


def season(answer: SeasonAnswer) -> str:
    """Totals against the caps and the breaking-ball share."""
    lines = [f"*{safe(answer.pitcher.name)}*, {day(answer.on)}"]
    if answer.problem:
        lines.append(f"Totals could not be worked out ({safe(answer.problem)}).")
    seen: set[str] = set()
    for total in answer.totals:
        cap = total.maximum
        of = f" (the book's cap is {amount(cap, total.unit)})" if cap is not None else ""
        line = f"{total_name(total)}: {amount(total.used, total.unit)}{of}"
        if total.uncounted:
            line += f" (and {counted(total.uncounted, 'outing')} without a count)"
        if line not in seen:
            lines.append(f"• {line}")
            seen.add(line)
    lines += [
        f"• Breaking balls, {window}: {percent(mix.share)} ({mix.breaking} of {mix.typed})"
        for window in Window
        if (mix := answer.mix[window]).share is not None
    ]
    return sentences([*lines, week_load(answer.load), limits(answer.status), RULES_GOVERN])


TOTALS = {"twelve-months": "Last twelve months", "innings-in-12-months": "Twelve-month cap"}


def total_name(total: Total) -> str:
    """What a sum of the year is called."""
    return TOTALS.get(total.rule, total.rule.replace("-", " "))


def amount(number: int, unit: str) -> str:
    """So many pitches, or outs as innings."""
    return innings_of(number) if unit == "outs" else counted(number, "pitch", "pitches")


def what_if(answer: WhatIfAnswer) -> str:
    """What follows if he throws so many."""
    name = safe(answer.pitcher.name)
    if answer.status.bars_pitching:
        return f"{name}: {stands(answer.status)}"
    found = answer.found
    if found is None:
        return f"{name}: could not be worked out ({safe(answer.problem)})."
    over = "" if found.allowed else "More than the books allow that day. "
    back = f"next eligible {day(found.next_eligible)}" if found.next_eligible else "no date"
    return (
        f"If {name} throws {counted(found.pitches, 'pitch', 'pitches')} on {day(found.on)}: "
        f"{counted(found.days, 'day')} of rest, {back} by rule. {over}{_beside(answer)}"
        f"{RULES_GOVERN} {COACH_DECIDES}"
    )


def _beside(answer: WhatIfAnswer | MostAnswer) -> str:
    told = own_limits(answer)
    return f"{told} " if told else ""


def most(answer: MostAnswer) -> str:
    """The most that leaves him eligible on the later day."""
    name = safe(answer.pitcher.name)
    if answer.status.bars_pitching:
        return f"{name}: {stands(answer.status)}"
    if answer.problem:
        return f"{name}: could not be worked out ({safe(answer.problem)})."
    if answer.most is None:
        return f"{name} is not eligible on {day(answer.later)} by rule, whatever he throws before."
    if answer.most == 0:
        return (
            f"{name}: none on {day(answer.on)} if he is to be eligible on {day(answer.later)} by "
            "rule."
        )
    return (
        f"{name}: at most {counted(answer.most, 'pitch', 'pitches')} on {day(answer.on)} leave him "
        f"eligible on {day(answer.later)} by rule. {_beside(answer)}{RULES_GOVERN} {COACH_DECIDES}"
    )


def plan(answer: PlanAnswer) -> str:
    """The weekend plan, game by game, and what it cannot cover."""
    found, names = answer.plan, answer.names
    short = dict(found.short)
    head = (
        f"The games cannot all be covered by rule: {sum(short.values())} pitches are missing."
        if short
        else "Every game is covered by rule."
    )
    lines = [f"*Plan.* {head} Arms left for the last game: {len(found.last_game_arms)}."]
    for game, (on, at, pitches) in answer.games.items():
        arms = [
            f"{safe(names[one.pitcher])} {one.pitches} (at most {one.at_most})"
            for one in found.assignments
            if one.game == game
        ]
        missing = f"; {short[game]} short" if game in short else ""
        what = f"{day(on)}{f' {at}' if at else ''}, {counted(pitches, 'pitch', 'pitches')}"
        lines.append(f"• {what}: {listed(arms) or 'nobody'}{missing}")
    if answer.past:
        lines.append(f"Not planned, in the past already: {starts(answer.past)}.")
    if answer.not_cleared:
        left_out = listed(list(map(safe, answer.not_cleared)))
        lines.append(f"Left out, on hold, not cleared or limited by a clinician: {left_out}.")
    lines += [f"Left out: {safe(names[who])} ({safe(reason)})." for who, reason in found.left_out]
    if found.gap:
        lines.append(f"A better plan may exist (within {percent(found.gap)}); time ran out.")
    return sentences([*lines, f"{RULES_GOVERN} {COACH_DECIDES}"])
