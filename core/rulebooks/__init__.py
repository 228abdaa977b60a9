"""One data file per published rule set, with publisher, edition, source and dates."""

from core.rulebooks.book import AgeRule, Band, Counting, RuleBook, Season
from core.rulebooks.errors import NotCoveredError, RuleBookError
from core.rulebooks.loading import (
    builtin_ids,
    load_books,
    own_ids,
    parse_book,
    read_book,
    template,
)
from core.rulebooks.measure import KINDS, Condition, Measure, Unit, Window
from core.rulebooks.rules import Advice, Cap, Off, Rest, Row, Rule
from core.rulebooks.words import describe

__all__ = [
    "KINDS",
    "Advice",
    "AgeRule",
    "Band",
    "Cap",
    "Condition",
    "Counting",
    "Measure",
    "NotCoveredError",
    "Off",
    "Rest",
    "Row",
    "Rule",
    "RuleBook",
    "RuleBookError",
    "Season",
    "Unit",
    "Window",
    "builtin_ids",
    "describe",
    "load_books",
    "own_ids",
    "parse_book",
    "read_book",
    "template",
]
