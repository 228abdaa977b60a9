"""Drafts to entries: what follows from what was said, and what cannot be."""

from dataclasses import dataclass
from datetime import date
from fractions import Fraction

from core.reading.board import COUNTS
from core.reading.draft import PRACTICE, Draft
from core.reading.entry import Detail, Entry, Pain, Unread, UnreadReason
from core.reading.people import OWN
from core.reading.sites import one_for_each_site

MOST_PITCHES = 200  # in a game; more is not seen in this sport at any age
FEWEST_AN_INNING, MOST_AN_INNING = 7, 45  # pitches, over two innings or more
UNLIKELY_OUTS = 27  # over nine innings
_TYPES = ("breaking", "changeup", "fastball")
_PARTS = (
    *((part, "pitches") for part in (*_TYPES, "strikes")),
    ("breaking_strikes", "breaking"),
    ("breaking_strikes", "strikes"),
)
_COUNTED = ("pitches", *_TYPES, "curve", "slider", "strikes", "breaking_strikes")


@dataclass(frozen=True, slots=True)
class Conclusion:
    """An entry, and what about it must be asked."""

    entry: Entry
    unread: tuple[Unread, ...]


def conclude(draft: Draft, posted: date, quote: str) -> Conclusion:
    """Work out the sums and the kind, and take out counts that cannot be. `quote` is the draft's
    part of the line, as typed.
    """
    counts = dict(draft.counts)
    unread: list[Unread] = []
    said = {claim.key for claim in draft.claims}
    if "share" in said:
        _resolve_shares(draft, counts, unread, quote)
    if "book" in said or "range" in said:
        _resolve_ranges(draft, counts, unread, quote)
    if "parts" in said:
        _resolve_parts(draft, counts, unread, quote)
    _sum_breaking(counts)
    if "restof" in said:
        _resolve_rest(draft, counts, unread, quote)
    kind = _kind(draft, counts)
    _reject_impossible(counts, unread, quote)
    _question_strikes(counts, unread, quote)
    _reject_unlikely(counts, unread, quote)
    if "running" in said and "pitches" not in counts:
        unread.append(Unread(quote, UnreadReason.TWO_READINGS))
    if counts and draft.kind and not draft.kind_beside and len(_loose_kinds(draft)) > 1:
        unread.append(Unread(quote, UnreadReason.UNKNOWN_KIND))
    if draft.open_kind is not None and counts and draft.kind is None and not draft.opponent:
        unread.append(Unread(quote, UnreadReason.UNKNOWN_KIND))
    if draft.kind in ("bullpen", "catch") and kind == draft.kind and "outs" in counts:
        unread.append(Unread(quote, UnreadReason.UNKNOWN_KIND))
    except_ = draft.except_ if draft.who == ("everyone",) else ()
    if draft.except_ and not except_:
        unread.append(Unread(quote, UnreadReason.UNCLEAR_PERSON))  # "no pens except Leo 20"
    if draft.pains and draft.who == ("everyone",):
        unread.append(Unread(quote, UnreadReason.UNCLEAR_PAIN))  # "... except Sam (arm sore)"
    if draft.pains and draft.no_pain and draft.days and not counts:
        unread.append(Unread(quote, UnreadReason.UNCLEAR_PAIN))  # "no pain today, sore yesterday"
    if draft.except_ and draft.who != ("everyone",):
        unread.append(Unread(quote, UnreadReason.UNCLEAR_PERSON))  # left out of whom?
    pain = _pain(draft)
    if pain and one_for_each_site(pain) is None:
        unread.append(Unread(quote, UnreadReason.UNCLEAR_PAIN))  # "elbow 2, ... elbow 4"
    pain = one_for_each_site(pain, worst=True) if pain else pain
    day = draft.days[0] if draft.days and draft.days[0] != posted else None
    entry = Entry(
        who=draft.who[0] if draft.who and draft.who[0] != OWN else None,
        except_=except_,
        kind=kind,
        on=day,
        pain=pain,
        about=draft.about and bool(counts),
        tired=draft.tired,
        day_named=bool(draft.days),
        **counts,
    )
    return Conclusion(entry, tuple(unread))


