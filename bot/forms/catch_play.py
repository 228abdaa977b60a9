"""The form for catch play: throws, how many of them were spins, and the effort."""

from bot.forms.one_outing import Sheet, form_of
from core.audience import Subject

SHEET = Sheet("catch_play", Subject.PRACTICE, ("catch",), ("throws", "spins", "effort"))
FORM = form_of(SHEET)
