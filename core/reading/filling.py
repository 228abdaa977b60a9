"""What a claim puts into a draft: its counts, names, days and words, and where they clash."""

from datetime import date

from core.reading.board import COUNTS, NO_LOG, Board, Claim
from core.reading.draft import Draft, strikes_of_what
from core.reading.entry import Unread, UnreadReason
from core.reading.people import OWN
from core.reading.pieces import Piece


class Filling:
    """Puts claims into drafts; what clashes goes to `unread`."""

    def __init__(self, board: Board, drafts: list[Draft], unread: list[Unread]) -> None:
        self.board = board
        self.drafts = drafts  # all of the line so far, the one that is filled among them
        self.unread = unread

    def put(self, draft: Draft, claim: Claim) -> None:
        """Put one claim into the draft."""
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

    def put_days(self, draft: Draft, piece: Piece) -> None:
        """The day that stands with the counts is theirs; several side by side are a list."""
        named = [claim for claim in piece if claim.key == "day"]
        if not named:
            return
        days = tuple(dict.fromkeys(c.value for c in named if isinstance(c.value, date)))
        if not days:
            return
        counted = any(claim.key in COUNTS or claim.key == "off" for claim in piece)
        if counted and self._told_before(draft, piece):
            draft.days, draft.dated_by_counts = days, True
        elif draft.days and _only_days(draft):
            draft.days = (*draft.days, *(day for day in days if day not in draft.days))
        elif not draft.days or (counted and not draft.dated_by_counts):
            draft.days, draft.dated_by_counts = days, counted
        elif not draft.has_outing() and not counted:
            draft.days = (*draft.days, *(day for day in days if day not in draft.days))
        elif set(days) - set(draft.days) - {self.board.posted.date()}:
            self.unread.append(Unread(self._quote(named[0]), UnreadReason.UNCLEAR_DAY))

    def _told_before(self, draft: Draft, piece: Piece) -> bool:
        """As in "talked to his dad this morning. Leo threw 57 yesterday": a day of the talk."""
        before = [claim for claim in draft.claims if claim.key == "day"]
        if not before or draft.plural_kind or any(claim.key == "each" for claim in piece):
            return False
        sentence = self.board.sentence[piece[0].first]
        return _only_days(draft) and all(self.board.sentence[c.first] < sentence for c in before)

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
