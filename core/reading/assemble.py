"""Claims to drafts: whose, and which outing.

The line is taken piece by piece (a piece ends at a comma, "and", "then", a full stop). A piece
that names another person, another day, another game or another kind of throwing begins a new
draft; any other piece adds to the draft before it.
"""

from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from datetime import date

from core.reading.board import COUNTS, Board, Claim
from core.reading.entry import Pain, Unread, UnreadReason

_MARKERS = ("who", "day", "label", "kind")


@dataclass(slots=True)
class Draft:
    """An entry in the making. `seen` are the places of its claims."""

    who: tuple[str, ...] = ()
    except_: tuple[str, ...] = ()
    kind: str | None = None
    open_kind: Claim | None = None
    days: tuple[date, ...] = ()
    label: str | None = None
    opponent: bool = False
    each: bool = False
    plural_kind: bool = False
    not_pitched: bool = False
    after_game: bool = False
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


Piece = list[Claim]


def pieces(board: Board) -> list[Piece]:
    """The claims that say something, piece by piece; a piece with two of one marker is cut."""
    found: list[Piece] = []
    last = -1
    for claim in sorted(board.claims, key=lambda one: (one.first, one.after)):
        if claim.key == "no log":
            continue
        if board.piece[claim.first] != last:
            found.append([])
            last = board.piece[claim.first]
        found[-1].append(claim)
    return [part for piece in found for part in _cut(piece)]


def _cut(piece: Piece) -> Iterator[Piece]:
    """Cut "mon pen 20 wed pen 25" before each marker, "20 monday 25 tuesday" after each."""
    for key in ("who", "day", "label", "kind"):
        marks = [i for i, claim in enumerate(piece) if claim.key == key]
        values = {str(piece[i].value) for i in marks}
        if len(values) < 2 or not any(claim.key in COUNTS for claim in piece):
            continue
        if _adjacent(piece, marks):
            continue
        counts_first = next(c.key for c in piece if c.key == key or c.key in COUNTS) in COUNTS
        cuts = [i + 1 for i in marks[:-1]] if counts_first else marks[1:]
        for first, after in zip([0, *cuts], [*cuts, len(piece)], strict=True):
            yield from _cut(piece[first:after])
        return
    yield piece


def _adjacent(piece: Piece, marks: list[int]) -> bool:
    """Whether the markers stand side by side ("mon wed fri"): a list, not two outings."""
    return marks == list(range(marks[0], marks[0] + len(marks)))


