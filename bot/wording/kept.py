"""A record as a whole, as its people read it: at a glance, what is kept, how it is deleted."""

from bot.wording.asked import closing, outing, today_of
from bot.wording.words import counted, day, listed, percent, safe, sentences
from core.ledger.asked import DataAnswer, DeleteAnswer, Glance, KeptOf, StatsAnswer

NOTHING_YET = "No outing is on record yet. Days without a line are unknown, not days off."


def stats(answer: StatsAnswer) -> str:
    """The rest of today first, then the last outings and the season."""
    told = [_glance(one, answer.own) for one in answer.glances]
    return sentences([*told, closing([one.today for one in answer.glances])])


def _glance(one: Glance, own: bool) -> str:
    name = "Your log" if own else safe(one.today.pitcher.name)
    return sentences(
        [f"*{name}*", today_of(one.today), *(f"• {outing(row)}" for row in one.last), _season(one)]
    )


def _season(one: Glance) -> str:
    if not one.outings:
        return NOTHING_YET
    share = one.mix.share
    mix = (
        f" Breaking balls this season: {one.mix.breaking} of {one.mix.typed} ({percent(share)})."
        if share is not None
        else ""
    )
    return f"{counted(one.outings, 'outing')} in all.{mix}"


def data(answer: DataAnswer) -> str:
    """What is stored, who reads it, and how it is deleted."""
    return sentences(_kept(one, answer.own) for one in answer.kept)


def _kept(one: KeptOf, own: bool) -> str:
    name = safe(one.pitcher.name)
    since = f" since {day(one.since)}" if one.since is not None else ""
    stored = listed(
        [
            "name and date of birth",
            f"{counted(one.outings, 'outing')}{since}",
            *([counted(one.reports, "arm report")] if one.reports else []),
            "the lines behind them",
        ]
    )
    coaches = f"the coaches of {listed([safe(team) for team in one.teams])}"
    readers = [
        *(["you"] if own else [name] if one.pitcher.person_id is not None else []),
        *map(safe, one.guardians),
        coaches,
    ]
    delete = " “delete my data” deletes it." if one.may_delete else ""
    return (
        f"About {'you' if own else name} I keep: {stored}. Only {listed(readers)} can ask me for "
        f"it.{delete}"
    )


def how_to_delete(answer: DeleteAnswer) -> str:
    """What to press, or whom to ask."""
    if answer.mine:
        names = listed([safe(name) for _id, name in answer.mine])
        return (
            f"Nothing is deleted yet. The button says what goes, and I ask once more before I "
            f"delete the record of {names}. To take back one line only, type “undo”."
        )
    if answer.guardians:
        whom = listed([safe(name) for name in answer.guardians], last="or")
        return (
            f"Nothing was deleted. Until you are 18, {whom} can have your record deleted: they "
            "type “delete my data” to me. To take back one line only, type “undo”."
        )
    if answer.is_staff:
        return (
            "Nothing was deleted. A guardian (the pitcher from 18 on) can have a record deleted: "
            "they type “delete my data” to me. To take back one line, type “undo”."
        )
    return (
        "Nothing was deleted. A guardian can have your record deleted; none is on file, so please "
        "ask a coach to add one. To take back one line only, type “undo”."
    )


def delete(name: str) -> str:
    """The label of the button that leads to the deletion."""
    return f"Delete {safe(name)}'s record"
