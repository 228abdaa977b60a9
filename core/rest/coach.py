"""A coach's own lower limits, as one more rule book: the strictest wins, so never a higher one."""

from datetime import date

from core.rest.values import RestError
from core.rulebooks import Band, Cap, Rest, Row, Rule, RuleBook, Window

OWN = "coach"


def coach_limits(
    *,
    pitches_per_day: int | None = None,
    pitches_in_7_days: int | None = None,
    outs_per_day: int | None = None,
    days_after_any_outing: int | None = None,
) -> RuleBook:
    """A rule book of a coach's own limits, to be added to the published ones.

    Counts are pitches, outs and whole calendar days, each 0 or more. Raises RestError when no
    limit is given or one is negative.
    """
    given = (pitches_per_day, pitches_in_7_days, outs_per_day, days_after_any_outing)
    if all(limit is None for limit in given):
        raise RestError("no limit of the coach's own is given: give one, or leave the book out")
    if any(limit is not None and limit < 0 for limit in given):
        raise RestError("a limit of the coach's own is below 0: give 0 or more")
    rules: list[Rule] = [
        *_cap("daily-max", "pitches", Window(span="day"), pitches_per_day),
        *_cap("week-max", "pitches", Window(days=7), pitches_in_7_days),
        *_cap("daily-outs", "outs", Window(span="day"), outs_per_day),
        *_rest(days_after_any_outing),
    ]
    return RuleBook(
        format=1,
        id=OWN,
        title="Coach's limits",
        publisher="the team's coach",
        edition="as set by the coach",
        valid_from=date.min,
        source="the team's settings",
        certainty="set by the coach",
        band=(Band(name="everyone"),),
        rule=tuple(rules),
    )


def _cap(name: str, unit: str, window: Window, most: int | None) -> list[Rule]:
    if most is None:
        return []
    data = {"verb": "cap", "name": name, "unit": unit, "window": window, "max": most}
    return [Cap.model_validate({**data, "cite": "the team's settings", "finish_batter": False})]


def _rest(days: int | None) -> list[Rule]:
    if days is None:
        return []
    row = Row.model_validate({"from": 1, "days": days})
    return [
        Rest(
            verb="rest",
            name="rest",
            unit="days",
            window=Window(span="day"),
            rows=(row,),
            cite="the team's settings",
        )
    ]
