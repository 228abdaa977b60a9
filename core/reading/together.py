"""What several drafts of a line share, and which of them belong together."""

from collections.abc import Iterator
from dataclasses import replace

from core.reading.board import COUNTS, Board
from core.reading.draft import Draft, quote
from core.reading.entry import Unread, UnreadReason
from core.reading.groups import KINDS, TYPES


def bring_together(board: Board, all_drafts: list[Draft], unread: list[Unread]) -> list[Draft]:
    """Drafts that say something, with what they share; what is unclear goes to `unread`."""
    _spread_heading_effort(board, all_drafts)
    drafts = _share_each([d for d in all_drafts if d.says_something() and not _mere_rate(board, d)])
    if len(drafts) > 1 and _only_off(drafts[0]) and not drafts[0].who and drafts[1].off:
        del drafts[0]  # "no throwing, everyone had the day off"
    if len(drafts) > 1:
        _share_trailing(board, drafts)
        unread += _share_leading_no_pain(board, drafts)
        unread += _elliptic_counts(board, drafts)
        unread += _beside_everyone(board, drafts)
    unread += _unclear_people(board, all_drafts, drafts)
    several = [one for draft in drafts for one in _multiplied(board, draft, unread)]
    return _merged(several)


def _spread_heading_effort(board: Board, drafts: list[Draft]) -> None:
    """As in "catch play at 50%: Jax 10 spins, Knox 12 spins"."""
    for claim in board.claims:
        if claim.key != "effort" or claim.after >= len(board.items):
            continue
        named = [c for c in board.claims if c.key == "who"]
        headed = board.items[claim.after].symbol == "colon"
        if headed and named and claim.first < min(c.first for c in named):
            for draft in drafts:
                if draft.who and draft.counts:
                    draft.counts.setdefault("effort", int(str(claim.value)))


def _beside_everyone(board: Board, drafts: list[Draft]) -> list[Unread]:
    """As in "everyone 25 pitches, Leo 15": is he one of them?"""
    all_of_them = [draft for draft in drafts if draft.who == ("everyone",) and draft.counts]
    return [
        Unread(quote(board, draft), UnreadReason.UNCLEAR_PERSON)
        for draft in drafts
        for everyone in all_of_them
        if draft.who
        and draft.who != ("everyone",)
        and draft.counts.keys() & everyone.counts.keys()
        and draft.kind == everyone.kind
        and not set(draft.who) <= set(everyone.except_)
    ]


def _mere_rate(board: Board, draft: Draft) -> bool:
    """As in "rain chance 60%": a percentage where nobody throws."""
    if draft.counts.keys() != {"effort"} or draft.who:
        return False
    return not board.has("threw", "throwing", "speed", "halfspeed", *KINDS)


def _only_off(draft: Draft) -> bool:
    return draft.off and not (draft.counts or draft.pains or draft.no_pain or draft.days)


def _unclear_people(board: Board, every: list[Draft], drafts: list[Draft]) -> list[Unread]:
    """Names that the line says nothing of, and counts of one who goes unnamed beside others."""
    quotes = [
        quote(board, one)
        for one in every
        if drafts
        and one.who
        and not one.says_something()
        and not one.not_pitched
        and not _told_later(one, drafts)
    ]
    if _somebody_unnamed(drafts, board.author):
        quotes.append(quote(board, drafts[0]))
    return [Unread(text, UnreadReason.UNCLEAR_PERSON) for text in quotes]


def _told_later(one: Draft, drafts: list[Draft]) -> bool:
    """As in "Walt and Yuri split it. Walt 47 pitches, Yuri 38 pitches"."""
    return set(one.who) <= {who for draft in drafts for who in draft.who if draft.counts}


def _share_leading_no_pain(board: Board, drafts: list[Draft]) -> list[Unread]:
    """As in "arms are all good, Leo 58, Max 24": said before any name, of several: of all?"""
    if len({draft.who for draft in drafts}) < 2 or not drafts[0].no_pain:
        return []
    first = drafts[0].claims[0]
    names = [claim.first for claim in drafts[0].claims if claim.key == "who"]
    if first.key != "nopain" or not names or board.clause[names[0]] == board.clause[first.first]:
        return []
    words = board.quote(first.first, first.after).lower().split()
    if not {"arms", "all", "everyone", "brazos", "todos"} & set(words):
        drafts[0].no_pain = False
        return [Unread(board.quote(first.first, first.after), UnreadReason.UNCLEAR_PERSON)]
    for draft in drafts:
        draft.no_pain = True
    return []


def _share_each(drafts: list[Draft]) -> list[Draft]:
    """As in "pens, 25 each. Finn 6 curves, Otis 5": counts stated for each before the names."""
    if len(drafts) < 2 or drafts[0].who or not all(d.who for d in drafts[1:]):
        return drafts
    of_all = any(claim.key == "all" for claim in drafts[0].claims)
    if not drafts[0].each and not of_all:
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


def _tells_of_a_count(draft: Draft) -> bool:
    """Whether its counts are still to be worked out."""
    return any(claim.key in ("book", "range", "parts") for claim in draft.claims)


