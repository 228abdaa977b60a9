"""Alerts for the staff, a guardian or the pitcher, and the lists of alerts and thresholds."""

from datetime import datetime
from zoneinfo import ZoneInfo

from sqlmodel import Session, col, select

from bot.blocks.message import Button, Part
from bot.forms.form import opens
from bot.wording import alerts as say
from bot.wording import buttons as label
from bot.wording import thresholds as say_set
from bot.wording.answers import KIND_NAMES
from bot.wording.words import day, sentences
from core.alerts import Key, threshold
from core.alerts.crossings import WINDOWS
from core.ledger.alert_notices import is_told_with_report, told_together
from core.ledger.audit import recorded
from core.ledger.clearance import arm_status
from core.ledger.settings import history_of, limits_of, set_by_line
from core.ledger.watch import standing_alerts
from core.ledger.who import Arm
from core.model import (
    Alert,
    AlertSeen,
    AlertState,
    Line,
    OutboxMessage,
    Outing,
    Person,
    PitchCaller,
    Pitcher,
    Team,
    ThresholdSetting,
    key,
)
from core.reading.settings import ListOrder

SEEN = "seen"


def alert_parts(session: Session, row: OutboxMessage, now: datetime) -> list[Part]:
    """The message of an alert as it stands now; nothing where there is nothing to say any more."""
    if together := told_together(session, row.slot):
        return _together(session, together, row)
    alert = session.get_one(Alert, int(row.slot.split("/")[1]))
    pitcher = session.get_one(Pitcher, alert.pitcher_id)
    if alert.state == AlertState.TAKEN_BACK:
        return [Part(_taken_back(alert, pitcher, row))] if row.ts else []
    returned = alert.state == AlertState.RETURNED
    if returned and not row.ts:
        return []
    told = _told(session, alert, pitcher)
    if row.person_id is None:
        names = seen_by(session, alert)
        text = say.to_staff(told, _outings(session, alert), names, returned=returned)
        button = Button(say.SEEN, SEEN, {"alerts": [key(alert)]})
        return [Part(text), *([] if names else [Part("", (button,))])]
    if row.person_id == pitcher.person_id:
        today = now.astimezone(ZoneInfo(session.get_one(Team, alert.team_id).time_zone)).date()
        if arm_status(session, pitcher, today).bars_pitching:
            return [Part(say.on_hold_for_pitcher())] if row.ts else []
        said_already = alert.key == Key.GAME_BREAKING and _in_mix(session, alert)
        return [] if said_already else [Part(say.to_pitcher(told, returned=returned))]
    if not row.ts and is_told_with_report(session, alert, row.person_id):
        return []
    return [Part(say.to_guardian(told, returned=returned))]


def _together(session: Session, alerts: list[Alert], row: OutboxMessage) -> list[Part]:
    """One message for several arms: those for whom it holds, and those for whom no longer."""
    told = [_told(session, one, session.get_one(Pitcher, one.pitcher_id)) for one in alerts]
    states = [one.state == AlertState.STANDING for one in alerts]
    if not any(states) and not row.ts:
        return []
    names = seen_by(session, alerts[0])
    text = say.together(list(zip(told, states, strict=True)), names)
    button = Button(say.SEEN, SEEN, {"alerts": [key(one) for one in alerts]})
    return [Part(text), *([] if names else [Part("", (button,))])]


def told_shortly(alert: Alert, pitcher: Pitcher) -> str:
    """An alert in a line, with its figures."""
    by_dugout = pitcher.pitch_caller == PitchCaller.DUGOUT
    told = say.Told(Key(alert.key), pitcher.name, alert.figures, None, by_dugout)
    return say.shortly(told, alert.raised_on)


def _taken_back(alert: Alert, pitcher: Pitcher, row: OutboxMessage) -> str:
    if row.person_id is not None and row.person_id == pitcher.person_id:
        return say.taken_back_for_pitcher()
    return say.taken_back(Key(alert.key), pitcher.name)


