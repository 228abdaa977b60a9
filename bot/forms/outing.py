"""The form for one pitcher's game, or live batting practice."""

from bot.forms.one_outing import Sheet, form_of
from core.audience import Subject

SHEET = Sheet(
    "outing",
    Subject.GAME_COUNTS,
    ("game", "live"),
    ("pitches", "curve", "slider", "changeup", "strikes"),
    has_innings=True,
)
FORM = form_of(SHEET)