def _loose_kinds(draft: Draft) -> set[str]:
    """As in "threw a pen and then long toss. 30 pitches": kinds told before anything is counted."""
    kinds: set[str] = set()
    for claim in draft.claims:
        if claim.key in COUNTS:
            return kinds
        if claim.key == "kind" and claim.value in PRACTICE and not claim.about:
            kinds.add(str(claim.value))
    return set()


def _pain(draft: Draft) -> tuple[Pain, ...] | None:
    """Pain as told; "no pain" only when nothing in the line speaks against it."""
    if draft.who == ("everyone",) and draft.pains:
        return None
    if draft.pains:
        return tuple(draft.pains)
    unclear = draft.no_pain and any(c.value is UnreadReason.UNCLEAR_PAIN for c in draft.claims)
    return () if draft.no_pain and not unclear else None


def _kind(draft: Draft, counts: dict[str, int]) -> str | None:
    if draft.off and not counts:
        return "off"
    game = draft.opponent or "outs" in counts
    if game and (draft.kind is None or (draft.kind == "bullpen" and _only_warmed_up(draft))):
        return "game"
    if draft.kind is None and counts and (draft.game_sign or (draft.pains and draft.after_game)):
        return "game"
    return draft.kind


def _only_warmed_up(draft: Draft) -> bool:
    return all(c.value != "bullpen" or c.about for c in draft.claims if c.key == "kind")


def _resolve_shares(draft: Draft, counts: dict[str, int], unread: list[Unread], quote: str) -> None:
    """Read "45 pitches, a third curves" as 15 curves; ask when it gives no whole number."""
    for claim in draft.claims:
        if claim.key != "share" or not isinstance(claim.value, tuple):
            continue
        field, share = claim.value
        total = counts.get("pitches")
        if total is None and field == "strikes":
            continue  # a rate of nothing that was counted
        count = share * total if total is not None else Fraction(1, 2)
        if count.denominator == 1:
            counts[field] = count.numerator
        else:
            unread.append(Unread(quote, UnreadReason.UNKNOWN_NUMBER))


def _resolve_rest(draft: Draft, counts: dict[str, int], unread: list[Unread], quote: str) -> None:
    """Read "25 pitches, 5 changeups, the rest fastballs" as 20 fastballs."""
    for claim in draft.claims:
        if claim.key != "restof":
            continue
        field = str(claim.value)
        others = sum(counts.get(part, 0) for part in _TYPES)
        rest = counts.get("pitches", -1) - others
        if field in counts or field not in _TYPES or rest < 0:
            unread.append(Unread(quote, UnreadReason.UNKNOWN_NUMBER))
        else:
            counts[field] = rest


def _resolve_ranges(draft: Draft, counts: dict[str, int], unread: list[Unread], quote: str) -> None:
    """A range with one stated result is that result; another book's count must agree."""
    for claim in draft.claims:
        if claim.key == "book" and isinstance(claim.value, int):
            books = {c.value for c in draft.claims if c.key == "book"}
            ranged = len(books) == 1 and not claim.weak
            ranged = ranged and not any(c.key == "range" for c in draft.claims)
            ranged = ranged or any(
                c.key == "range" and _inside(c.value, claim.value) for c in draft.claims
            )
            if "pitches" not in counts and ranged:
                counts["pitches"] = claim.value
            elif counts.get("pitches") != claim.value:
                counts.pop("pitches", None)
                unread.append(Unread(quote, UnreadReason.TWO_READINGS))
    for claim in draft.claims:
        if claim.key == "range" and isinstance(claim.value, tuple):
            field, low, high = claim.value
            result = counts.get("pitches") if draft.weak_pitches is not None else None
            elsewhere = field not in ("pitches", *counts)
            if elsewhere and result is not None and low <= result <= high:
                counts[field] = counts.pop("pitches")  # "10-15 spins in catch, did 14"
            if not low <= counts.get(field, -1) <= high:
                unread.append(
                    Unread(quote, UnreadReason.TWO_READINGS, Detail(field, low, field, high))
                )


