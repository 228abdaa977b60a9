"""People and channels of a workspace, found by name, handle or id."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Protocol

from bot.team_file.problems import TeamLoadError


class AmbiguousNameError(TeamLoadError):
    """Several people in Slack answer to one name."""


@dataclass(frozen=True, slots=True)
class SlackPerson:
    """Somebody with a Slack account."""

    id: str
    name: str
    handle: str = ""
    display_name: str = ""
    #: Only where the app was given the right to read addresses.
    email: str = ""


@dataclass(frozen=True, slots=True)
class SlackChannel:
    """A channel; `private` and `joined` (is the bot in it) are null where Slack does not say."""

    id: str
    name: str
    private: bool | None = None
    joined: bool | None = None


class Directory(Protocol):
    """Who and what is in the workspace."""

    def channel(self, reference: str) -> SlackChannel | None:
        """The channel with this id or name (with or without #)."""

    def person(self, reference: str) -> SlackPerson | None:
        """The person with this id, @handle, full name or display name.

        Raises `AmbiguousNameError` when several people answer to it.
        """


def _plain(text: str) -> str:
    return " ".join(text.split()).casefold()


class ListedDirectory:
    """A directory over two lists."""

    def __init__(self, people: Sequence[SlackPerson], channels: Sequence[SlackChannel]) -> None:
        self._people = tuple(people)
        self._channels = tuple(channels)

    @property
    def accounts(self) -> list[str]:
        """The Slack ids of everybody."""
        return [person.id for person in self._people]

    def channel(self, reference: str) -> SlackChannel | None:
        """The channel with this id or name; null when the list has none."""
        name = reference.strip().removeprefix("#").casefold()
        for channel in self._channels:
            if reference.strip() == channel.id or name == channel.name.casefold():
                return channel
        return None

    def person(self, reference: str) -> SlackPerson | None:
        """The person with this id, mention, @handle, e-mail address or name.

        Raises `AmbiguousNameError` when several people answer to it.
        """
        wanted = _unwrapped(reference.strip())
        by_id = [person for person in self._people if person.id == wanted]
        found = by_id or [person for person in self._people if _answers(person, wanted)]
        if len(found) > 1:
            raise AmbiguousNameError(
                f"{len(found)} people in Slack answer to “{wanted}”: write the member id "
                f"(profile, ⋮, Copy member ID) of the one you mean."
            )
        return found[0] if found else None


def _unwrapped(reference: str) -> str:
    """The member id in a mention as Slack writes it: `<@U123>` or `<@U123|name>`."""
    if reference.startswith("<@") and reference.endswith(">"):
        return reference[2:-1].partition("|")[0]
    return reference


def _answers(person: SlackPerson, reference: str) -> bool:
    if "@" in reference[1:]:
        return bool(person.email) and _plain(person.email) == _plain(reference)
    if reference.startswith("@"):
        names = {person.handle, person.display_name}
    else:
        names = {person.name, person.display_name, person.handle}
    return _plain(reference.removeprefix("@")) in {_plain(name) for name in names if name}
