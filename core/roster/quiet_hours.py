"""A team's quiet hours: the usual ones, or longer, never shorter."""

from core.ledger.by_hand import ByHandError, Hand, Refusal
from core.ledger.schedule_rows import timings
from core.model import ScheduleKind
from core.roster.teams import put_changes, team_to_change

#: Local hours that a team may choose, the default first. Youth-sport communication policies
#: end electronic contact with minors at 20:00 and begin it at 08:00: earlier and later only.
BEGINS = (20, 19, 18, 17)
ENDS = (8, 9, 10, 11)
#: What families and pitchers get in the evening: in quiet hours it would come a day late.
_IN_THE_EVENING = (ScheduleKind.REST_EVENING, ScheduleKind.SPIN)


class StillSentError(Exception):
    """A message of the team's schedules would fall into the quiet hours; carries its kind."""

    def __init__(self, kind: ScheduleKind) -> None:
        super().__init__(kind.value)
        self.kind = kind


def set_quiet_hours(hand: Hand, team_id: int, begin: int, end: int) -> None:
    """Set from which to which local hour nothing unasked-for reaches a family of the team.

    Raises `ByHandError` for who is no coach of it and for hours that are not offered, and
    `StillSentError` while a schedule sends later than `begin`.
    """
    team = team_to_change(hand, team_id)
    for name, value, offered in (("quiet_from", begin, BEGINS), ("quiet_to", end, ENDS)):
        if value not in offered:
            raise ByHandError(Refusal.IMPOSSIBLE, name)
    times = timings(hand.session, team_id)
    for kind in _IN_THE_EVENING:
        if times[kind].is_on and times[kind].at.hour >= begin:
            raise StillSentError(kind)
    put_changes(hand, team, {"quiet_from": begin, "quiet_to": end})
