"""What is said of the roster: its forms, a file that was dropped, and what is wrong in it."""

from collections.abc import Sequence

from bot.wording.words import counted, listed, safe
from core.roster.errors import Wrong
from core.roster.moves import Move

CHOOSE = "Choose the pitcher first."
ROSTER_TITLE, ROSTER_SUBMIT = "Roster", "Next"
PITCHER_TITLE_NEW, PITCHER_TITLE = "Add a pitcher", "Change a pitcher"
MOVE_TITLE, PASTE_TITLE, PASTE_SUBMIT = "Team and season", "Paste a roster", "Look at it"
ADD, CHANGE, MOVE_LABEL, PAPER, PASTE = (
    "Add a pitcher",
    "Change a pitcher",
    "Second team, transfer, end of season",
    "Record consent on paper",
    "Add or change many from a CSV",
)
FIELDS = {
    "what": "What do you want to do?",
    "pitcher": "Pitcher",
    "team": "Team",
    "name": "First and last name",
    "also_called": "Also called (separate with semicolons)",
    "birth_date": "Date of birth",
    "throws": "Throws",
    "breaking_pitch": "Breaking ball",
    "pitch_caller": "Who calls the pitches?",
    "account": "The pitcher's own Slack account",
    "guardians": "Guardians with a Slack account",
    "guardians_on_file": "Guardians without one (separate with semicolons)",
    "grade": "School grade, 1 to 12",
    "level": "Level of play, such as varsity",
    "move": "What happens?",
    "to": "Which team?",
    "csv": "CSV with its header line",
}
HINTS = {
    "birth_date": "Every limit depends on age. Only stored; I show it to nobody.",
    "birth_date_kept": "Leave it empty to keep the one on file, which I show to nobody.",
    "guardians": "They are asked for consent in a direct message, and told of rest days and pain.",
    "guardians_on_file": "The staff record their consent on paper.",
    "grade": "Needed where a rule book goes by grade.",
    "csv": "At most 3,000 characters; drop a longer file into our direct message.",
}
THROWS = {"R": "Right", "L": "Left"}
BREAKING = {"curveball": "Curveball", "slider": "Slider", "none": "None yet"}
CALLERS = {"pitcher": "The pitcher", "dugout": "The dugout"}
MOVES = {
    Move.ALSO: "Throws for a second team too",
    Move.MOVES: "Moves to another team",
    Move.LEAVES: "Leaves: season over, graduated, or stopped",
}
MOVE_SAYS = (
    "The record stays with the pitcher. On a second team, or after a move, the coaches there see "
    "it, and the family is told so. Whoever leaves keeps a record that nobody logs to; only the "
    "family can have it deleted. At the end of a season you need do nothing: counts go on by date, "
    "and a pitcher who comes back finds the record as it was."
)


def add(name: str) -> str:
    """The label of the button that opens the form for a new pitcher."""
    return f"Add {name}" if name else ADD


NEEDS = "I need the date of birth and a guardian; the form asks for both."


def change(name: str) -> str:
    """The label of the button that opens the form of a pitcher on the roster."""
    return f"Change {name}"


def known(names: Sequence[str]) -> str:
    """Said where the roster holds a pitcher of that name already."""
    return f"On the roster already: {listed(list(map(safe, names)))}. Another one of that name?"


def joined(name: str, team: str, by: str) -> str:
    """To the staff of the team that a pitcher joins."""
    return (
        f"*{safe(name)} throws for {safe(team)} now* (by {safe(by)}). From now on you read and log "
        "the record; the family is told, and may withdraw consent."
    )


def account_hint(age: int) -> str:
    """Who may have an account of his own."""
    return (
        f"From {age} on in this team (Slack's terms do not allow accounts under 16). Leave it "
        "empty for a younger one: guardians and staff log then."
    )


def wrong(what: Wrong, age: int = 16) -> str:
    """What stands under an input that cannot be taken."""
    return f"{_WRONG[what].format(age=age)} Nothing was changed."