def _told(session: Session, alert: Alert, pitcher: Pitcher) -> say.Told:
    outings = [session.get(Outing, outing_id) for outing_id in alert.outings]
    days = [one.on for one in outings if one is not None]
    return say.Told(
        Key(alert.key),
        pitcher.name,
        alert.figures,
        max(days) if days and Key(alert.key) not in WINDOWS else None,
        pitcher.pitch_caller == PitchCaller.DUGOUT,
    )


def _outings(session: Session, alert: Alert) -> list[str]:
    rows = select(Outing).where(col(Outing.id).in_(alert.outings)).order_by(col(Outing.on))
    return [
        say.outing(one.on, one.pitches, one.breaking, KIND_NAMES[one.kind].lower())
        for one in session.exec(rows)
    ]


def _in_mix(session: Session, alert: Alert) -> bool:
    """Whether the pitcher hears of the same game by his mix already: then once is enough."""
    rows = select(Alert).where(
        Alert.pitcher_id == alert.pitcher_id,
        Alert.team_id == alert.team_id,
        Alert.key == Key.MIX,
        Alert.state == AlertState.STANDING,
    )
    return any(set(alert.outings) <= set(one.outings) for one in session.exec(rows))


def seen_by(session: Session, alert: Alert) -> list[str]:
    """The names of those who have seen an alert, in that order."""
    rows = (
        select(Person.name)
        .join(AlertSeen, col(AlertSeen.person_id) == col(Person.id))
        .where(AlertSeen.alert_id == key(alert))
        .order_by(col(AlertSeen.at))
    )
    return list(session.exec(rows))


def settings_said(session: Session, line: Line) -> list[str]:
    """What a line set, as its author reads it; that it was taken back where it was."""
    rows = set_by_line(session, line)
    told = dict.fromkeys(_set_now(session, row) for row in rows if row.withdrawn_at is None)
    if rows and not told:
        return [say_set.TAKEN_BACK]
    return [say_set.confirmed(one) for one in told]


def _set_now(session: Session, row: ThresholdSetting) -> say_set.SetNow:
    whom = session.get_one(Pitcher, row.pitcher_id).name if row.pitcher_id is not None else ""
    entry = recorded(session, row)
    return say_set.SetNow(Key(row.key), whom, entry.before["value"], entry.after["value"])


def list_parts(
    session: Session, order: ListOrder, team: Team, arm: Arm | None, *, of_several: bool
) -> list[Part]:
    """The thresholds or the alerts of a team or of one pitcher; the former with their form."""
    pitcher_id = arm.pitcher_id if arm is not None else None
    whom = arm.name if arm is not None else team.name
    if order.alerts:
        rows = standing_alerts(session, key(team), pitcher_id)
        return [Part(say.listing(whom, [_listed(session, row) for row in rows]))]
    limits = limits_of(session, key(team), pitcher_id)
    of_team = limits_of(session, key(team), None) if arm is not None else None
    changes = [
        _change(session, row, team)
        for row in reversed(history_of(session, key(team)))
        if pitcher_id is None or row.pitcher_id in {None, pitcher_id}
    ]
    form = Button(
        label.thresholds(whom if of_several else ""),
        opens("thresholds"),
        {"team": key(team), "pitcher": pitcher_id},
    )
    listing, most = (say_set.listing, 15) if order.in_full else (say_set.in_short, 3)
    told = say_set.history(changes[:most]) if changes or order.in_full else ""
    return [Part(sentences([listing(whom, limits, of_team), told]), (form,))]


def _listed(session: Session, row: Alert) -> say.Listed:
    told = _told(session, row, session.get_one(Pitcher, row.pitcher_id))
    return say.Listed(row.raised_on, told, row.state, tuple(seen_by(session, row)))


def _change(session: Session, row: ThresholdSetting, team: Team) -> tuple[str, str, str, str]:
    one = threshold(Key(row.key))
    value = "back to its default" if row.is_default else say_set.value(one, row.value)
    whom = f"for {session.get_one(Pitcher, row.pitcher_id).name}" if row.pitcher_id else ""
    when = day(row.set_at.astimezone(ZoneInfo(team.time_zone)).date())
    return when, session.get_one(Person, row.set_by).name, f"{one.key}: {value}", whom
