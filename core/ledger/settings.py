"""Thresholds as the staff set them by a line; the line's deletion takes the setting back."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from sqlmodel import Session, col, select

from core.alerts.thresholds import DEFAULTS, Key
from core.audience import Relation
from core.ledger.apply import Change, audit
from core.ledger.crew import Crew
from core.ledger.one_meant import one_meant
from core.ledger.question import Question, QuestionCode
from core.ledger.spoken import spoken
from core.ledger.which_team import ask_which, chosen_team
from core.ledger.who import Arm
from core.model import (
    STAFF_ROLES,
    AuditAction,
    Line,
    Membership,
    PitcherTeam,
    Team,
    ThresholdSetting,
    key,
)
from core.reading.settings import ListOrder, SettingOrder, list_order, setting_orders

CODE = QuestionCode.SETTING_UNCLEAR


@dataclass(frozen=True, slots=True)
class Meant:
    """One order with the teams and the pitcher it is about."""

    order: SettingOrder | ListOrder
    teams: tuple[int, ...] = ()
    arm: Arm | None = None


@dataclass(frozen=True, slots=True)
class Setting:
    """What a line sets or lists, or what stands against it: then nothing of it is done."""

    meant: tuple[Meant, ...] = ()
    question: Question | None = None


def setting_here(session: Session, line: Line, crew: Crew) -> Setting | None:
    """The settings or list in a line, in a direct message or the staff channel; else none."""
    said = spoken(session, line)
    listed = list_order(said)
    orders = setting_orders(said) or ((listed,) if listed is not None else ())
    if not orders or not crew.takes_orders(line):
        return None
    teams = coached_teams(session, crew)
    if not teams:
        return Setting(question=Question(QuestionCode.ONLY_STAFF))
    which = ask_which(CODE, [team for team in crew.teams if key(team) in teams])
    chosen = chosen_team(line, which)
    if chosen is not None:
        teams = {chosen}
    meant: list[Meant] = []
    for order in orders:
        one = _meant(line, order, teams, crew, which)
        if isinstance(one, Question):
            return Setting(question=one)
        meant.append(one)
    return Setting(tuple(meant))


def coached_teams(session: Session, crew: Crew) -> set[int]:
    """The teams that the author coaches; the channel's alone where the line stands in one."""
    rows = select(Membership.team_id).where(
        Membership.person_id == key(crew.person), col(Membership.role).in_(STAFF_ROLES)
    )
    teams = set(session.exec(rows))
    return teams & {key(crew.here)} if crew.here is not None else teams


def _meant(
    line: Line, order: SettingOrder | ListOrder, teams: set[int], crew: Crew, which: Question
) -> Meant | Question:
    arm: Arm | None = None
    if order.who:
        one = one_meant(line, order.who, crew.related(Relation.STAFF))
        if isinstance(one, Question):
            return one
        arm = one
        # A pitcher of another team, named in this one's channel, is no less the author's.
        own = crew.coaches.intersection(crew.teams_of[arm.pitcher_id])
        teams = teams & own or set(own)
    if isinstance(order, SettingOrder):
        if order.unclear:
            return Question(CODE, about=order.unclear, reason=str(order.key))
        if arm is None and len(teams) > 1:
            return which
    return Meant(order, tuple(sorted(teams)), arm)


def set_thresholds(change: Change, setting: Setting, by_person: int) -> None:
    """Put what a line sets on file, one row for each order and team."""
    for meant in setting.meant:
        if isinstance(meant.order, SettingOrder):
            for team_id in meant.teams:
                _set(change, meant.order, team_id, meant.arm, by_person)


def _set(
    change: Change, order: SettingOrder, team_id: int, arm: Arm | None, by_person: int
) -> None:
    pitcher_id = arm.pitcher_id if arm is not None else None
    before = limits_of(change.session, team_id, pitcher_id)[order.key]
    row = ThresholdSetting(
        workspace_id=change.line.workspace_id,
        team_id=team_id,
        pitcher_id=pitcher_id,
        key=order.key,
        value=order.value,
        is_default=order.is_default,
        line_id=key(change.line),
        set_by=by_person,
        set_at=change.at,
    )
    change.session.add(row)
    change.session.flush()
    after = limits_of(change.session, team_id, pitcher_id)[order.key]
    audit(change, row, AuditAction.RECORDED, {"value": before}, {"value": after})


def limits_of(session: Session, team_id: int, pitcher_id: int | None) -> dict[Key, int | None]:
    """Every threshold as it holds in a team: for one pitcher, or for the team at large."""
    return limits_in(history_of(session, team_id), pitcher_id)


def limits_in(rows: Sequence[ThresholdSetting], pitcher_id: int | None) -> dict[Key, int | None]:
    """The same from a team's settings, oldest first."""
    limits = dict(DEFAULTS)
    for whose in (None, pitcher_id) if pitcher_id is not None else (None,):
        newest = {Key(row.key): row for row in rows if row.pitcher_id == whose}
        limits |= {name: row.value for name, row in newest.items() if not row.is_default}
    return limits


def history_of(session: Session, team_id: int) -> list[ThresholdSetting]:
    """What was set in a team and not taken back, oldest first."""
    return settings_of(session, [team_id])[team_id]


def settings_of(session: Session, team_ids: Iterable[int]) -> dict[int, list[ThresholdSetting]]:
    """What was set in each of these teams and not taken back, oldest first."""
    found: dict[int, list[ThresholdSetting]] = {team_id: [] for team_id in team_ids}
    rows = select(ThresholdSetting).where(
        col(ThresholdSetting.team_id).in_(found), col(ThresholdSetting.withdrawn_at).is_(None)
    )
    for row in session.exec(rows.order_by(col(ThresholdSetting.id))):
        found[row.team_id].append(row)
    return found


def pain_threshold(session: Session, pitcher_id: int) -> int:
    """The pain (of 10) from which this arm is put on hold: the lowest of the pitcher's teams."""
    teams = select(PitcherTeam.team_id).where(PitcherTeam.pitcher_id == pitcher_id)
    found = [limits_of(session, team, pitcher_id)[Key.PAIN] for team in session.exec(teams).all()]
    return min((one for one in found if one is not None), default=DEFAULTS[Key.PAIN] or 1)


def set_by_line(session: Session, line: Line) -> list[ThresholdSetting]:
    """The settings of a line, withdrawn ones too."""
    rows = select(ThresholdSetting).where(ThresholdSetting.line_id == key(line))
    return list(session.exec(rows.order_by(col(ThresholdSetting.id))))


def watched_by(session: Session, settings: Iterable[ThresholdSetting]) -> set[int]:
    """The pitchers whose alerts these settings may change."""
    found: set[int] = set()
    for row in settings:
        if row.pitcher_id is not None:
            found.add(row.pitcher_id)
            continue
        of_team = select(PitcherTeam.pitcher_id).where(PitcherTeam.team_id == row.team_id)
        found |= set(session.exec(of_team))
    return found


def listed_here(
    session: Session, line: Line, crew: Crew
) -> list[tuple[ListOrder, Team, Arm | None]]:
    """The lists that a line asks for: of which team each, and of which pitcher."""
    setting = setting_here(session, line, crew)
    return [
        (meant.order, session.get_one(Team, team), meant.arm)
        for meant in (setting.meant if setting is not None else ())
        if isinstance(meant.order, ListOrder)
        for team in meant.teams
    ]
