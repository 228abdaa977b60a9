"""The forms: one file each, with how it opens and what its submission does."""

from typing import Final

from bot.forms import (
    bullpen,
    catch_play,
    clearance,
    consent_paper,
    delete_record,
    family,
    fix_line,
    game_counts,
    move,
    outing,
    pain,
    pitcher,
    put_right,
    quiet_hours,
    roles,
    roll_call,
    roster,
    roster_paste,
    schedules,
    settings,
    sore_gone,
    team,
    thresholds,
    two_counts,
)
from bot.forms.form import Form

_ALL: Final = (
    put_right.FORM,
    fix_line.FORM,
    outing.FORM,
    bullpen.FORM,
    catch_play.FORM,
    roll_call.FORM,
    game_counts.FORM,
    pain.FORM,
    consent_paper.FORM,
    delete_record.FORM,
    thresholds.FORM,
    schedules.FORM,
    clearance.FORM,
    roles.FORM,
    team.NEW_FORM,
    team.SETTINGS_FORM,
    quiet_hours.FORM,
    roster.FORM,
    roster_paste.FORM,
    pitcher.FORM,
    move.FORM,
    family.FORM,
    sore_gone.FORM,
    two_counts.FORM,
)
#: Every form by its name, which is the callback id of its view.
FORMS: Final[dict[str, Form]] = {form.name: form for form in (*_ALL, settings.menu(_ALL))}
