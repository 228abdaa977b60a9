"""Pain told twice of one site is one pain."""

from dataclasses import replace

from core.reading.entry import Pain


def one_for_each_site(pains: tuple[Pain, ...], *, worst: bool = False) -> tuple[Pain, ...] | None:
    """The pains with those of one site (and side and time) joined; None when their numbers clash.

    With `worst` the higher number stands: the adults hear of it while the question is open.
    """
    joined: list[Pain] = []
    for pain in pains:
        at = next((i for i, known in enumerate(joined) if _same_place(known, pain)), None)
        if at is None:
            joined.append(pain)
            continue
        known = joined[at]
        levels = {one.severity for one in (known, pain) if one.severity is not None}
        if len(levels) > 1 and not worst:
            return None
        joined[at] = replace(
            known,
            severity=max(levels, default=None),
            side=known.side or pain.side,
            when=known.when or pain.when,
            sore=known.sore and pain.sore,
        )
    return tuple(joined)


def _same_place(one: Pain, other: Pain) -> bool:
    """Whether nothing that both state tells them apart."""
    sides = {one.side, other.side} - {None}
    return one.site == other.site and len(sides) < 2


__all__ = ["one_for_each_site"]
