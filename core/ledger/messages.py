"""Messages as Slack tells of them: said, edited, deleted."""

from dataclasses import dataclass
from datetime import datetime


@dataclass(frozen=True, slots=True)
class Said:
    """A message as Slack tells of it: `ts` is Slack's id of it, seconds with microseconds.

    A line that a form wrote has the form's id there, and says by `written_at` (UTC) when; by
    `team_id` which team it is about, where its words leave that open.
    """

    workspace_id: str
    channel: str
    ts: str
    author: str
    text: str
    direct: bool = False
    thread_ts: str | None = None
    written_at: datetime | None = None
    team_id: int | None = None


@dataclass(frozen=True, slots=True)
class Edited:
    """The newest text of a message; the newest `edited_ts` wins.

    Slack stamps edits in whole seconds, so a second stamp, that of the event, may follow
    after a "/" and tells two edits of one second apart.
    """

    said: Said
    edited_ts: str


@dataclass(frozen=True, slots=True)
class Deleted:
    """A message that its author took back; final. Author and text may be unknown (empty)."""

    said: Said


def newer(ts: str, known: str | None) -> bool:
    """Whether a stamp of Slack's is later than the known one (none: later than nothing)."""
    # Slack's stamps are text for keys; as pairs of whole numbers they compare exactly.
    return known is None or _parts(ts) > _parts(known)


def _parts(stamps: str) -> list[tuple[int, int]]:
    pairs = [stamp.partition(".") for stamp in stamps.split("/")]
    return [(int(seconds), int(fraction.ljust(6, "0"))) for seconds, _, fraction in pairs]
