"""An entry in the making."""

from dataclasses import dataclass, field
from datetime import date

from core.reading.board import Board, Claim
from core.reading.entry import Pain

PRACTICE = frozenset({"bullpen", "catch", "live"})


@dataclass(slots=True)
class Draft:
    """An entry in the making. `seen` are the places of its claims."""

    who: tuple[str, ...] = ()
    except_: tuple[str, ...] = ()
    kind: str | None = None
    kind_carried: bool = False  # left out, and the same as before
    kind_beside: bool = False  # its kind stands beside its counts
    open_kind: Claim | None = None
    days: tuple[date, ...] = ()
    label: str | None = None
    opponent: bool = False
    each: bool = False
    plural_kind: bool = False
    not_pitched: bool = False
    after_game: bool = False
    game_sign: bool = False  # the line tells of winning or losing
    clashed: set[str] = field(default_factory=set)
    dated_by_counts: bool = False
    weak_pitches: Claim | None = None
    off: bool = False
    counts: dict[str, int] = field(default_factory=dict)
    claims: list[Claim] = field(default_factory=list)
    pains: list[Pain] = field(default_factory=list)
    no_pain: bool = False
    about: bool = False
    tired: bool | None = None

    def says_something(self) -> bool:
        """Whether it is more than a heading."""
        return bool(
            self.counts
            or self.pains
            or self.no_pain
            or self.off
            or self.tired is not None
            or any(claim.key in ("range", "book", "parts", "running") for claim in self.claims)
        )

    def clashes(self, claim: Claim) -> bool:
        """Whether it holds another value for what the claim counts."""
        return self.counts.get(claim.key, claim.value) != claim.value

    def has_outing(self) -> bool:
        """Whether it has counts or a day off."""
        return bool(self.counts or self.off)


def quote(board: Board, draft: Draft) -> str:
    """The draft's part of the line, as typed."""
    return board.quote(draft.claims[0].first, draft.claims[-1].after)


def strikes_of_what(draft: Draft) -> str:
    """As in "6 for strikes" counts strikes of what was counted last."""
    for claim in reversed(draft.claims[:-1]):
        if claim.key in ("breaking", "curve", "slider"):
            return "breaking_strikes"
        if claim.key == "pitches":
            return "strikes"
    return "strikes"


def told_alike(board: Board, last: Draft, piece: list[Claim]) -> bool:
    """As in "mon pen 20p, tue 25p": day and counts in the same order, the kind left out."""
    before = [claim.key for claim in last.claims]
    now = [claim.key for claim in piece]
    same = before[:2] in (["day", "kind"], ["kind", "day"]) and before[2:] == now[1:]
    same = same or (last.kind_carried and before == now)
    here = board.sentence[last.claims[0].first] == board.sentence[piece[0].first]
    return same and here and piece[0].key == "day" and len(piece) > 1