def _resolve_parts(draft: Draft, counts: dict[str, int], unread: list[Unread], quote: str) -> None:
    """As in "15+18+12" are 45 pitches, if the line gives no other count."""
    for claim in draft.claims:
        if claim.key == "parts" and isinstance(claim.value, tuple):
            total = sum(claim.value)
            if total in counts.values():
                continue
            if counts.setdefault("pitches", total) != total:
                counts.pop("pitches")
                unread.append(Unread(quote, UnreadReason.TWO_READINGS, Detail("pitches", total)))


def _inside(limits: object, value: int) -> bool:
    return isinstance(limits, tuple) and limits[1] <= value <= limits[2]


def _sum_breaking(counts: dict[str, int]) -> None:
    if "curve" in counts or "slider" in counts:
        counts.setdefault("breaking", counts.get("curve", 0) + counts.get("slider", 0))


def _reject_impossible(counts: dict[str, int], unread: list[Unread], quote: str) -> None:
    while found := _contradictions(counts):
        part, whole = found[0]
        detail = Detail(part, counts.get(part), whole, counts.get(whole))
        unread.append(Unread(quote, UnreadReason.IMPOSSIBLE, detail))
        for field in _family(part) | _family(whole):
            counts.pop(field, None)


def _question_strikes(counts: dict[str, int], unread: list[Unread], quote: str) -> None:
    """As in "20 cb 12 strikes": so few strikes may be those of the breaking balls alone."""
    strikes, breaking = counts.get("strikes"), counts.get("breaking")
    if strikes is None or breaking is None or "breaking_strikes" in counts or not breaking:
        return
    if strikes <= breaking:
        del counts["strikes"]
        unread.append(Unread(quote, UnreadReason.TWO_READINGS, Detail("strikes", strikes)))


def _contradictions(counts: dict[str, int]) -> list[tuple[str, str]]:
    """Pairs (part, whole) where the part is more than the whole."""
    if len(counts) < 2:
        return []  # it takes two to contradict
    found = [(a, b) for a, b in _PARTS if a in counts and b in counts and counts[a] > counts[b]]
    typed = sum(counts.get(part, 0) for part in _TYPES)
    if not found and "pitches" in counts and typed > counts["pitches"]:
        found.append(("breaking", "pitches"))
    by_type = counts.get("curve", 0) + counts.get("slider", 0)
    if not found and by_type > counts.get("breaking", by_type):
        found.append(("curve", "breaking"))
    return found


def _family(field: str) -> set[str]:
    """What must be asked together with a field."""
    breaking = {"curve", "slider", "breaking"}
    return breaking if field in breaking else {field}


def _reject_unlikely(counts: dict[str, int], unread: list[Unread], quote: str) -> None:
    if not counts:
        return
    many = max(counts.values()) > MOST_PITCHES
    for name in _COUNTED if many else ():
        if counts.get(name, 0) > MOST_PITCHES:
            unread.append(Unread(quote, UnreadReason.UNLIKELY, Detail(name, counts[name])))
            for field in _family(name):
                counts.pop(field, None)
    pitches, outs = counts.get("pitches"), counts.get("outs")
    if outs is not None and outs > UNLIKELY_OUTS:
        unread.append(Unread(quote, UnreadReason.UNLIKELY, Detail("outs", outs)))
        counts.pop("outs")
    elif pitches is not None and outs is not None and _out_of_pace(pitches, outs):
        detail = Detail("pitches", pitches, "outs", outs)
        unread.append(Unread(quote, UnreadReason.UNLIKELY, detail))
        del counts["pitches"], counts["outs"]


def _out_of_pace(pitches: int, outs: int) -> bool:
    """Whether two innings or more took fewer than 7 or more than 45 pitches each."""
    return outs >= 6 and not FEWEST_AN_INNING * outs <= pitches * 3 <= MOST_AN_INNING * outs