_WRONG = {
    Wrong.NO_NAME: "Write the name.",
    Wrong.KNOWN: "A pitcher of this name and date of birth is on file already: change that one, or "
    "give him a second team.",
    Wrong.NO_BIRTH_DATE: "The date of birth is needed: every limit depends on age.",
    Wrong.AGE: "This date makes an age outside 5 to 22: check the year.",
    Wrong.TOO_YOUNG: "Too young for an account in this team ({age}): leave it empty.",
    Wrong.TAKEN: "This account is another pitcher's.",
    Wrong.MINOR_WITH_A_ROLE: "This account is that of staff, a scorekeeper or a guardian, who must "
    "be adults.",
    Wrong.NO_GUARDIAN: "A pitcher under 18 needs a guardian: choose one, or write a name below.",
    Wrong.OWN_GUARDIAN: "Nobody is a guardian of himself.",
    Wrong.ON_TEAM: "The pitcher is on that team already.",
    Wrong.NO_TEAM: "Choose the team.",
    Wrong.NO_COACH: "The last coach cannot leave: give the role to somebody else first.",
    Wrong.MINOR: "This account is that of a pitcher under 18; name an adult.",
    Wrong.NOTHING_TO_DO: "That is so already.",
    Wrong.TEAM_NAME: "There is a team of this name already.",
    Wrong.CHANNEL: "This channel is another team's, or the same as the other one: each team has a "
    "log channel of its own, and a private one for the staff.",
    Wrong.ZONE: "That is no time zone that I know: write one such as America/Chicago.",
    Wrong.BOOKS: "Choose at least one rule book.",
}
GRADE_WRONG = "Write a whole number from 1 to 12, or leave it empty. Nothing was changed."

APPLY, CANCEL = "Apply it", "Cancel"
READING = "I'm reading that file…"
NO_STAFF = "Only the staff of a team can load a roster. Nothing was changed."
TEMPLATE = (
    "name,teams,birth date,throws,breaking pitch,consent date,account,guardians,"
    "who calls pitches,also called\n"
    "Rio Vale,{team},2012-06-01,R,none,,,@june,pitcher,Ri"
)


def template(team: str) -> str:
    """How a roster file looks; the header and one invented row."""
    row = TEMPLATE.format(team=team.replace("`", ""))
    return (
        "A roster is a CSV, comma separated, with this header. Dates go year-month-day; several "
        "names in a cell are parted by semicolons; people by @handle, full name or member id; "
        "“Name (no account)” for a guardian without Slack. Send me the file here; I show what "
        f"would change before anything is.\n```{safe(row).replace('ˍ', '_')}```"
    )


def preview(lines: Sequence[str]) -> str:
    """What loading a roster would change."""
    return "*This would change. Nothing is changed yet.*\n" + _listed(lines)


NOTHING_NEW = "That roster says what is on file already: nothing to change."


def faulty(problems: Sequence[str]) -> str:
    """What is wrong in a roster, row by row."""
    return (
        f"I changed nothing: {counted(len(problems), 'thing')} to put right first. Correct "
        f"the file and send it again.\n{_listed(problems)}"
    )


def applied(lines: Sequence[str]) -> str:
    """What was changed."""
    return "*Done.*\n" + _listed(lines)


APPLYING = "Applying it…"
CANCELLED = "Cancelled. Nothing was changed."
TOO_OLD = "This is more than a day old, so I forgot the file. Send it again."


def unreadable(reason: str) -> str:
    """Why a file could not be had."""
    return f"{_UNREADABLE[reason]} Nothing was changed."


_UNREADABLE = {
    "too large": "That file is larger than 200 kB: send the roster alone.",
    "not text": "That is no text in UTF-8: save the roster as “CSV, comma separated (UTF-8)”.",
    "not given": "Slack does not give me that file. The app may lack the right to read files: "
    "paste the roster instead (“Roster”, then “Add or change many from a CSV”).",
    "no team": "Set up the team first; then send the roster again.",
}
#: Lines of a report that a message shows.
MOST_LINES = 60


def _listed(lines: Sequence[str]) -> str:
    shown = [f"• {safe(line.strip())}" for line in lines[:MOST_LINES]]
    if len(lines) > MOST_LINES:
        shown.append(f"• … and {counted(len(lines) - MOST_LINES, 'more line')}")
    return "\n".join(shown)
