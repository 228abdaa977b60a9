"""From what is stored and what the file asks for to the changes between them; pure."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Any

from bot.team_file.stored import StoredPerson, StoredPitcher, StoredState, StoredTeam
from bot.team_file.wanted import TABLE_ROLES, PersonRef, Wanted, WantedPitcher, WantedTeam
from bot.team_file.year import PartPlan, plan_parts


@dataclass(frozen=True, slots=True)
class Change:
    """One field of a row, before and after."""

    field: str
    before: Any
    after: Any


@dataclass(frozen=True, slots=True)
class PersonPlan:
    """A person; `id` is null for one to add."""

    wanted: PersonRef
    id: int | None
    changes: tuple[Change, ...] = ()


@dataclass(frozen=True, slots=True)
class TeamPlan:
    """A team; `id` is null for one to add."""

    wanted: WantedTeam
    id: int | None
    changes: tuple[Change, ...] = ()
    seasons: tuple[PartPlan, ...] = ()
    events: tuple[PartPlan, ...] = ()


@dataclass(frozen=True, slots=True)
class PitcherPlan:
    """A pitcher; `id` is null for one to add."""

    wanted: WantedPitcher
    id: int | None
    changes: tuple[Change, ...] = ()


@dataclass(frozen=True, slots=True)
class Plan:
    """What loading does: rows to add, to change and to leave alone.

    `missing` are stored pitchers of the file's teams that it does not name: they are kept.
    `conflicts` say why the plan may not be applied.
    """

    people: tuple[PersonPlan, ...]
    teams: tuple[TeamPlan, ...]
    pitchers: tuple[PitcherPlan, ...]
    missing: tuple[str, ...]
    conflicts: tuple[str, ...]
    #: Pitchers whose consent the file gives otherwise than it was said: what was said stands.
    kept_consent: tuple[str, ...] = ()


def make_plan(stored: StoredState, wanted: Wanted) -> Plan:
    """Match rows and compare them field by field."""
    teams, team_conflicts = _match_teams(stored.teams, wanted.teams)
    matched_pitchers, pitcher_conflicts = _match_pitchers(stored.pitchers, wanted.pitchers)
    pitchers = [(_with_said_consent(new, old), old) for new, old in matched_pitchers]
    joined = _people_who_joined(stored, wanted.people(), pitchers)
    team_names = {old.id: new.name for new, old in teams if old}
    matched = {old.id for _, old in pitchers if old}
    return Plan(
        people=tuple(_plan_person(stored.people, joined, ref) for ref in wanted.people()),
        teams=tuple(_plan_team(new, old) for new, old in teams),
        pitchers=tuple(_plan_pitcher(new, old, team_names, joined) for new, old in pitchers),
        missing=tuple(
            str(old.values["name"])
            for old in stored.pitchers
            if old.id not in matched and old.teams & team_names.keys()
        ),
        conflicts=(*team_conflicts, *pitcher_conflicts),
        kept_consent=tuple(
            before.name
            for (before, _), (after, _) in zip(matched_pitchers, pitchers, strict=True)
            if before is not after
        ),
    )


def _with_said_consent(new: WantedPitcher, old: StoredPitcher | None) -> WantedPitcher:
    """A file's date changes no consent that was said in Slack or on paper."""
    if old is None or not old.consent_was_said:
        return new
    said = old.values["consent_on"]
    if new.values["consent_on"] == said:
        return new
    return replace(new, values={**new.values, "consent_on": said})


def _match_teams(
    stored: tuple[StoredTeam, ...], wanted: tuple[WantedTeam, ...]
) -> tuple[list[tuple[WantedTeam, StoredTeam | None]], list[str]]:
    """A team is known by its name, a renamed one by the channel in which it logs."""
    by_name = {old.values["name"]: old for old in stored}
    by_channel = {old.values["log_channel"]: old for old in stored}
    named = {by_name[new.name].id for new in wanted if new.name in by_name}
    pairs: list[tuple[WantedTeam, StoredTeam | None]] = []
    conflicts = []
    for new in wanted:
        same_channel = by_channel.get(new.log_channel)
        free = same_channel if same_channel and same_channel.id not in named else None
        if new.name in by_name and free:
            conflicts.append(
                f"{new.name}: the log channel is that of the team {free.values['name']}, which "
                "this file does not name; give each team its own."
            )
        pairs.append((new, by_name.get(new.name, free)))
    return pairs, conflicts


