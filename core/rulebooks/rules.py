"""The four verbs of a rule book: cap, rest, off and advice."""

from itertools import pairwise
from typing import Annotated, Literal, Self

from pydantic import Field, StringConstraints, model_validator

from core.rulebooks.measure import Code, Condition, Measure, Part

Said = Annotated[str, StringConstraints(strip_whitespace=True, min_length=1)]


class Common(Part):
    """What every rule carries: its name, whom and when it binds, and where it is published."""

    name: Code
    bands: tuple[Said, ...] = ()
    phases: tuple[Code, ...] = ()
    cite: Said
    certainty: str = ""
    note: str = ""


class Cap(Common, Measure):
    """The sum over the window may not pass `max`; 0 bars the unit while the conditions hold."""

    verb: Literal["cap"]
    max: int = Field(ge=0)
    when: tuple[Condition, ...] = ()
    uncounted: Literal["most", "skip"] = "most"
    advice: bool = False


class Row(Part):
    """One row of a rest table: `from` to `to`, both included, owe `days` calendar days."""

    from_: int = Field(alias="from", ge=0)
    to: int | None = Field(None, ge=0)
    days: int = Field(ge=0, le=60)
    cite: str = ""


class Rest(Common, Measure):
    """The sum over the window, up to the day pitched, owes the days of its row."""

    verb: Literal["rest"]
    rows: tuple[Row, ...] = Field(min_length=1)
    when: tuple[Condition, ...] = ()

    @model_validator(mode="after")
    def _rows_are_a_table(self) -> Self:
        if self.rows[0].from_ > 1:
            raise ValueError(f"the first row starts at {self.rows[0].from_}: start it at 1")
        for row in self.rows:
            if row.to is not None and row.to < row.from_:
                raise ValueError(f"row {row.from_} to {row.to} is upside down: swap the two")
        for row, after in pairwise(self.rows):
            _check_neighbours(row, after)
        return self


def _check_neighbours(row: Row, after: Row) -> None:
    """Raise ValueError where two rows leave a gap, overlap, or owe less for more."""
    if row.to is None:
        raise ValueError(f"row from {row.from_} has no end, but another row follows: give it a to")
    if after.from_ != row.to + 1:
        fault = "leave a gap" if after.from_ > row.to + 1 else "overlap"
        raise ValueError(
            f"rows {fault}: after a row up to {row.to} the next starts at {row.to + 1}, "
            f"not at {after.from_}"
        )
    if after.days < row.days:
        raise ValueError(
            f"the row from {after.from_} owes fewer days ({after.days}) than the row before it "
            f"({row.days}): more must never mean less rest"
        )


class Off(Common):
    """Time off within twelve months: from competition or all throwing; reported, not enforced."""

    verb: Literal["off"]
    months: int | None = Field(None, ge=1, le=11)
    weeks: int | None = Field(None, ge=1, le=50)
    of: Literal["competition", "throwing"]
    continuous: bool = False

    @model_validator(mode="after")
    def _one_length(self) -> Self:
        if (self.months is None) == (self.weeks is None):
            raise ValueError("give either months or weeks")
        return self


class Advice(Common):
    """What the publisher advises and no count can decide, such as when breaking pitches begin."""

    verb: Literal["advice"]
    text: Said


Rule = Annotated[Cap | Rest | Off | Advice, Field(discriminator="verb")]
