"""The form for a bullpen."""

from bot.forms.one_outing import Sheet, form_of
from core.audience import Subject

SHEET = Sheet(
    "bullpen",
    Subject.PRACTICE,
    ("bullpen",),
    ("pitches", "curve", "slider", "changeup", "strikes", "effort"),
)
FORM = form_of(SHEET)
