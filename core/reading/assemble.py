"""Claims to drafts: whose, and which outing.

The line is taken piece by piece (a piece ends at a comma, "and", "then", a full stop). A piece
that names another person, another day, another game or another kind of throwing begins a new
draft; any other piece adds to the draft before it.
"""

from dataclasses import dataclass
from datetime import date

from core.reading.board import COUNTS, Board, Claim
from core.reading.draft import PRACTICE, Draft, told_alike
from core.reading.entry import Unread, UnreadReason
from core.reading.filling import Filling
from core.reading.groups import TYPES
from core.reading.in_order import in_order, sums_over_all
from core.reading.pieces import Piece, heads_days, heads_names, pieces
from core.reading.together import bring_together

_OF_THE_ARM = frozenset({"day", "pain", "nopain", "tired", "severity", "site"})


def assemble(board: Board) -> tuple[list[Draft], list[Unread]]:
    """All drafts of the line, with what they share, and what was unread."""
    assembler = Assembler(board)
    for piece in pieces(board):
        assembler.add(piece)
    drafts = bring_together(board, assembler.drafts, assembler.unread)
    return drafts, assembler.unread


@dataclass(slots=True)
class Heading:
    """What stands before the names or outings that it holds for."""

    days: tuple[date, ...] = ()
    kind: str | None = None
    label: str | None = None
    opponent: bool = False


