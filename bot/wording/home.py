"""What stands on a Home tab, for a pitcher, a guardian, a coach, and for anybody else."""

from collections.abc import Mapping, Sequence
from datetime import date

from bot.wording.answers import outing_heading, what_was_read
from bot.wording.asked import COACH_DECIDES, when
from bot.wording.holds import stands
from bot.wording.sheet import MANY, sheet
from bot.wording.words import counted, day, listed, percent, safe, sentences
from core.due.spin import SpinWeek
from core.due.waiting import Waiting
from core.home import ArmCard, Board
from core.ledger.asked import SheetAnswer, WhenAnswer
from core.ledger.logged import Logged
from core.ledger.notices import NoticeKind
from core.mix import Mix, Window
from core.model import Pitcher
from core.pain.status import ArmStatus

LOG = "Log"
HOLDS = "Holds and limits"
TODAY = "Who can throw today"
AHEAD = "The next six days, if nobody throws before"
ALERTS = "Alerts to see"
QUESTIONS = "Questions that wait for an answer"
NOT_READ = "Lines that I could not read"
SETTINGS = "Settings"
ABOUT = "About this log"
NO_HOLDS = (
    "No arm is on hold and no clinician's limit is on record. That says nothing of how an "
    "arm is: ask."
)
#: So many are named one by one.
MOST_NAMED = 10

PRIVACY = (
    "What you see here is yours alone: pitchers see their own record, guardians their children's, "
    "coaches their teams'. Pain is told to adults only, never in a channel. Nothing leaves this "
    "workspace. I'm a bot, not a doctor, and I judge no arm."
)
STRANGER_TITLE = "The pitching log"
STRANGER = (
    "I keep a youth team's pitching log: pitch counts, breaking balls, days of rest by the "
    "published rules, and reports of pain that reach the adults at once. People type one short "
    "line after a game or a practice, and I answer."
)
GET_IN = (
    "I don't know you as part of a team yet, so there is nothing to show you. Ask a coach to add "
    "you to the roster, then open this tab again. A pitcher younger than the team's account age "
    "is logged for by a parent, the scorekeeper or the coaches."
)
HOW = (
    "Type a line to me in Messages, or in the log channel, for example “62p 11cb 4.1ip vs "
    "Summit”. “help” lists what I know; /spinkeeper works everywhere."
)
SCOREKEEPER = (
    "You keep the counts of games. What you log is read back to you; the records of the pitchers "
    "are for the coaches and the families."
)
SHUT = "I cannot write to you"
SHUT_HELP = (
    "Slack takes no direct messages from me for you, so my answers and notices do not reach you. "
    "What you log is kept all the same, and the coaches were asked to pass on what matters. Ask "
    "whoever runs this workspace to allow direct messages from me (the Messages tab of this app). "
    "Then write me “help” there: once my answer comes, this note is gone when you open Home again."
)
PAGE_BACK, PAGE_ON = "Back", "Next"
CUT = "There is more than fits here. Ask me in Messages: “alerts”, “who”, “rest” with a name."


def own_title(name: str, *, own: bool) -> str:
    """The heading of a card."""
    return "Your arm" if own else name


def steps(team: str) -> str:
    """The heading of what is still open in a team's set-up."""
    return f"{team}: next steps"


def rest(card: ArmCard, *, own: bool) -> str:
    """Whether the rest is done, how many by the book, or until when, and by which book."""
    return when(WhenAnswer((card.today,), None, {}, own=own, for_family=True))


def spin(week: SpinWeek | None) -> str:
    """This week's spin reps against the plan; nothing for who throws no breaking ball yet."""
    if week is None:
        return ""
    done = f"in {counted(week.sessions, 'session')}" if week.sessions else "none logged yet"
    return f"Spin reps this week: {week.reps} of {week.planned} ({done})."


