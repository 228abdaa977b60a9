"""What cannot be: the field it is about, and which rule it goes against."""

from enum import StrEnum


class Wrong(StrEnum):
    """A rule of the roster that an entry goes against."""

    NO_NAME = "no name"
    KNOWN = "known"  # somebody of this name and birth date is on file
    NO_BIRTH_DATE = "no birth date"
    AGE = "age"
    TOO_YOUNG = "too young for an account"
    TAKEN = "account of another pitcher"
    MINOR_WITH_A_ROLE = "minor with a role"
    NO_GUARDIAN = "no guardian"
    OWN_GUARDIAN = "own guardian"
    ON_TEAM = "on the team already"
    NO_TEAM = "no team"
    NO_COACH = "no coach"
    MINOR = "minor"
    NOTHING_TO_DO = "nothing to do"
    TEAM_NAME = "team name"
    CHANNEL = "channel"
    ZONE = "time zone"
    BOOKS = "books"


class RosterError(Exception):
    """Nothing was changed; `field` names the input, `wrong` the rule."""

    def __init__(self, field: str, wrong: Wrong) -> None:
        """Name the input and the rule."""
        super().__init__(f"{field}: {wrong}")
        self.field, self.wrong = field, wrong
