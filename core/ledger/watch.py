"""Alerts on the record: what stands is compared with what is stored, in the line's transaction."""

from collections.abc import Callable, Collection, Iterable, Sequence
from dataclasses import dataclass
from datetime import date, datetime
from functools import partial
from typing import Any
from zoneinfo import ZoneInfo

from sqlalchemy import BindParameter, bindparam
from sqlmodel import Session, col, func, select

from core.alerts import (
    Changes,
    Crossing,
    Felt,
    Key,
    Known,
    Pitched,
    Record,
    YearCap,
    compare,
    crossings,
)
from core.alerts.crossings import WINDOWS
from core.ledger.alert_notices import notices_of
from core.ledger.binding import books_at_hand, books_for
from core.ledger.history import standing_outings, thrower_of
from core.ledger.logged import Logged
from core.ledger.notices import Notice
from core.ledger.of_line import OfLine
from core.ledger.people import teams_of
from core.ledger.settings import limits_in, watched_by
from core.model import (
    Alert,
    AlertState,
    Feeling,
    Outing,
    PainReport,
    Pitcher,
    PitcherTeam,
    Season,
    SeasonKind,
    Team,
    ThresholdSetting,
    key,
)
from core.rest import RestError, year_of_innings
from core.rulebooks import RuleBookError
from core.store.held import locks_rows
from core.store.together import Together

HURTS = frozenset({Feeling.PAIN, Feeling.SORE})
SEASONS = frozenset({SeasonKind.IN_SEASON, SeasonKind.FALL})


def watch_line(session: Session, rows: OfLine, now: datetime) -> list[Notice]:
    """Look again at every pitcher whom a line says something about, or whose thresholds it set."""
    pitchers = watched_by(session, rows.settings) | rows.arms
    return [
        notice
        for pitcher_id in sorted(pitchers)
        for notice in _watch_one(session, pitcher_id, rows.teams_of, now)
    ]


def watch_team(session: Session, team: Team, now: datetime) -> list[Notice]:
    """Look again at every pitcher of a team, for what moves with the calendar alone.

    Calling it again changes nothing; once a local day is enough.
    """
    pitchers = (
        select(Pitcher.id)
        .join(PitcherTeam, col(PitcherTeam.pitcher_id) == col(Pitcher.id))
        .where(PitcherTeam.team_id == key(team), col(Pitcher.consent_on).is_not(None))
        .order_by(col(Pitcher.id))
    )
    return [
        notice
        for pitcher_id in session.exec(pitchers).all()
        for notice in _watch_in(session, _locked(session, pitcher_id), team, now)
    ]


def watch(session: Session, pitcher_ids: Iterable[int], now: datetime) -> list[Notice]:
    """Raise, bring up to date and take back the alerts of these pitchers; `now` is UTC."""
    teams = partial(teams_of, session)
    return [
        notice
        for pitcher_id in sorted(pitcher_ids)
        for notice in _watch_one(session, pitcher_id, teams, now)
    ]


def _watch_one(
    session: Session,
    pitcher_id: int,
    teams: Callable[[Collection[int]], list[Team]],
    now: datetime,
) -> list[Notice]:
    pitcher = _locked(session, pitcher_id)
    found = teams({pitcher_id})
    return [notice for team in found for notice in _watch_in(session, pitcher, team, now)]


def _locked(session: Session, pitcher_id: int | None) -> Pitcher:
    """The pitcher, whose alerts no other transaction looks at until this one ends."""
    # Without the key: rows that refer to him may be written meanwhile, or two lines deadlock.
    lock: Any = {"key_share": True} if locks_rows(session) else None
    return session.get_one(Pitcher, pitcher_id, with_for_update=lock)


@dataclass(frozen=True, slots=True)
class _Watched:
    """One pitcher on one team, with what the thresholds go by."""

    pitcher: Pitcher
    team: Team
    record: Record
    limits: dict[Key, int | None]
    now: datetime
    today: date


_TEAM: BindParameter[Any] = bindparam("team")
_PITCHER: BindParameter[Any] = bindparam("pitcher")
_WATCHED = Together(
    (Season, col(Season.team_id) == _TEAM),
    (
        PainReport,
        (col(PainReport.pitcher_id) == _PITCHER) & col(PainReport.withdrawn_at).is_(None),
    ),
    (
        ThresholdSetting,
        (col(ThresholdSetting.team_id) == _TEAM) & col(ThresholdSetting.withdrawn_at).is_(None),
    ),
    (Alert, (col(Alert.team_id) == _TEAM) & (col(Alert.pitcher_id) == _PITCHER)),
)


def _watch_in(session: Session, pitcher: Pitcher, team: Team, now: datetime) -> list[Notice]:
    today = now.astimezone(ZoneInfo(team.time_zone)).date()
    found_rows = _WATCHED.rows(session, team=key(team), pitcher=key(pitcher))
    seasons, reports, settings, rows = (sorted(each, key=key) for each in found_rows)
    watched = _Watched(
        pitcher=pitcher,
        team=team,
        record=_record(session, pitcher, team, today, seasons, reports),
        limits=limits_in(settings, key(pitcher)),
        now=now,
        today=today,
    )
    known = [
        Known(key(row), Key(row.key), row.episode, row.state == AlertState.STANDING) for row in rows
    ]
    found = crossings(watched.record, watched.limits, watched.today)
    changed = _apply(session, watched, {key(row): row for row in rows}, compare(known, found))
    session.flush()
    return [
        notice
        for alert, is_new in changed
        for notice in notices_of(session, alert, pitcher, team, now, is_new=is_new)
    ]