class Assembler:
    """Takes pieces in order and builds drafts."""

    def __init__(self, board: Board) -> None:
        self.board = board
        self.heading = Heading()
        self.drafts: list[Draft] = []
        self.unread: list[Unread] = []
        self.filling = Filling(board, self.drafts, self.unread)
        self.headed = False  # by a line over the names that follow
        self.names_people = any(claim.key == "who" for claim in board.claims)

    def add(self, piece: Piece) -> None:
        """Start a new draft for the piece, or add to the last one."""
        if self.names_people and self.drafts and heads_names(self.board, piece):
            self._head_anew(piece)
            return
        if len(self.drafts) > 1 and self._tells_of_all(piece):
            return
        lists = [claim for claim in piece if claim.key == "list"]
        if lists and len(lists) < len(piece):
            self.add([claim for claim in piece if claim.key != "list"])
        if lists:
            fitting = [claim for claim in lists if in_order(self.drafts, claim)]
            if len(fitting) < len(lists):
                self._ask(piece)
            return
        earlier = self._same_game(piece) or self._same_day(piece)
        if earlier is not None:
            self._put_all(earlier, piece)
            return
        if self._off_of_whom(piece):
            self._ask(piece)
            return
        if not self.drafts or self.headed or self._begins(self.drafts[-1], piece):
            self.drafts.append(self._fresh(piece))
            self.headed = False
        elif not self.drafts[-1].has_outing():
            self._take_own_kind(self.drafts[-1], piece)
        self._put_all(self.drafts[-1], piece)
        self._note_heading(piece)

    def _tells_of_all(self, piece: Piece) -> bool:
        """Whether the piece was of all drafts: put into them, or asked about."""
        if self._is_for_all(piece):
            for draft in self.drafts:
                self._put_all(draft, [claim for claim in piece if claim.key != "each"])
            return True
        if self._counts_for_all_but_clashes(piece):
            self._ask(piece)
            return True
        if self._types_of_two_games(piece):
            return True
        of_all = sums_over_all(self.board, self.drafts, piece)
        if of_all is False:
            self._ask(piece)
        return of_all is not None

    def _take_own_kind(self, draft: Draft, piece: Piece) -> None:
        """As in "long toss then 30 pitch pen": the counts are of the kind beside them."""
        kinds = {str(claim.value) for claim in piece if claim.key == "kind"}
        counted = any(claim.key in COUNTS for claim in piece)
        if counted and draft.kind in PRACTICE and len(kinds) == 1 and kinds <= PRACTICE:
            draft.kind, draft.kind_beside = kinds.pop(), True

    def _types_of_two_games(self, piece: Piece) -> bool:
        """As in "21 and 34 pitches, no curves": none in either; "4 curves" of which is asked.

        Whether the piece is settled here: it tells only types, after outings told by pitches alone.
        """
        told = self.drafts[-2:]
        if len(told) < 2 or (told[0].who, told[0].kind) != (told[1].who, told[1].kind):
            return False
        if not all(claim.key in TYPES for claim in piece):
            return False
        pitches = [[c for c in draft.claims if c.key == "pitches"] for draft in told]
        alone = all({*draft.counts} == {"pitches"} for draft in told)
        apart = self.board.clause[piece[0].first] != self.board.clause[told[1].claims[-1].first]
        if not (alone and apart and all(len(one) == 1 for one in pitches)):
            return False
        first, second = (one[0].first for one in pitches)
        none = all(claim.value == 0 for claim in piece)
        if none and self.board.clause[first] == self.board.clause[second]:
            for draft in told:
                self._put_all(draft, piece)
        else:
            self._ask(piece)
        return True

    def _ask(self, piece: Piece) -> None:
        quote = self.board.quote(piece[0].first, piece[-1].after)
        self.unread.append(Unread(quote, UnreadReason.TWO_READINGS))

    def _same_game(self, piece: Piece) -> Draft | None:
        """As in "18 and 24, 2 curves in the first game": the outing of that game, told before."""
        labels = [claim.value for claim in piece if claim.key == "label"]
        keys = {claim.key for claim in piece}
        if len(labels) != 1 or labels[0] == "another" or "who" in keys:
            return None
        found = [draft for draft in self.drafts[:-1] if draft.label == labels[0]]
        fits = len(found) == 1 and not any(found[0].clashes(claim) for claim in piece)
        return found[0] if fits else None

    def _same_day(self, piece: Piece) -> Draft | None:
        """As in "fri 21 p, sun 37 p. no pain friday": the arm after the outing of that day."""
        days = [claim.value for claim in piece if claim.key == "day"]
        if len(days) != 1 or not {claim.key for claim in piece} <= _OF_THE_ARM:
            return None
        found = [draft for draft in self.drafts if draft.days == tuple(days) and draft.counts]
        return found[0] if len(found) == 1 and found[0] is not self.drafts[-1] else None

    def _put_all(self, draft: Draft, piece: Piece) -> None:
        self.filling.put_days(draft, piece)
        for claim in piece:
            if (
                claim.value != "everyone"
                or not self._said_people()
                or any(c.key in COUNTS for c in piece)
            ):
                self.filling.put(draft, claim)

    def _is_for_all(self, piece: Piece) -> bool:
        """As in "both in the bullpen", "all vs Harlow", "no pain for either", "5 cb each"."""
        said_people = self._said_people()
        keys = {claim.key for claim in piece if claim.value != "everyone" or not said_people}
        if "who" in keys or "label" in keys:
            return False
        everyone = any(claim.value == "everyone" for claim in piece)
        people = len({draft.who for draft in self.drafts}) > 1
        if any(key in COUNTS for key in keys):
            shared = bool(keys & {"all", "each"}) or (people and self._afterthought(piece))
            return shared and not any(
                d.clashes(c) or c.key in d.counts for d in self.drafts for c in piece
            )
        return bool(keys & {"all", "each"}) or (
            people and bool(keys) and (everyone or keys <= {"kind", "opponent", "day"})
        )

    def _afterthought(self, piece: Piece) -> bool:
        """As in "Leo 15p, Max 12p. no breaking balls": a sentence that only counts none."""
        counts = [claim for claim in piece if claim.key in COUNTS]
        sentence = self.board.sentence[piece[0].first]
        if not self.drafts[-1].claims:
            return False
        alone = not any(
            self.board.sentence[c.first] == sentence and (c.key in COUNTS or c.key == "who")
            for c in self.drafts[-1].claims
        )
        return alone and all(claim.value == 0 for claim in counts)

    def _counts_for_all_but_clashes(self, piece: Piece) -> bool:
        """As in "Leo 30p 2cb, Max 20p, both 4 cb": then what are the 2?"""
        keys = {claim.key for claim in piece}
        if keys.isdisjoint(("all", "each")):
            return False
        return (
            any(key in COUNTS for key in keys)
            and not keys & {"who", "label", "day", "kind"}
            and len({draft.who for draft in self.drafts if draft.counts}) > 1
        )

    def _said_people(self) -> bool:
        """Whether persons were named before ("Leo 30, Max 20. everyone in the pen")."""
        return len({draft.who for draft in self.drafts}) > 1

    def _note_heading(self, piece: Piece) -> None:
        """What stands before a name ("Sat: Tate 62p, Gus 20p") holds for the names that follow."""
        if not self.names_people:
            kinds = [str(claim.value) for claim in piece if claim.key == "kind"]
            if heads_days(self.board, piece):
                self.heading.kind = kinds[0]
            if kinds and not self.drafts[-1].has_outing() and len(self.drafts) == 1:
                self.heading.kind = kinds[0]
            return
        keys = {claim.key for claim in piece}
        if "who" not in keys and keys & COUNTS and self.drafts[-1].who:
            return  # "Leo pen 20, mon catch 30, Max 22": Leo's catch, and no heading
        for claim in piece:
            if claim.key == "who" or claim.key in COUNTS:
                return
            if claim.key == "day" and isinstance(claim.value, date):
                before = self.drafts[-1]
                of_all = before.days if not (before.who or before.counts) else ()
                self.heading.days = of_all or (claim.value,)
            elif claim.key == "kind" and not self._of_the_named(piece):
                self.heading.kind = str(claim.value)
            elif claim.key == "label":
                self.heading.label, self.heading.kind = str(claim.value), "game"
            elif claim.key == "opponent":
                self.heading.opponent = True

    def _off_of_whom(self, piece: Piece) -> bool:
        """As in "Sun: Leo 55p; Mon: off; Tue: Max 25p": a day off of all, or of Leo?"""
        keys = {claim.key for claim in piece}
        if {"day", "off"} != keys or not self.drafts or not self.drafts[-1].who:
            return False
        items, first = self.board.items, piece[0]
        last = first.key != "day" or first.after == len(items)
        headed = not last and items[first.after].symbol in ("colon", "dash")
        names = {claim.value for claim in self.board.claims if claim.key == "who"}
        apart = (
            self.board.sentence[self.drafts[-1].claims[-1].first]
            != self.board.sentence[first.first]
        )
        return headed and apart and len(names) > 1

    def _of_the_named(self, piece: Piece) -> bool:
        """As in "Milo, pen, 25p": what follows a name before its counts is his alone."""
        last = self.drafts[-1]
        named = bool(last.who) and all(claim.key != "who" for claim in piece)
        return named and not last.counts and not self.headed

    def _head_anew(self, piece: Piece) -> None:
        """Another day's heading begins anew; another game's keeps the day."""
        keys = {claim.key for claim in piece}
        if keys & {"day", "kind"}:
            self.heading.opponent, self.heading.label = False, None
        if "label" in keys and "kind" not in keys:
            self.heading.kind = None
        self.headed = True
        self._note_heading(piece)

    def _fresh(self, piece: Piece) -> Draft:
        """A draft that keeps what a heading before it said, or whose it is."""
        if not self.drafts:
            return Draft()
        if any(claim.key == "who" for claim in piece):
            own_day = any(claim.key == "day" for claim in piece)
            own_kind = any(claim.key == "kind" for claim in piece)
            return Draft(
                days=() if own_day else self.heading.days,
                kind=None if own_kind else self.heading.kind,
                label=self.heading.label,
                opponent=self.heading.opponent,
            )
        last = self.drafts[-1]
        own_kind = any(c.key in ("kind", "label", "off") for c in piece)
        return Draft(
            who=last.who,
            days=() if any(c.key == "day" for c in piece) else last.days,
            kind=None if own_kind else self._kind_of_all(last, piece),
            plural_kind=last.plural_kind,
            kind_carried=told_alike(self.board, last, piece),
        )

    def _kind_of_all(self, last: Draft, piece: Piece) -> str | None:
        """As in "two pens this week for Leo. mon 20, thurs 24"; or what a heading said."""
        if last.plural_kind or told_alike(self.board, last, piece):
            return last.kind
        return None if self.names_people else self.heading.kind

    def _begins(self, current: Draft, piece: Piece) -> bool:
        """Whether the piece is about another person, day, game or kind than the draft."""
        if current.claims and {claim.key for claim in piece} == {"who"} == {current.claims[-1].key}:
            return False  # "off: Leo, Max": a list of names
        outing = [claim for claim in piece if claim.key in COUNTS or claim.key == "off"]
        clash = any(current.clashes(claim) for claim in outing)
        return any(self._parts_from(current, claim, outing, clash) for claim in piece)

    def _parts_from(self, current: Draft, claim: Claim, outing: list[Claim], clash: bool) -> bool:
        if claim.key == "who":
            if (
                len(current.who) > 1
                and not current.counts
                and claim.value in current.who
                and outing
            ):
                return True  # "Piper and Nico pitched. Piper 31, Nico 40"
            other = bool(current.who) and (claim.value not in current.who or len(current.who) > 1)
            if current.each and not current.who:
                return True
            if not current.who and self._of_him(current, claim, outing):
                return False
            told = current.says_something() or current.not_pitched
            return (other and (told or self._apart(current, claim))) or (
                not current.who and current.has_outing() and bool(outing)
            )
        if claim.key == "label":
            return current.has_outing() and (
                current.label != claim.value or claim.value == "another"
            )
        if claim.key == "day" and len(current.days) > 1 and not current.counts and outing:
            # "pitched saturday and sunday. saturday 28, sunday 17", not "mon, wed and fri 12 each"
            return claim.value in current.days or not self._one_sentence(current, claim)
        if claim.key == "day" and current.pains and not current.has_outing():
            return (
                not self._one_sentence(current, claim)
                and bool(outing and current.days)
                and claim.value not in current.days
            )
        book = claim.key == "day" and any(c.key == "book" for c in current.claims)
        if not outing or not (current.has_outing() or book):
            return False
        if claim.key == "day":
            other = bool(current.days) and claim.value not in current.days
            again = current.off and (bool(current.days) or any(c.key != "off" for c in outing))
            return other or clash or again
        if claim.key == "off":
            return bool(current.counts)
        if claim.key == "opponent":
            return clash and self._another_opponent(current, claim)
        return claim.key == "kind" and ((current.kind or claim.value) != claim.value or clash)

    def _one_sentence(self, current: Draft, claim: Claim) -> bool:
        sentence = self.board.sentence
        return sentence[claim.first] == sentence[current.claims[0].first]

    def _another_opponent(self, current: Draft, claim: Claim) -> bool:
        """As in "vs Oakmere 45p, vs Fenlow 18p": two games."""
        before = {self._opponent(c) for c in current.claims if c.key == "opponent"}
        return bool(before) and self._opponent(claim) not in before

    def _opponent(self, claim: Claim) -> str:
        return self.board.quote(claim.first, claim.after).lower()

    def _of_him(self, current: Draft, claim: Claim, outing: list[Claim]) -> bool:
        """As in "50 pitches and 8 curves for Owen": what was counted before is his too."""
        first = current.claims[0].first if current.claims else claim.first
        before = self.board.items[claim.first - 1].symbol if claim.first else ""
        alone = (
            len(self.drafts) == 1 and self.board.sentence[first] == self.board.sentence[claim.first]
        )
        return before == "for" and alone and not any(c.key in current.counts for c in outing)

    def _apart(self, current: Draft, claim: Claim) -> bool:
        """As in "Leo shaky, Max 4": no list of names, there is a word between them."""
        last = current.claims[-1]
        other_sentence = self.board.sentence[last.first] != self.board.sentence[claim.first]
        if last.key in ("kind", "opponent") and len(current.who) == 1 and other_sentence:
            return True  # "Leo relieved Max. Max 45p"
        between = range(last.after, claim.first)
        return any(
            self.board.free(i) and self.board.items[i].symbol in ("word", "good", "goodadj", "adj")
            for i in between
        )