def mix(windows: Mapping[Window, Mix], line: int | None) -> str:
    """The share of breaking balls over the month and the season, against the coach's line."""
    told = [
        f"{percent(one.share)} ({one.breaking} of {one.typed}), {window}"
        for window in (Window.MONTH, Window.SEASON)
        if (one := windows[window]).share is not None
    ]
    limit = f" The coach's line is {line} %." if line is not None else ""
    if not told:
        return f"Breaking balls: no game pitches counted by type yet.{limit}"
    return f"Breaking balls: {'; '.join(told)}.{limit}"


def outings(last: Sequence[Logged]) -> str:
    """The last outings, newest first."""
    if not last:
        return "No outing is on record. Days without a line are unknown, not days off."
    rows = [f"• {outing_heading(None, one).strip('*')}{_counts(one)}" for one in last]
    return sentences(["*Last outings*", *rows])


def _counts(one: Logged) -> str:
    said = what_was_read(one).removeprefix("Read: ").rstrip(".")
    return f": {said}" if said else ""


def fix(one: Logged) -> str:
    """The label of the button that puts an outing right."""
    return f"Fix {day(one.on)}"


_SENT = {
    NoticeKind.ANSWER: ("answer to an own line", "answers to own lines"),
    NoticeKind.ASKED_AGAIN: ("question asked once more", "questions asked once more"),
    NoticeKind.SPIN_REPS: ("spin reminder", "spin reminders"),
    NoticeKind.ALERT: ("note on the mix", "notes on the mix"),
    NoticeKind.HINT: ("word of help", "words of help"),
}
_OTHER = ("other message", "other messages")


def sent(kinds: Mapping[str, int]) -> str:
    """What went to the child alone in the last seven days."""
    if not kinds:
        return "Sent to the child alone in the last 7 days: nothing."
    counts: dict[tuple[str, str], int] = {}
    for kind, number in kinds.items():
        noun = _SENT.get(NoticeKind(kind), _OTHER)
        counts[noun] = counts.get(noun, 0) + number
    named = [counted(number, *noun) for noun, number in counts.items()]
    return (
        f"Sent to the child alone in the last 7 days: {listed(named)}. All of it is mine; nothing "
        "that an adult writes is passed on to one child alone."
    )


def held(pitchers: Sequence[tuple[Pitcher, ArmStatus]]) -> str:
    """The arms that must not pitch, or that a clinician limits."""
    if not pitchers:
        return NO_HOLDS
    return sentences(f"• *{safe(one.name)}*: {stands(status)}" for one, status in pitchers)


def today(board: Board) -> str:
    """The staff sheet of today."""
    return sheet(SheetAnswer(((board.today, board.arms),)))


def ahead(board: Board) -> str:
    """Of each following day who has the rest done; of many arms those who have not, if fewer."""
    arms = [one.pitcher for one in board.arms]
    rows = [f"• {_day_ahead(on, free, arms)}" for on, free in board.ahead]
    return sentences([*rows, f"By the books and what is on record. {COACH_DECIDES}"])


def _day_ahead(on: date, free: Sequence[Pitcher], arms: Sequence[Pitcher]) -> str:
    if not free:
        return f"*{day(on)}*: nobody."
    if len(free) == len(arms):
        return f"*{day(on)}*: all {len(arms)}."
    resting = [one for one in arms if one not in free]
    but = len(arms) >= MANY and len(resting) < len(free)
    names = listed(sorted(safe(one.name) for one in (resting if but else free)))
    return f"*{day(on)}*: {len(free)} of {len(arms)}{', all but' if but else ':'} {names}."


def waiting(lines: Sequence[Waiting]) -> str:
    """Lines that wait: who wrote them and when, newest first."""
    shown = list(reversed(lines[-MOST_NAMED:]))
    rows = [f"• {safe(one.author)}, {day(one.on)}" for one in shown]
    more = len(lines) - len(rows)
    return sentences([*rows, *([f"and {more} older."] if more else [])])


def page(number: int, last: int) -> str:
    """Which page of the coach's boards this is."""
    return f"Page {number} of {last}"


def turn(label: str, team: str) -> str:
    """The label of a button that turns to another page."""
    return f"{label}: {team}"
