"""Who is who in the demo club, and finding somebody or some channel by what is typed."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from sqlmodel import Session, col, select

from bot.local.records import Channel, Person
from core import model
from core.model import GuardianLink, Membership, Pitcher, key


class NobodyError(Exception):
    """No one person or channel fits; the message is one sentence for a person."""


@dataclass(frozen=True, slots=True)
class Roles:
    """What everybody does in the club, by Slack id; and who is there without an account."""

    of: Mapping[str, str]
    #: Names of pitchers without an account, with the names of those who log for them.
    logged_for: Mapping[str, Sequence[str]]


def read_roles(session: Session) -> Roles:
    """Everybody's roles, from the database."""
    people = {key(one): one for one in session.exec(select(model.Person))}
    pitchers = {key(one): one for one in session.exec(select(Pitcher).order_by(col(Pitcher.id)))}
    roles: dict[int, dict[str, None]] = {}  # by person, in order and without repeats
    for member in session.exec(select(Membership).order_by(col(Membership.id))):
        roles.setdefault(member.person_id, {})[str(member.role)] = None
    for pitcher in pitchers.values():
        if pitcher.person_id is not None:
            roles.setdefault(pitcher.person_id, {})["pitcher"] = None
    children: dict[int, list[Pitcher]] = {}
    for link in session.exec(select(GuardianLink).order_by(col(GuardianLink.pitcher_id))):
        children.setdefault(link.person_id, []).append(pitchers[link.pitcher_id])
    for guardian, theirs in children.items():
        names = " and ".join(child.name for child in theirs)
        roles.setdefault(guardian, {})[f"guardian of {names}"] = None
    named = {people[who].slack_id or "": ", ".join(does) for who, does in roles.items()}
    return Roles(named, _logged_for(people, pitchers, children))


def _logged_for(
    people: Mapping[int, model.Person],
    pitchers: Mapping[int, Pitcher],
    children: Mapping[int, Sequence[Pitcher]],
) -> dict[str, list[str]]:
    return {
        pitcher.name: [
            people[guardian].name
            for guardian, theirs in children.items()
            if pitcher in theirs and people[guardian].slack_id is not None
        ]
        for pitcher in pitchers.values()
        if pitcher.person_id is None
    }


def find_person(words: str, people: Mapping[str, Person], roles: Roles) -> Person:
    """The person whom `words` name: a key, a handle, a name or the beginning of one.

    Raises `NobodyError` when nobody or several fit.
    """
    wanted = words.removeprefix("@").casefold()
    called = {who: {who, one.name, one.real_name.casefold()} for who, one in people.items()}
    fitting = [who for who, names in called.items() if wanted in names] or [
        who for who, names in called.items() if any(name.startswith(wanted) for name in names)
    ]
    if len(fitting) == 1:
        return people[fitting[0]]
    if fitting:
        raise NobodyError(f"“{words}” fits several: write as {_either(fitting)}.")
    for name, others in roles.logged_for.items():
        if name.casefold().startswith(wanted):
            raise NobodyError(
                f"{name} has no account (Slack asks for an age of 16); for him log: "
                f"{', '.join(others) or 'the staff'}."
            )
    raise NobodyError(
        f"Nobody here is called “{words}”: `people` lists everybody; "
        "to say it as a line, begin with `say`."
    )


def find_channel(words: str, channels: Mapping[str, Channel]) -> str:
    """The key of the channel that `words` name, or "dm"; raises `NobodyError`."""
    wanted = words.removeprefix("#").casefold()
    if wanted == "dm":
        return "dm"
    exact = [which for which, one in channels.items() if wanted in (which, one.name)]
    fitting = exact or [which for which, one in channels.items() if wanted in one.name]
    if len(fitting) == 1:
        return fitting[0]
    if fitting:
        names = [channels[which].name for which in fitting]
        raise NobodyError(f"“{words}” fits several: write in {_either(names)}.")
    raise NobodyError(
        f"There is no channel “{words}”: write in {_either([*channels, 'dm'])}; "
        "to say it as a line, begin with `say`."
    )


def _either(names: Iterable[str]) -> str:
    *most, last = names
    return f"{', '.join(most)} or {last}" if most else last
