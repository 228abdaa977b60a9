"""What can be wrong with a rule book, or with asking one."""


class RuleBookError(ValueError):
    """A rule book cannot be used: the message says what was wrong and what to change."""


class NotCoveredError(RuleBookError):
    """A book was asked about an age, grade, level or date that it does not cover."""
