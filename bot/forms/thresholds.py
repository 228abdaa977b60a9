"""The form with every threshold of a team or of one pitcher: value, default and meaning."""

from collections import Counter
from collections.abc import Mapping, Sequence
from typing import Any

from slack_sdk.models.blocks import Block
from sqlmodel import Session, col, select

from bot.forms import inputs
from bot.forms.form import Carried, Filled, Form, FormError, Next, Setting, modal
from bot.forms.written import write_line
from bot.wording import forms as say
from bot.wording import settings as setting_words
from bot.wording import thresholds as words
from core.alerts.thresholds import DEFAULTS, THRESHOLDS, Key, Threshold
from core.ledger import Notice
from core.ledger.by_hand import ByHandError, Hand, Refusal
from core.ledger.dictation import name_of
from core.ledger.settings import history_of, limits_in
from core.ledger.threshold_sheet import ThresholdSheet, threshold_sheet, whose_thresholds
from core.model import Pitcher, PitcherTeam, Team, ThresholdSetting, key
from core.reading.settings import valued

NAME = "thresholds"
#: The longest value that is typed: "standard".
LONGEST = 20
#: An option's value is a team, or a team and one of its pitchers.
_BETWEEN = "/"


def _view(hand: Hand, carried: Carried) -> dict[str, Any] | None:
    """The sheet of whom the button names; else the choice of one."""
    if carried.get("team") is not None:
        pitcher = carried.get("pitcher")
        return _sheet_view(hand, int(carried["team"]), int(pitcher) if pitcher else None)
    options = [
        one
        for whose in whose_thresholds(hand)
        for one in [
            (str(key(whose.team)), say.whole_team(whose.team.name)),
            *((f"{key(whose.team)}{_BETWEEN}{arm.pitcher_id}", arm.name) for arm in whose.arms),
        ]
    ][:100]
    if not options:
        return None
    return modal(NAME, {}, [inputs.choice("whose", say.FIELDS["whose"], options, options[0][0])])


def _sheet_view(hand: Hand, team_id: int, pitcher_id: int | None) -> dict[str, Any] | None:
    sheet = threshold_sheet(hand, team_id, pitcher_id)
    if sheet is None:
        return None
    carried = {
        "team": team_id,
        "pitcher": pitcher_id,
        # What was shown, so that only what was changed here is saved.
        "was": {row.key: words.plain_value(sheet.limits[row.key]) for row in THRESHOLDS},
    }
    whom = sheet.arm.name if sheet.arm is not None else say.whole_team(sheet.team.name)
    blocks: list[Block] = [inputs.note(words.form_note(whom), "note")]
    blocks += [_input(row, sheet) for row in THRESHOLDS]
    return modal(NAME, carried, blocks)


def _input(row: Threshold, sheet: ThresholdSheet) -> Block:
    return inputs.text(
        _block(row.key),
        words.field(row),
        words.plain_value(sheet.limits[row.key]),
        most=LONGEST,
        hint=words.hint(row, sheet.by_default[row.key], of_team=sheet.arm is not None),
    )


def _block(name: Key) -> str:
    return name.replace(" ", "_")


def _save(hand: Hand, filled: Filled) -> list[Notice]:
    if "whose" in filled.values:
        team, _, pitcher = (inputs.read_choice(filled.values, "whose") or "").partition(_BETWEEN)
        view = _sheet_view(hand, int(team), int(pitcher) if pitcher else None) if team else None
        if view is None:
            raise ByHandError(Refusal.NOT_ALLOWED, "whose")
        raise Next(view)
    carried = filled.carried
    sheet = threshold_sheet(hand, int(carried["team"]), carried["pitcher"])
    if sheet is None:
        raise ByHandError(Refusal.NOT_ALLOWED)
    changed = _changed(filled, carried["was"])
    if not changed:
        return []
    whom = f" for {name_of(sheet.crew, sheet.arm)}" if sheet.arm is not None else ""
    text = "\n".join(f"set {name} {value}{whom}" for name, value in changed.items())
    return write_line(hand, filled, text, key(sheet.team))


def _changed(filled: Filled, was: Mapping[str, str]) -> dict[Key, str]:
    """What is not as it was shown, as it would be typed; an empty input is the default.

    Raises `FormError` with every input that cannot be taken.
    """
    changed: dict[Key, str] = {}
    wrong: dict[str, str] = {}
    for row in THRESHOLDS:
        typed = inputs.read_text(filled.values, _block(row.key)) or "default"
        if typed.casefold() == was[row.key].casefold():
            continue
        if valued(row, "", typed).unclear:
            wrong[_block(row.key)] = words.not_taken(row, typed)
        changed[row.key] = typed
    if wrong:
        raise FormError(*next(iter(wrong.items())), wrong)
    return changed


def _now(session: Session, team: Team) -> str:
    """How many thresholds are not at their defaults, for the team and for single pitchers."""
    rows = history_of(session, key(team))
    limits = limits_in(rows, None)
    return setting_words.thresholds(
        sum(limits[name] != DEFAULTS[name] for name in DEFAULTS), _own(session, team, rows)
    )


def _own(session: Session, team: Team, rows: Sequence[ThresholdSetting]) -> dict[str, int]:
    """By name, how many thresholds are set for pitchers of the team themselves."""
    newest = {(row.pitcher_id, row.key): row for row in rows if row.pitcher_id is not None}
    numbers = Counter(whose for (whose, _), row in newest.items() if not row.is_default)
    if not numbers:
        return {}
    names = session.exec(
        select(Pitcher.id, Pitcher.name)
        .join(PitcherTeam, col(PitcherTeam.pitcher_id) == col(Pitcher.id))
        .where(PitcherTeam.team_id == key(team), col(Pitcher.id).in_(numbers))
        .order_by(col(Pitcher.name))
    )
    return {name: numbers[pitcher_id or 0] for pitcher_id, name in names}


SETTING = Setting(setting_words.THRESHOLDS, _now)
FORM = Form(NAME, _view, _save, {"": _block(THRESHOLDS[0].key)}, SETTING)
