"""Claims to drafts: whose, and which outing.

The line is taken piece by piece (a piece ends at a comma, "and", "then", a full stop). A piece
that names another person, another day, another game or another kind of throwing begins a new
draft; any other piece adds to the draft before it.
"""

from datetime import date

from core.reading.board import COUNTS, NO_LOG, Board, Claim
from core.reading.draft import PRACTICE, Draft, strikes_of_what
from core.reading.entry import Unread, UnreadReason
from core.reading.in_order import in_order, sums_over_all
from core.reading.people import OWN
from core.reading.pieces import Piece, pieces
from core.reading.together import bring_together


def assemble(board: Board) -> tuple[list[Draft], list[Unread]]:
    """All drafts of the line, with what they share, and what was unread."""
    assembler = Assembler(board)
    for piece in pieces(board):
        assembler.add(piece)
    drafts = bring_together(board, assembler.drafts, assembler.unread)
    return drafts, assembler.unread


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
        if self._counts_for_all_but_clashes(piece):
            self._ask(piece)
            return
        of_all = sums_over_all(self.board, self.drafts, piece)
        if of_all is not None:
            if not of_all:
                self._ask(piece)
            return
        lists = [claim for claim in piece if claim.key == "list"]
        if lists and len(lists) < len(piece):
            self.add([claim for claim in piece if claim.key != "list"])
        if lists:
            fitting = [claim for claim in lists if in_order(self.drafts, claim)]
            if len(fitting) < len(lists):
                self._ask(piece)
            return
        earlier = self._same_game(piece)
        if earlier is not None:
            self._put_all(earlier, piece)
            return
        if not self.drafts or self._begins(self.drafts[-1], piece):
            self.drafts.append(self._fresh(piece))
        elif not self.drafts[-1].has_outing():
            self._take_own_kind(self.drafts[-1], piece)
        self._put_all(self.drafts[-1], piece)
        self._note_heading(piece)

    def _take_own_kind(self, draft: Draft, piece: Piece) -> None:
        """As in "long toss then 30 pitch pen": the counts are of the kind beside them."""
        kinds = {str(claim.value) for claim in piece if claim.key == "kind"}
        counted = any(claim.key in COUNTS for claim in piece)
        if counted and draft.kind in PRACTICE and len(kinds) == 1 and kinds <= PRACTICE:
            draft.kind, draft.kind_beside = kinds.pop(), True

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
        """As in "both in the bullpen", "all vs Harlow", "no pain for either", "5 cb each"."""
        if len(self.drafts) < 2:
            return False
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
        alone = self.board.sentence[self.drafts[-1].claims[-1].first] != sentence
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
            if kinds and not self.drafts[-1].has_outing() and len(self.drafts) == 1:
                self.heading.kind = kinds[0]
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
        own_kind = any(c.key in ("kind", "label", "off") for c in piece)
        return Draft(
            who=last.who,
            days=() if any(c.key == "day" for c in piece) else last.days,
            kind=None if own_kind else self._kind_of_all(last),
            plural_kind=last.plural_kind,
        )

    def _kind_of_all(self, last: Draft) -> str | None:
        """As in "two pens this week for Leo. mon 20, thurs 24"; or what a heading said."""
        if last.plural_kind:
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
            told = current.says_something() or current.not_pitched
            return (other and (told or self._apart(current, claim))) or (
                not current.who and current.has_outing() and bool(outing)
            )
        if claim.key == "label":
            return current.has_outing() and (
                current.label != claim.value or claim.value == "another"
            )
        if claim.key == "day" and len(current.days) > 1 and not current.counts and outing:
            return True  # "pitched saturday and sunday. saturday 28, sunday 17"
        if claim.key == "day" and current.pains and not current.has_outing():
            apart = self.board.sentence[claim.first] != self.board.sentence[current.claims[0].first]
            return apart and bool(outing and current.days) and claim.value not in current.days
        if not (outing and current.has_outing()):
            return False
        if claim.key == "day":
            other = bool(current.days) and claim.value not in current.days
            again = current.off and (bool(current.days) or any(c.key != "off" for c in outing))
            return other or clash or again
        if claim.key == "off":
            return bool(current.counts)
        return claim.key == "kind" and ((current.kind or claim.value) != claim.value or clash)

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

    def _put(self, draft: Draft, claim: Claim) -> None:
        draft.claims.append(claim)
        if claim.key in COUNTS or claim.key == "forstrikes":
            self._count(draft, claim)
        elif claim.key == "who":
            self._name(draft, str(claim.value))
        elif claim.key == "except" and isinstance(claim.value, tuple):
            draft.except_ = claim.value
        elif claim.key == "kind":
            draft.kind = _kind_of_both(draft.kind, str(claim.value))
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
        elif claim.key == "same" and len(self.drafts) > 1:
            before = self.drafts[-2]
            draft.counts, draft.kind = dict(before.counts), before.kind
            draft.days, draft.opponent = before.days, before.opponent
        elif claim.key == "notpitched":
            draft.not_pitched = True
        elif claim.key == "gamesign":
            draft.game_sign = True
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
            named = [who for one in self.drafts for who in one.who if who not in ("everyone", OWN)]
            draft.who, draft.except_ = ("everyone",), tuple(dict.fromkeys(named))
        elif name not in draft.who:
            draft.who = (*draft.who, name)

    def _date(self, draft: Draft, piece: Piece) -> None:
        """The day that stands with the counts is theirs; several side by side are a list."""
        named = [claim for claim in piece if claim.key == "day"]
        if not named:
            return
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
        field_name = strikes_of_what(draft) if claim.key == "forstrikes" else claim.key
        old = draft.counts.get(field_name)
        if field_name == "pitches" and self._yields(draft, claim):
            return
        if old is not None and self._adds_up(draft, claim, field_name):
            draft.counts[field_name] = old + claim.value
            return
        if field_name in draft.clashed or (old is not None and self._clash(draft, claim, old)):
            self.unread.append(Unread(self._quote(claim), UnreadReason.TWO_READINGS))
            draft.clashed.add(field_name)
            draft.counts.pop(field_name, None)
            return
        draft.about = draft.about or claim.about
        draft.counts[field_name] = claim.value

    def _adds_up(self, draft: Draft, claim: Claim, field_name: str) -> bool:
        """As in "20 4-seam 10 2-seam": two sorts of fastball; a sort told again is no sum."""
        if field_name != "fastball":
            return False
        others = [c for c in draft.claims if c.key == claim.key and c is not claim]
        before = {noun for c in others for noun in self._fastballs(c)}
        own = self._fastballs(claim)
        return bool(before and own) and before.isdisjoint(own)

    def _fastballs(self, claim: Claim) -> set[str]:
        """The words for fastballs that a claim was typed with."""
        items = self.board.items[claim.first : claim.after]
        return {item.text.lower() for item in items if item.symbol == "fastball"}

    def _clash(self, draft: Draft, claim: Claim, old: int) -> bool:
        """Another value; or the same one once more in a sentence ("20 throws at 60, 20 throws")."""
        if old != claim.value:
            return True
        sentence = self.board.sentence[claim.first]
        before = [c for c in draft.claims[:-1] if c.key == claim.key and c.value == claim.value]
        typed = claim.key in ("pitches", "curve", "slider") and not claim.weak
        return typed and any(
            self.board.sentence[c.first] == sentence and not c.weak for c in before
        )

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
        """As in "28 in the first, finished with 60": a count of one inning, below the final one."""
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
            loser.key, loser.value = NO_LOG, "by inning"
        return inning and less

    def _quote(self, claim: Claim) -> str:
        return self.board.quote(claim.first, claim.after)


def _kind_of_both(said: str | None, kind: str) -> str:
    """The first kind said; but a game among ourselves is live."""
    return "live" if {said, kind} == {"game", "live"} else said or kind


def _only_days(draft: Draft) -> bool:
    """Whether nothing was said but names and days: "mon, wed and fri ..." goes on."""
    return all(claim.key in ("who", "day") for claim in draft.claims)
