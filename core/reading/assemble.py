"""Claims to entries: whose, which outing, and what follows from what was said."""

from dataclasses import dataclass, field
from datetime import date

from core.reading.board import Board, Claim
from core.reading.entry import Detail, Entry, Pain, Unread, UnreadReason

COUNTS = (
    "pitches", "breaking", "curve", "slider", "changeup", "fastball", "strikes",
    "breaking_strikes", "outs", "caught_outs", "effort",
)  # fmt: skip


@dataclass(slots=True)
class Draft:
    """An entry in the making."""

    who: str | None = None
    except_: tuple[str, ...] = ()
    kind: str | None = None
    days: tuple[date, ...] = ()
    opponent: bool = False
    counts: dict[str, int] = field(default_factory=dict)
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
            or self.kind == "off"
            or self.tired is not None
        )


def drafts(board: Board) -> tuple[list[Draft], list[Unread]]:
    """Group the claims, in their order, into drafts."""
    claims = sorted(board.claims, key=lambda claim: (claim.first, claim.after))
    out = [Draft()]
    unread: list[Unread] = []
    for at, claim in enumerate(claims):
        if _starts_new(out[-1], claim, claims[at:], board):
            out.append(Draft())
        if claim.key == "unread":
            assert isinstance(claim.value, UnreadReason)
            unread.append(Unread(board.quote(claim.first, claim.after), claim.value))
        else:
            clash = _add(out[-1], claim)
            if clash:
                unread.append(
                    Unread(board.quote(claim.first, claim.after), UnreadReason.TWO_READINGS)
                )
    return _spread_heading(out), unread


def _starts_new(current: Draft, claim: Claim, rest: list[Claim], board: Board) -> bool:
    if claim.key == "who":
        return (
            (current.who is not None
            and claim.value != current.who)
            or (
                current.who is None
                and current.says_something()
                and any(c.key in COUNTS for c in rest)
            )
        )
    if claim.key == "label":
        return current.says_something()
    if claim.key == "day" and current.says_something():
        ahead = [c for c in rest if board.clause[c.first] == board.clause[claim.first]]
        return any(c.key in current.counts for c in ahead)
    if claim.key in ("kind", "pitches") and current.counts:
        same = [c for c in rest if board.clause[c.first] == board.clause[claim.first]]
        kinds = [c for c in same if c.key == "kind"]
        return (
            bool(kinds)
            and current.kind not in (None, kinds[0].value)
            and any(c.key in current.counts for c in same)
        )
    return False


def _add(draft: Draft, claim: Claim) -> bool:
    """Put a claim into a draft; true when it clashes with what is there."""
    if claim.key in COUNTS:
        assert isinstance(claim.value, int)
        old = draft.counts.get(claim.key)
        draft.about = draft.about or claim.about
        if old is not None and old != claim.value:
            return True
        draft.counts[claim.key] = claim.value
    elif claim.key == "who":
        draft.who = str(claim.value)
    elif claim.key == "except":
        draft.except_ = claim.value  # type: ignore[assignment]  # the claim's maker gives names
    elif claim.key == "kind":
        if draft.kind is None:
            draft.kind = str(claim.value)
    elif claim.key == "label":
        draft.kind = "game"
    elif claim.key == "opponent":
        draft.opponent = True
    elif claim.key == "day":
        assert isinstance(claim.value, date)
        draft.days = (claim.value,)
    elif claim.key == "pain":
        draft.pains.extend(claim.value)  # type: ignore[arg-type]  # the claim's maker gives pains
    elif claim.key == "nopain":
        draft.no_pain = True
    elif claim.key == "tired":
        draft.tired = bool(claim.value)
    return False


def _spread_heading(found: list[Draft]) -> list[Draft]:
    """A heading before the first name, or an opponent after the last, holds for all."""
    if len(found) > 1 and not found[0].says_something():
        heading, *found = found
        for draft in found:
            draft.kind = draft.kind or heading.kind
            draft.days = draft.days or heading.days
            draft.opponent = draft.opponent or heading.opponent
    if len({draft.who for draft in found}) > 1:
        for name in ("days", "kind", "opponent"):
            for draft in found:
                if not getattr(draft, name):
                    setattr(draft, name, getattr(found[0], name) or getattr(found[-1], name))
    return [draft for draft in found if draft.says_something()]


def entry(draft: Draft, posted: date) -> tuple[Entry, list[Unread]]:
    """A draft as an entry, with what follows (the sum of breaking balls, the kind)."""
    counts = dict(draft.counts)
    unread: list[Unread] = []
    if "curve" in counts or "slider" in counts:
        counts.setdefault("breaking", counts.get("curve", 0) + counts.get("slider", 0))
    _check(counts, unread)
    kind = draft.kind
    if kind is None and (draft.opponent or "outs" in counts):
        kind = "game"
    day = draft.days[0] if draft.days and draft.days[0] != posted else None
    pain = tuple(draft.pains) if draft.pains else () if draft.no_pain else None
    return Entry(
        who=draft.who, except_=draft.except_, kind=kind, on=day, pain=pain, about=draft.about,
        tired=draft.tired, **counts,
    ), unread  # fmt: skip


def _check(counts: dict[str, int], unread: list[Unread]) -> None:
    """Take out counts that cannot be."""
    total = counts.get("pitches")
    if total is None:
        return
    for name in ("breaking", "strikes", "fastball", "changeup"):
        value = counts.get(name)
        if value is not None and value > total:
            detail = Detail(name, value, "pitches", total)
            unread.append(Unread(f"{value} of {total}", UnreadReason.IMPOSSIBLE, detail))
            for key in {name, "pitches", *(("curve", "slider") if name == "breaking" else ())}:
                counts.pop(key, None)
            return