def _match_pitchers(
    stored: tuple[StoredPitcher, ...], wanted: tuple[WantedPitcher, ...]
) -> tuple[list[tuple[WantedPitcher, StoredPitcher | None]], list[str]]:
    pairs = [(new, next(_candidates(stored, new), None)) for new in wanted]
    conflicts = [
        f"{new.name}: the account belongs to one pitcher on file, the name and birth date to "
        "another; correct the row."
        for new in wanted
        if len({old.id for old in _sure_candidates(stored, new)}) > 1
    ]
    seen: dict[int, str] = {}
    for new, old in pairs:
        if old and old.id in seen:
            conflicts.append(
                f"{new.name} and {seen[old.id]} are the same pitcher on file; correct one row."
            )
        elif old:
            seen[old.id] = new.name
    return pairs, conflicts


def _sure_candidates(
    stored: tuple[StoredPitcher, ...], new: WantedPitcher
) -> Iterator[StoredPitcher]:
    yield from (old for old in stored if new.account and old.account == new.account)
    yield from (
        old
        for old in stored
        if _same_name(old, new) and old.values["birth_date"] == new.values["birth_date"]
    )


def _candidates(stored: tuple[StoredPitcher, ...], new: WantedPitcher) -> Iterator[StoredPitcher]:
    yield from _sure_candidates(stored, new)
    # A corrected birth date: same name and same family, so it is no namesake.
    yield from (old for old in stored if _same_name(old, new) and old.guardians & new.guardians)


def _same_name(old: StoredPitcher, new: WantedPitcher) -> bool:
    return str(old.values["name"]).casefold() == new.name.casefold()


def _people_who_joined(
    stored: StoredState,
    wanted: tuple[PersonRef, ...],
    pitchers: list[tuple[WantedPitcher, StoredPitcher | None]],
) -> dict[PersonRef, PersonRef]:
    """Guardians on file without an account whom the file now names by one: old to new.

    A name alone is not enough, since an account opens the record: every pitcher whose
    guardian the old row is must now have the new one.
    """
    known = {person.ref for person in stored.people}
    joined = {}
    for old in known - set(wanted):
        children = {one.id for one in stored.pitchers if old in one.guardians}
        for ref in wanted:
            same_name = ref.name.casefold() == old.name.casefold()
            if old.slack_id or not ref.slack_id or ref in known or not same_name:
                continue
            theirs = {match.id for new, match in pitchers if match and ref in new.guardians}
            if children and children <= theirs:
                joined[old] = ref
    return joined


def _plan_person(
    stored: tuple[StoredPerson, ...], joined: Mapping[PersonRef, PersonRef], ref: PersonRef
) -> PersonPlan:
    old = next((one for one in stored if joined.get(one.ref, one.ref) == ref), None)
    if old is None:
        return PersonPlan(ref, None)
    before = {"name": old.ref.name, "slack_id": old.ref.slack_id}
    return PersonPlan(ref, old.id, _compare(before, {"name": ref.name, "slack_id": ref.slack_id}))


def _plan_team(new: WantedTeam, old: StoredTeam | None) -> TeamPlan:
    if old is None:
        return TeamPlan(
            new, None, seasons=plan_parts((), new.seasons), events=plan_parts((), new.events)
        )
    staff_before = {role.value: old.staff[role] for role in TABLE_ROLES}
    staff_after = {role.value: new.staff[role] for role in TABLE_ROLES}
    return TeamPlan(
        new,
        old.id,
        _compare(old.values, new.values) + _compare(staff_before, staff_after),
        plan_parts(old.seasons, new.seasons),
        plan_parts(old.events, new.events),
    )


def _plan_pitcher(
    new: WantedPitcher,
    old: StoredPitcher | None,
    team_names: Mapping[int, str],
    joined: Mapping[PersonRef, PersonRef],
) -> PitcherPlan:
    if old is None:
        return PitcherPlan(new, None)
    before = {
        "account": old.account,
        "guardians": frozenset(joined.get(ref, ref) for ref in old.guardians),
        # Teams that this file does not name are another file's to say.
        "teams": frozenset(team_names[team] for team in old.teams if team in team_names),
    }
    after = {"account": new.account, "guardians": new.guardians, "teams": new.teams}
    return PitcherPlan(new, old.id, _compare(old.values, new.values) + _compare(before, after))


def _compare(before: Mapping[str, Any], after: Mapping[str, Any]) -> tuple[Change, ...]:
    return tuple(
        Change(name, before[name], value) for name, value in after.items() if before[name] != value
    )