def _apply(
    session: Session, watched: _Watched, rows: dict[int, Alert], changes: Changes
) -> list[tuple[Alert, bool]]:
    """Store the changes; gives the alerts whose message changes, and whether each is new."""
    changed = [(_raise(session, watched, crossing), True) for crossing in changes.raised]
    for row_id, crossing in changes.standing:
        if _bring_up(rows[row_id], crossing, watched.now):
            changed.append((rows[row_id], False))
    for row_id in changes.gone:
        row = rows[row_id]
        row.state, row.changed_at = _gone(row, watched), watched.now
        changed.append((row, False))
    session.add_all(row for row, _ in changed)
    return changed


def _raise(session: Session, watched: _Watched, crossing: Crossing) -> Alert:
    row = Alert(
        workspace_id=watched.team.workspace_id,
        team_id=key(watched.team),
        pitcher_id=key(watched.pitcher),
        key=crossing.key,
        episode=crossing.episode,
        figures=_figures(crossing),
        outings=list(crossing.found.outings),
        raised_on=watched.today,
        raised_at=watched.now,
        changed_at=watched.now,
    )
    session.add(row)
    session.flush()
    return row


def _bring_up(row: Alert, crossing: Crossing, now: datetime) -> bool:
    """Give a known alert the figures of now; whether that changes anything."""
    figures, outings = _figures(crossing), list(crossing.found.outings)
    if (row.state, row.figures, row.outings) == (AlertState.STANDING, figures, outings):
        return False
    row.state, row.figures, row.outings = AlertState.STANDING, figures, outings
    row.changed_at = now
    return True


def _figures(crossing: Crossing) -> dict[str, Any]:
    return dict(crossing.found.as_json())


def _gone(row: Alert, watched: _Watched) -> AlertState:
    """Whether an alert came back by itself, or by the record as it is now never held."""
    then = crossings(watched.record, watched.limits, row.raised_on)
    windowed = Key(row.key) in WINDOWS
    held = any(one.key == row.key and (windowed or one.episode == row.episode) for one in then)
    return AlertState.RETURNED if held else AlertState.TAKEN_BACK


def _record(
    session: Session,
    pitcher: Pitcher,
    team: Team,
    today: date,
    seasons: Sequence[Season],
    reports: Sequence[PainReport],
) -> Record:
    outings = standing_outings(session, key(pitcher))
    return Record(
        outings=tuple(_pitched(row) for row in outings),
        felt=tuple(
            Felt(row.on, row.feeling in HURTS)
            for row in sorted(reports, key=lambda one: (one.on, key(one)))
            if row.feeling in HURTS or row.feeling == Feeling.TIRED
        ),
        seasons=tuple((one.starts_on, one.ends_on) for one in seasons if one.kind in SEASONS),
        build_ups=tuple(
            (one.starts_on, one.ends_on) for one in seasons if one.kind == SeasonKind.BUILD_UP
        ),
        year_cap=_year_cap(session, pitcher, outings, today),
        # Silence counts in season alone: else nobody asks when the record began.
        begins=_begins(session, team) if seasons else None,
    )


_OF_TEAM = select(PitcherTeam.pitcher_id).where(col(PitcherTeam.team_id) == _TEAM)
_FIRST = select(func.min(Outing.on)).where(
    col(Outing.pitcher_id).in_(_OF_TEAM), col(Outing.withdrawn_at).is_(None)
)


def _begins(session: Session, team: Team) -> date | None:
    """The first day of which anybody of the team has an outing."""
    return session.exec(_FIRST, params={"team": key(team)}).one()


def _year_cap(
    session: Session, pitcher: Pitcher, outings: Iterable[Logged], today: date
) -> YearCap | None:
    """The lowest cap on a year's innings; none where no innings were counted, or no book tells."""
    if not any(row.outs for row in outings):
        return None
    try:
        binding = books_for(session, pitcher, today, books_at_hand(session))
        cap = year_of_innings(binding, thrower_of(pitcher), today)
    except (RestError, RuleBookError):
        return None  # the answers about rest say why
    return YearCap(cap.outs, cap.book) if cap is not None else None


def _pitched(row: Logged) -> Pitched:
    """An outing as the thresholds see it; while its kind or day waits it is no game."""
    kind = "waiting" if row.waiting else row.kind
    return Pitched(
        row.id,
        row.on,
        kind,
        row.pitches,
        row.breaking,
        row.changeup,
        row.effort,
        row.outs,
        row.caught_outs,
        row.team_id,
    )


def standing_alerts(session: Session, team_id: int, pitcher_id: int | None) -> list[Alert]:
    """The newest alerts of a team or of one pitcher in it, newest first, at most twenty."""
    rows = select(Alert).where(Alert.team_id == team_id)
    if pitcher_id is not None:
        rows = rows.where(Alert.pitcher_id == pitcher_id)
    return list(session.exec(rows.order_by(col(Alert.id).desc()).limit(20)))
