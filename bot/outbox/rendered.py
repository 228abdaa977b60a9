"""What a message says at the moment it is sent."""

import hashlib
import json
from dataclasses import dataclass
from typing import Any


@dataclass(frozen=True, slots=True)
class Words:
    """A message: `text` carries everything, for notifications and screen readers."""

    text: str
    blocks: tuple[dict[str, Any], ...] = ()

    @property
    def digest(self) -> str:
        """A short fingerprint, to see whether people read this already."""
        content = json.dumps([self.text, self.blocks], sort_keys=True)
        return hashlib.sha256(content.encode()).hexdigest()[:32]


@dataclass(frozen=True, slots=True)
class Reaction:
    """An emoji on a line, by Slack's name for it, without colons."""

    ts: str
    name: str | None  # none: no reaction belongs there any more
    #: Every emoji that may stand there from us, should an earlier outcome be unknown.
    ours: tuple[str, ...] = ()

    @property
    def digest(self) -> str:
        """The name itself says whether it stands there already."""
        return self.name or ""


@dataclass(frozen=True, slots=True)
class Published:
    """Somebody's Home tab, whole."""

    view: dict[str, Any]

    @property
    def digest(self) -> str:
        """A short fingerprint, to see whether it stands there already."""
        content = json.dumps(self.view, sort_keys=True)
        return hashlib.sha256(content.encode()).hexdigest()[:32]


Rendered = Words | Reaction | Published