def _merged(drafts: list[Draft]) -> list[Draft]:
    """A later word on how somebody's arm feels joins what was said of him before."""
    kept: list[Draft] = []
    for draft in drafts:
        earlier = [one for one in kept if one.who == draft.who and draft.who]
        other_day = earlier and earlier[-1].pains and set(earlier[-1].days) ^ set(draft.days)
        told = bool(earlier) and _tells_of_a_count(earlier[-1])
        bare = earlier and not earlier[-1].has_outing() and not told
        if bare and draft.has_outing() and not other_day:
            draft = _with_arm_of(earlier[-1], draft)
            kept[kept.index(earlier[-1])] = draft
        elif earlier and _adds_to(earlier[-1], draft):
            earlier[-1].counts.update(draft.counts)
            earlier[-1].pains.extend(draft.pains)
            earlier[-1].no_pain = earlier[-1].no_pain or draft.no_pain
            earlier[-1].tired = draft.tired if draft.tired is not None else earlier[-1].tired
        else:
            kept.append(draft)
    return kept


def _with_arm_of(earlier: Draft, later: Draft) -> Draft:
    """The later draft with what was said of the arm before it."""
    tired = later.tired if later.tired is not None else earlier.tired
    no_pain = earlier.no_pain or later.no_pain
    return replace(later, pains=[*earlier.pains, *later.pains], no_pain=no_pain, tired=tired)


def _adds_to(earlier: Draft, later: Draft) -> bool:
    """Whether the later draft names no other outing and counts nothing twice."""
    other = any(claim.key in ("day", "label", "kind", "off") for claim in later.claims)
    return not other and not earlier.off and not set(earlier.counts) & set(later.counts)


def _elliptic_counts(board: Board, drafts: list[Draft]) -> list[Unread]:
    """As in "Leo did 20 spins, Max did 15": 15 of what?"""
    types_only = any(_counts_types_only(draft) for draft in drafts)
    found = []
    for draft in drafts:
        own = {claim.key for claim in draft.claims if claim.key in COUNTS}
        if types_only and draft.weak_pitches is not None and own == {"pitches"}:
            draft.counts.clear()
            found.append(Unread(quote(board, draft), UnreadReason.TWO_READINGS))
    return found


def _counts_types_only(draft: Draft) -> bool:
    """Whether its own part of the line counts pitches of a type and no pitches."""
    own = {claim.key for claim in draft.claims if claim.key in COUNTS}
    return bool(own & set(TYPES)) and "pitches" not in own


def _share_trailing(board: Board, drafts: list[Draft]) -> None:
    """An opponent named once holds for every person; so do a day named last, and a kind that
    closes the clause ("Theo 30 and Milo 25 in the pen").
    """
    if len({draft.who for draft in drafts}) < 2:
        return
    opponent = any(draft.opponent for draft in drafts)
    game_sign = any(draft.game_sign for draft in drafts)
    last = drafts[-1]
    closing = [claim.key for claim in last.claims if claim.key not in ("nopain", "pain", "tired")]
    for draft in drafts:
        draft.opponent, draft.game_sign = draft.opponent or opponent, game_sign
        if "kind" in closing[-2:] and set(closing[-2:]) <= {"kind", "day"} | set(COUNTS):
            shared = _one_clause(board, draft, last) or _listed_alike(board, draft, last)
            draft.kind = draft.kind or (last.kind if shared else None)
        if closing[-1:] == ["day"]:
            draft.days = draft.days or last.days


def _listed_alike(board: Board, one: Draft, last: Draft) -> bool:
    """As in "Leo 30, Max 25, Sam 20 in the pen": one sentence, and the same counts of each."""
    same = board.sentence[one.claims[-1].first] == board.sentence[last.claims[0].first]
    game = "outs" in one.counts or one.opponent or one.label
    return same and not game and one.counts.keys() == last.counts.keys()


def _one_clause(board: Board, one: Draft, other: Draft) -> bool:
    return board.clause[one.claims[-1].first] == board.clause[other.claims[0].first]


def _multiplied(board: Board, draft: Draft, unread: list[Unread]) -> Iterator[Draft]:
    """Make three of "mon wed fri 12 spins each", two of "Cruz and Andre 22 each"; counts that
    several share without "each" are unclear.
    """
    several = len(draft.who) > 1 or len(draft.days) > 1
    if several and draft.counts and not (draft.each or draft.plural_kind):
        person = len(draft.who) > 1
        reason = UnreadReason.UNCLEAR_PERSON if person else UnreadReason.TWO_READINGS
        unread.append(Unread(quote(board, draft), reason))
        return
    if not several:
        yield draft
        return
    if draft.pains and not draft.each and (len(draft.days) > 1 or len(draft.who) > 1):
        unread.append(Unread(quote(board, draft), UnreadReason.UNCLEAR_PAIN))
        return  # "sore sunday but fine today"
    for who in draft.who or (None,):
        for day in draft.days or (None,):
            names, days = (who,) if who else (), (day,) if day else ()
            pains, counts = list(draft.pains), dict(draft.counts)
            yield replace(draft, who=names, days=days, pains=pains, counts=counts)
