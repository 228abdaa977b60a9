"""What stands in forms: titles, labels, hints, and what is said at a wrong input."""

SUBMIT = "Save"
CLOSE = "Cancel"
CLOSE_NOTICE = "Close"
NOTICE_TITLE = "Spinkeeper"

#: At most 24 characters each.
TITLES = {
    "put_right": "Put it right",
    "outing": "Log a game",
    "bullpen": "Log a bullpen",
    "catch_play": "Log catch play",
    "roll_call": "Roll call",
    "game_counts": "Counts of one game",
    "sore_gone": "Soreness is gone",
    "pain": "Report pain",
    "fix_line": "Which one?",
    "settings": "Settings",
    "roster": "Roster",
    "roles": "Roles",
    "team_settings": "Team settings",
    "quiet_hours": "Quiet hours",
    "thresholds": "Thresholds",
    "schedules": "Schedules",
    "clearance": "Clinician's clearance",
    "family": "Write to the family",
}

FIELDS = {
    "who": "Who",
    "kind": "What was it?",
    "on": "Day",
    "pitches": "Pitches",
    "throws": "Throws",
    "spins": "Spins (breaking balls)",
    "curve": "Curveballs",
    "slider": "Sliders",
    "breaking": "Breaking balls",
    "changeup": "Changeups",
    "strikes": "Strikes",
    "innings": "Innings pitched, such as 4.1",
    "effort": "Effort, percent",
    "there": "Who was there",
    "more": "More pitchers, one a line",
    "site": "Where",
    "side": "Which side",
    "severity": "How bad, 0 to 10",
    "felt": "What is it?",
    "when": "When",
    "outing": "Which outing?",
    "whose": "Whose thresholds?",
    "said_by": "Who says so",
    "clinician": "Name of the licensed clinician",
    "cleared_on": "Day of the clearance",
    "limits": "Limits that the clinician set",
    "words": "Your words",
}
LEFT_EMPTY = "Leave empty what nobody counted."
MORE_HINT = "Such as: Leo 45p 6cb 3.1ip"
SEVERITY_HINT = "Leave empty where no number was said."

CHOICES = {
    "game": "Game",
    "live": "Live batting practice",
    "off": "Day off",
    "pain": "It hurts",
    "sore": "Sore",
    "left": "Left",
    "right": "Right",
    "during": "While throwing",
    "after": "After throwing",
    "next day": "The next day",
    "at rest": "At rest",
}

SITES = {
    "elbow": "Elbow", "shoulder": "Shoulder", "forearm": "Forearm", "arm": "Arm, no one place",
    "bicep": "Biceps", "tricep": "Triceps", "wrist": "Wrist", "hand": "Hand",
    "finger": "Finger", "back": "Back", "neck": "Neck", "lat": "Side of the back (lat)",
    "oblique": "Side of the trunk (oblique)", "hip": "Hip", "knee": "Knee", "leg": "Leg",
    "ankle": "Ankle", "head": "Head", "chest": "Chest",
}  # fmt: skip

PAIN_NOTE = (
    "Any pain in the throwing arm: stop throwing, and have a licensed clinician look before any "
    "more. The coaches and the guardians are told at once; nobody else is."
)

#: What is wrong with an input; `bot.wording.buttons.FORM_ERRORS` has those of every form.
ERRORS = {
    "empty": "Fill in at least one count. Nothing was saved.",
    "nobody": "Choose at least one pitcher. Nothing was saved.",
    "teams": "One team at a time, please: choose from one team only. Nothing was saved.",
    "twice": "This pitcher stands in two rows: put the counts into one. Nothing was saved.",
    "row": "Choose the pitcher of this row, or empty it. Nothing was saved.",
    "counts": "This pitcher has no counts yet: fill them in. Nothing was saved.",
    "side": "This place has no side: leave it empty. Nothing was saved.",
    "clinician": "Write the clinician's own name, such as Dr. Reyes. Nothing was saved.",
    "words": "Write something. Nothing was sent.",
    "ahead": "A clearance is recorded once it was given: today or earlier. Nothing was saved.",
    "older": "A report of pain is newer than this day: the clearance must come after it. Nothing "
    "was saved.",
    "limits": "I cannot keep this as a limit. Write for example “no breaking balls until 6/1, 30 "
    "throws at 60 ft”. Nothing was saved.",
    "unwritten": "I could not write this down as I would read it. Nothing was saved: please type "
    "it to me as a line.",
}


def row(label: str, number: int) -> str:
    """The label of an input in a row: "Pitcher 2: pitches"."""
    return f"Pitcher {number}: {label.lower()}" if label else f"Pitcher {number}"


def no_record(names: str) -> str:
    """Said of pitchers without consent on file."""
    return f"No consent on file, so nothing is counted: {names}."


MAY_NOT = {
    "settings": "The settings are for the coaches.",
    "": "There is nothing here that you may change.",
    "outing": "You may log no games here. Ask a coach to give you a part in the team.",
    "bullpen": "You may log no practice here. Ask a coach to give you a part in the team.",
    "catch_play": "You may log no practice here. Ask a coach to give you a part in the team.",
    "roll_call": "The roll call is for the coaches.",
    "new_team": "An owner or admin of the workspace sets up the first team, a coach any other.",
    "team_settings": "The team's settings are for its coaches.",
    "quiet_hours": "The team's settings are for its coaches.",
    "roles": "Roles are given and taken by a coach.",
    "roster": "The roster is for the coaches.",
    "roster_paste": "The roster is for the coaches.",
    "pitcher": "The roster is for the coaches.",
    "move_pitcher": "The roster is for the coaches.",
    "consent_paper": "Consent on paper is recorded by the coaches.",
    "delete_record": "Only a guardian, or the pitcher from 18 on, can have a record deleted.",
    "two_counts": "That is answered meanwhile, or it is for the pitcher's coaches.",
    "game_counts": "The counts of a whole game are for coaches and scorekeepers.",
    "pain": "You may report pain for no pitcher here. Tell a coach.",
    "put_right": "There is nothing in this line that you may change.",
    "fix_line": "There is nothing in this line that you may change.",
    "thresholds": "Only the staff can set a threshold. Please ask a coach.",
    "sore_gone": "Only the pitcher's own coaches write this down.",
    "clearance": "Only a coach or a guardian of that pitcher can record a clinician's clearance.",
    "family": "Only the pitcher's own coaches write to the family here.",
}

LIMITS_HINT = (
    "One a line or with commas, such as: no breaking balls until 6/1, no games until 6/8, 30 "
    "throws a day. Leave empty where there are none."
)
SORE_GONE_NOTE = (
    "For soreness alone: whoever you name told you that {name}'s is gone, all of it. They read "
    "what you write down. I'm a bot, not a doctor, and judge no arm."
)
NOBODY_SAYS = (
    "No guardian of {name} is on file, and a minor does not decide this alone. Add a guardian to "
    "the roster first; without a further report the soreness lapses after 14 days."
)
CLEARANCE_NOTE = (
    "This ends a hold. I'm a bot, not a doctor: I keep what you write, tell the other adults, and "
    "judge nothing."
)


def whole_team(name: str) -> str:
    """The option for the team at large."""
    return f"The whole team ({name})"