class Assembler:
    """Takes pieces in order and builds drafts."""

    def __init__(self, board: Board) -> None:
        self.board = board
        self.heading = Draft()
        self.drafts: list[Draft] = []
        self.unread: list[Unread] = []
        self.names_people = any(claim.key == "who" for claim in board.claims)

    def add(self, piece: Piece) -> None:
        """Start a new draft for the piece, or add to the last one."""
        if self._is_for_all(piece):
            for draft in self.drafts:
                self._put_all(draft, [claim for claim in piece if claim.key != "each"])
            return
        if not self.drafts or self._begins(self.drafts[-1], piece):
            self.drafts.append(self._fresh(piece))
        self._put_all(self.drafts[-1], piece)
        self._note_heading(piece)

    def _put_all(self, draft: Draft, piece: Piece) -> None:
        self._date(draft, piece)
        for claim in piece:
            if (
                claim.value != "everyone"
                or not self._said_people()
                or any(c.key in COUNTS for c in piece)
            ):
                self._put(draft, claim)

    def _is_for_all(self, piece: Piece) -> bool:
        """ "both in the bullpen", "all vs Harlow", "no pain for either", "5 cb each"."""
        keys = {
            claim.key for claim in piece if claim.value != "everyone" or not self._said_people()
        }
        if len(self.drafts) < 2 or "who" in keys or "label" in keys:
            return False
        if any(key in COUNTS for key in keys):
            return "each" in keys and not any(
                d.clashes(c) or c.key in d.counts for d in self.drafts for c in piece
            )
        people = len({draft.who for draft in self.drafts}) > 1
        return bool(keys & {"all", "each"}) or (
            people and bool(keys) and keys <= {"kind", "opponent", "day"}
        )

    def _said_people(self) -> bool:
        """Whether persons were named before ("Leo 30, Max 20. everyone in the pen")."""
        return len({draft.who for draft in self.drafts}) > 1

    def _note_heading(self, piece: Piece) -> None:
        """What stands before a name ("Sat: Tate 62p, Gus 20p") holds for the names that follow."""
        if not self.names_people:
            return
        for claim in piece:
            if claim.key == "who" or claim.key in COUNTS:
                return
            if claim.key == "day" and isinstance(claim.value, date):
                self.heading.days = (claim.value,)
            elif claim.key == "kind":
                self.heading.kind = str(claim.value)
            elif claim.key == "label":
                self.heading.label, self.heading.kind = str(claim.value), "game"
            elif claim.key == "opponent":
                self.heading.opponent = True

    def _fresh(self, piece: Piece) -> Draft:
        """A draft that keeps what a heading before it said, or whose it is."""
        named = any(claim.key == "who" for claim in piece)
        if not self.drafts:
            return Draft()
        if named:
            own_day = any(claim.key == "day" for claim in piece)
            own_kind = any(claim.key == "kind" for claim in piece)
            return Draft(
                days=() if own_day else self.heading.days,
                kind=None if own_kind else self.heading.kind,
                label=self.heading.label,
                opponent=self.heading.opponent,
            )
        last = self.drafts[-1]
        return Draft(who=last.who, days=() if any(c.key == "day" for c in piece) else last.days)

    def _begins(self, current: Draft, piece: Piece) -> bool:
        """Whether the piece is about another person, day, game or kind than the draft."""
        outing = [claim for claim in piece if claim.key in COUNTS or claim.key == "off"]
        clash = any(current.clashes(claim) for claim in outing)
        return any(self._parts_from(current, claim, outing, clash) for claim in piece)

    def _parts_from(self, current: Draft, claim: Claim, outing: list[Claim], clash: bool) -> bool:
        if claim.key == "who":
            other = bool(current.who) and (claim.value not in current.who or len(current.who) > 1)
            if current.each and not current.who:
                return True
            return (other and (current.says_something() or current.not_pitched)) or (
                not current.who and current.has_outing() and bool(outing)
            )
        if claim.key == "label":
            return current.has_outing() and (
                current.label != claim.value or claim.value == "another"
            )
        if not (outing and current.has_outing()):
            return False
        if claim.key == "day":
            other = bool(current.days) and claim.value not in current.days
            return other or clash or current.off
        if claim.key == "off":
            return bool(current.counts)
        return claim.key == "kind" and ((current.kind or claim.value) != claim.value or clash)

    def _put(self, draft: Draft, claim: Claim) -> None:
        draft.claims.append(claim)
        if claim.key in COUNTS or claim.key == "forstrikes":
            self._count(draft, claim)
        elif claim.key == "who":
            self._name(draft, str(claim.value))
        elif claim.key == "except" and isinstance(claim.value, tuple):
            draft.except_ = claim.value
        elif claim.key == "kind":
            draft.kind = draft.kind or str(claim.value)
            draft.plural_kind = draft.plural_kind or self._quote(claim).lower().endswith("ens")
        elif claim.key == "openkind":
            draft.open_kind = claim
        elif claim.key == "label":
            draft.label = str(claim.value)
            if claim.value != "another":
                draft.kind = draft.kind or "game"
        elif claim.key == "opponent":
            draft.opponent = True
        elif claim.key == "off":
            draft.off = True
        elif claim.key == "each":
            draft.each = True
        elif claim.key == "notpitched":
            draft.not_pitched = True
        elif claim.key == "aftergame":
            draft.after_game = True
        elif claim.key == "pain" and isinstance(claim.value, tuple):
            draft.pains.extend(claim.value)
            draft.no_pain = draft.no_pain or not claim.value
        elif claim.key == "nopain":
            draft.no_pain = True
        elif claim.key == "tired":
            draft.tired = bool(claim.value)
        elif claim.key == "unread" and isinstance(claim.value, UnreadReason):
            self.unread.append(Unread(self.board.quote(claim.first, claim.after), claim.value))

    def _name(self, draft: Draft, name: str) -> None:
        if name == "everyone else":
            named = [who for one in self.drafts for who in one.who if one is not draft]
            draft.who, draft.except_ = ("everyone",), tuple(dict.fromkeys(named))
        elif name not in draft.who:
            draft.who = (*draft.who, name)

    def _date(self, draft: Draft, piece: Piece) -> None:
        """The day that stands with the counts is theirs; several side by side are a list."""
        named = [claim for claim in piece if claim.key == "day"]
        days = tuple(dict.fromkeys(c.value for c in named if isinstance(c.value, date)))
        if not days:
            return
        counted = any(claim.key in COUNTS or claim.key == "off" for claim in piece)
        if draft.days and _only_days(draft):
            draft.days = (*draft.days, *(day for day in days if day not in draft.days))
        elif not draft.days or (counted and not draft.dated_by_counts):
            draft.days, draft.dated_by_counts = days, counted
        elif not draft.has_outing() and not counted:
            draft.days = (*draft.days, *(day for day in days if day not in draft.days))
        elif set(days) - set(draft.days) - {self.board.posted.date()}:
            self.unread.append(Unread(self._quote(named[0]), UnreadReason.UNCLEAR_DAY))

    def _count(self, draft: Draft, claim: Claim) -> None:
        assert isinstance(claim.value, int)
        field_name = _strikes_of_what(draft) if claim.key == "forstrikes" else claim.key
        old = draft.counts.get(field_name)
        if field_name == "pitches" and self._yields(draft, claim):
            return
        if field_name in draft.clashed or (old is not None and old != claim.value):
            self.unread.append(Unread(self._quote(claim), UnreadReason.TWO_READINGS))
            draft.clashed.add(field_name)
            draft.counts.pop(field_name, None)
            return
        draft.about = draft.about or claim.about
        draft.counts[field_name] = claim.value

    def _yields(self, draft: Draft, claim: Claim) -> bool:
        """A bare number gives way to a count that says "pitches"; it is then left over."""
        old = draft.counts.get("pitches")
        if old is None or old == claim.value:
            draft.weak_pitches = claim if claim.weak and old is None else None
            return False
        if claim.weak == (draft.weak_pitches is not None):
            return False
        loser = claim if claim.weak else draft.weak_pitches
        assert loser is not None
        if not self._was_running(loser, claim if loser is not claim else None):
            self.board.release(loser)
        if not claim.weak:
            draft.counts["pitches"], draft.weak_pitches = int(str(claim.value)), None
        return True

    def _was_running(self, loser: Claim, winner: Claim | None) -> bool:
        """ "28 in the first, finished with 60": a count of one inning, below the final one."""
        clause = self.board.clause[loser.first]
        inning = any(
            self.board.items[i].symbol in ("ord", "ordword") and self.board.clause[i] == clause
            for i in range(max(0, loser.first - 6), min(len(self.board.items), loser.after + 6))
        )
        less = (
            winner is not None
            and str(loser.value).isdigit()
            and int(str(loser.value)) < int(str(winner.value))
        )
        if inning and less:
            loser.key, loser.value = "no log", "by inning"
        return inning and less

    def _quote(self, claim: Claim) -> str:
        return self.board.quote(claim.first, claim.after)


def _only_days(draft: Draft) -> bool:
    """Whether nothing was said but names and days: "mon, wed and fri ..." goes on."""
    return all(claim.key in ("who", "day") for claim in draft.claims)


def _strikes_of_what(draft: Draft) -> str:
    """ "6 for strikes" counts strikes of what was counted last."""
    for claim in reversed(draft.claims[:-1]):
        if claim.key in ("breaking", "curve", "slider"):
            return "breaking_strikes"
        if claim.key == "pitches":
            return "strikes"
    return "strikes"


def assemble(board: Board) -> tuple[list[Draft], list[Unread]]:
    """All drafts of the line, with what they share, and what was unread."""
    assembler = Assembler(board)
    for piece in pieces(board):
        assembler.add(piece)
    drafts = [draft for draft in assembler.drafts if draft.says_something()]
    unread = assembler.unread
    drafts = _share_each(drafts)
    _share_trailing(drafts)
    if _somebody_unnamed(drafts, board.author):
        unread.append(Unread(quote(board, drafts[0]), UnreadReason.UNCLEAR_PERSON))
    if drafts:
        unread += [
            Unread(quote(board, one), UnreadReason.UNCLEAR_PERSON)
            for one in assembler.drafts
            if one.who and one not in drafts and not one.says_something() and not one.not_pitched
        ]
    several = [one for draft in drafts for one in _multiplied(draft, unread, quote(board, draft))]
    return _merged(several), unread


def _share_each(drafts: list[Draft]) -> list[Draft]:
    """ "pens, 25 each. Finn 6 curves, Otis 5": counts stated for each before the names."""
    if len(drafts) < 2 or drafts[0].who or not drafts[0].each or not all(d.who for d in drafts[1:]):
        return drafts
    shared, *rest = drafts
    for draft in rest:
        draft.counts = shared.counts | draft.counts
        draft.kind = draft.kind or shared.kind
        draft.days = draft.days or shared.days
        draft.opponent = draft.opponent or shared.opponent
    return rest


def _somebody_unnamed(drafts: list[Draft], author: str) -> bool:
    """Whether an adult's line counts for one nobody names beside others who are named."""
    counted = [draft for draft in drafts if draft.counts]
    return author != "pitcher" and any(d.who for d in counted) and not counted[0].who


def _merged(drafts: list[Draft]) -> list[Draft]:
    """A later word on how somebody's arm feels joins what was said of him before."""
    kept: list[Draft] = []
    for draft in drafts:
        earlier = [one for one in kept if one.who == draft.who and draft.who]
        if earlier and _adds_to(earlier[-1], draft):
            earlier[-1].counts.update(draft.counts)
            earlier[-1].pains.extend(draft.pains)
            earlier[-1].no_pain = earlier[-1].no_pain or draft.no_pain
            earlier[-1].tired = draft.tired if draft.tired is not None else earlier[-1].tired
        else:
            kept.append(replace(draft, pains=list(draft.pains), counts=dict(draft.counts)))
    return kept


def _adds_to(earlier: Draft, later: Draft) -> bool:
    """Whether the later draft names no other outing and counts nothing twice."""
    other = any(claim.key in ("day", "label", "kind", "off") for claim in later.claims)
    return not other and not earlier.off and not set(earlier.counts) & set(later.counts)


def quote(board: Board, draft: Draft) -> str:
    """The draft's part of the line, as typed."""
    return board.quote(draft.claims[0].first, draft.claims[-1].after)


def _share_trailing(drafts: list[Draft]) -> None:
    """An opponent named once holds for every person, a day named last of all too."""
    if len({draft.who for draft in drafts}) < 2:
        return
    opponent = any(draft.opponent for draft in drafts)
    last = drafts[-1]
    closing = [claim.key for claim in last.claims if claim.key not in ("nopain", "pain", "tired")]
    for draft in drafts:
        draft.opponent = draft.opponent or opponent
        if closing[-1:] == ["day"]:
            draft.days = draft.days or last.days


def _multiplied(draft: Draft, unread: list[Unread], quote: str) -> Iterator[Draft]:
    """ "mon wed fri 12 spins each" is three, "Cruz and Andre 22 each" is two; counts that several
    share without "each" are unclear.
    """
    several = len(draft.who) > 1 or len(draft.days) > 1
    if several and draft.counts and not (draft.each or draft.plural_kind):
        reason = UnreadReason.UNCLEAR_PERSON if len(draft.who) > 1 else UnreadReason.UNCLEAR_DAY
        unread.append(Unread(quote, reason))
        return
    for who in draft.who or (None,):
        for day in draft.days or (None,):
            yield replace(draft, who=(who,) if who else (), days=(day,) if day else ())
