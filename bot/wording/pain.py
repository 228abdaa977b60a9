"""What is said when an arm hurts: thank, stop, tell the adults, defer to a clinician.

No diagnosis, no score below which throwing would be all right, no medicine, no promise.
"""

from collections.abc import Sequence
from datetime import date

from bot.wording.words import counted, day, listed, safe, sentences

NOT_A_DOCTOR = "I'm a bot, not a doctor; a licensed clinician decides."
THE_COACHES = "the coaches"
TIRED_ARM = "tired arm"
#: After the place, where the thanks to the author would name a part of the body and no more.
PAIN = " pain"
URGENT = (
    "If the arm is numb, swollen, out of shape, or hurts at rest, get urgent medical care now; in "
    "an emergency call your emergency number."
)
STOP = "Stop throwing today. Please have a licensed clinician check this before any more throwing."

STOP_FOR = (
    "{name} should stop throwing today. Please have a licensed clinician check this before any "
    "more throwing."
)


def site(
    name: str | None,
    severity: int | None,
    side: str | None,
    when: str | None,
    *,
    without_number: str = "",
) -> str:
    """Where it hurts and how much: "left elbow 3/10, after"; else with `without_number`."""
    where = " ".join(part for part in (side, name or "arm") if part)
    number = f" {severity}/10" if severity is not None else without_number
    return safe(f"{where}{number}" + (f", {when}" if when else ""))


def sore(where: str) -> str:
    """Soreness in so many words, kept apart from pain."""
    return f"sore {where}"


def second_day(where: str) -> str:
    """Soreness, or a tired arm, that counts as pain since it did not go away overnight."""
    return f"{where}, still there on the second day"


def to_author(
    sites: Sequence[str], told: Sequence[str], first: str, hold: str, of: str = ""
) -> str:
    """The private answer to whoever reported pain of a throwing arm; what is urgent comes first.

    `of` names the pitcher where it is not the author's own arm.
    """
    heard = f" I've told {listed(told)}." if told else ""
    whose, stop = f"{safe(of)}, " if of else "", STOP_FOR.format(name=safe(of)) if of else STOP
    thanks = f"Thank you for saying so: {whose}{listed(sites)}. {stop}{heard}"
    return sentences([first, thanks, hold, _cautions(first)])


def _cautions(first: str) -> str:
    """What ends a report; what is urgent is said once, and never below anything less urgent."""
    return NOT_A_DOCTOR if URGENT in first else f"{URGENT} {NOT_A_DOCTOR}"


def noted_for_author(sites: Sequence[str], told: Sequence[str], of: str = "") -> str:
    """The private answer to soreness, tiredness or pain away from the throwing arm."""
    heard = f" I've told {listed(told)}." if told else ""
    whose = f"{safe(of)}, " if of else ""
    return (
        f"Thank you for saying so: {whose}{listed(sites)}.{heard} If it hurts to throw, stop and "
        f"say so; if it is still there tomorrow, post it again. {NOT_A_DOCTOR}"
    )


def to_staff(pitcher: str, sites: Sequence[str], on: date, author: str, stop: bool) -> str:
    """The report as the staff read it."""
    report = f"{safe(pitcher)}: {listed(sites)} ({day(on)}, reported by {safe(author)})."
    if stop:
        return (
            f"*Pain report.* {report} No more throwing until a licensed clinician has checked it."
        )
    return (
        f"*Arm report.* {report} Logged. If it is still there on the second day, treat it as "
        "pain: stop throwing and have it checked."
    )


def seen_before(lines: int) -> str:
    """Said to the staff of earlier reports at the same site."""
    if not lines:
        return ""
    return f"Reported at the same site in the twelve months before: {counted(lines, 'line')}."


def pass_on(missing: Sequence[str], has_guardian: bool) -> str:
    """What the staff must do for the guardians whom the bot cannot reach."""
    if not has_guardian:
        return "No guardian is on file: please tell the family yourself, and add a guardian."
    if missing:
        names = listed([safe(name) for name in missing])
        return f"Not in this workspace: {names}. Please pass this on, in these words or your own:"
    return ""


COPIED = "No guardian is on file for this pitcher, so this is copied to you as a second adult."


def copied_to(names: Sequence[str]) -> str:
    """Said to the staff where no guardian is on file."""
    if not names:
        return "There is no second adult on this staff to copy either: please add one."
    return f"Copied to {listed(list(dict.fromkeys(names)))} as a second adult."


NO_STAFF_CHANNEL = (
    "I cannot post in the staff channel any more, so this comes to you. Put me back into the "
    "channel, or name another one in the team file and load it again."
)


def unreached(guardian: str, pitcher: str) -> str:
    """Said to the staff when a guardian's direct message was refused by Slack."""
    return (
        f"I could not reach {safe(guardian)} about the report of {safe(pitcher)}. Please tell "
        "the family yourself."
    )


def families_told(names: Sequence[str]) -> str:
    """Which guardians got the notice, for the staff."""
    return f"Told: {listed([safe(name) for name in names])}." if names else ""


def to_guardian(
    guardian: str, pitcher: str, sites: Sequence[str], on: date, stop: bool, first: str = ""
) -> str:
    """The notice a parent reads first; `first` is what stands above it."""
    child = safe(pitcher.split()[0])
    heard = (
        f"{safe(guardian.split()[0])}, a line in the pitching log says that {safe(pitcher)} has "
        f"pain: {listed(sites)} ({day(on)}). The coaches have been told."
    )
    if stop:
        return (
            f"{heard}\n{child} should stop throwing today. Please have a licensed clinician check "
            f"this before any more throwing.\n{_cautions(first)}"
        )
    return (
        f"{heard}\nIf it hurts to throw, {child} should stop. If it is still there on the second "
        f"day, please have it checked before any more throwing. {NOT_A_DOCTOR}"
    )


def unplaced(author: str, named: str) -> str:
    """Pain in a line that could not be laid to a pitcher's record."""
    who = f" of {safe(named)}" if named else ""
    ask = f"Please ask {safe(named)} and the family" if named else "Please ask who it is"
    return (
        f"*Pain report without a record.* A line by {safe(author)} speaks of pain{who}, and I "
        f"could not put it on a record. {ask}: no more throwing until a licensed clinician has "
        f"checked it. {NOT_A_DOCTOR}"
    )


def place_on(pitcher: str) -> str:
    """The label of the button that says whose pain it is."""
    return f"It is {pitcher}"


def placed(pitcher: str, by: str) -> str:
    """What follows once the staff have said whose pain it is."""
    return f"*{safe(by)} put it on {safe(pitcher)}'s record*; the family is told."


def unplaced_for_guardian(pitcher: str) -> str:
    """The same for a parent of the pitcher whom it names, of whom no record is kept."""
    return (
        f"A line in the pitching log speaks of pain of {safe(pitcher)}. I could not put it on a "
        f"record; the coaches have been told.\n{STOP_FOR.format(name=safe(pitcher))}\n"
        f"{URGENT} {NOT_A_DOCTOR}"
    )


def recorded_gone(pitcher: str) -> str:
    """The answer to whoever said that it is gone."""
    return (
        f"On record: {safe(pitcher)}'s pain is gone, as you say. The coaches read it; the coach "
        "decides what he throws. If it comes back: stop, and write me."
    )


def sore_gone(pitcher: str, said_by: str, by: str) -> str:
    """Told to the staff and the family when a coach records that soreness is gone."""
    return (
        f"{safe(by)} recorded that {safe(said_by)} says {safe(pitcher)}'s soreness is gone. It no "
        "longer stands against throwing. If that is not so, write me what hurts: it counts at once."
    )


def gone(pitcher: str, by: str) -> str:
    """Told to the staff when a family says that a reported pain is gone."""
    return (
        f"{safe(by)} says that {safe(pitcher)}'s pain is gone. The report no longer stands against "
        "throwing; the coach decides what he throws, and a licensed clinician should have checked "
        "it."
    )


def danger(author: str) -> str:
    """Told to the staff about a line that a human must look at; nothing of it is repeated."""
    return (
        f"*Please look at a line by {safe(author)} yourself, today.* Its words may mean that "
        "somebody is in danger; I cannot judge that. If so, call the emergency number first. "
        "Adults who work with minor athletes must report suspected abuse within 24 hours "
        "(Pub. L. 115-126)."
    )


def withdrawn(pitcher: str, sites: Sequence[str], on: date) -> str:
    """The words that follow a report which its author took back."""
    return (
        f"The report about {safe(pitcher)} ({listed(sites)}, {day(on)}) was taken back: its line "
        "was edited or deleted. That ends nothing by itself; please talk about it, and let a "
        "licensed clinician decide about throwing."
    )


WITHDRAWN_MARK = "_This report was taken back by its author; the adults decide what follows._"


GONE, NOT_YET = "Yes, it is gone", "No, not yet"


def is_it_gone(pitcher: str, what: str, since: date, *, own: bool) -> str:
    """Asked of a family about pain or soreness (`what`) after 1, 3 and 7 days; of a pitcher of
    18 or more himself.
    """
    whose = f"you reported {what}" if own else f"{what} of {safe(pitcher)} was reported"
    may = "you may throw" if own else "this arm may throw"
    return (
        f"On {day(since)} {whose}. Is it gone, all of it? Until you say so, no answer of mine says "
        f"that {may}. A licensed clinician should have checked it. {NOT_A_DOCTOR}"
    )


def not_yet(by: str, pitcher: str, what: str, *, asks_again: bool) -> str:
    """The question once it was answered with "not yet"."""
    later = "I'll ask once more. " if asks_again else ""
    return (
        f"{safe(by)} says that {safe(pitcher)}'s {what} is not gone yet: no throwing. {later}Write "
        "“no pain” to me once it is gone. Please have a licensed clinician check it."
    )


def kept_not_yet(pitcher: str) -> str:
    """The answer to whoever typed that it is not gone, instead of the button."""
    return (
        f"Kept: not gone yet for {safe(pitcher)}, so no throwing. If it is worse, or hurts "
        f"somewhere else, write me where. {NOT_A_DOCTOR}"
    )


def answered_gone(pitcher: str) -> str:
    """The question once the report no longer stands."""
    return f"Answered: the report about {safe(pitcher)}'s arm no longer stands."


def answered_lapsed(pitcher: str) -> str:
    """The question once soreness was not reported again for 14 days."""
    return (
        f"Nobody spoke of {safe(pitcher)}'s soreness again in 14 days, so I no longer hold it "
        "against throwing. That says nothing of how the arm is: please ask."
    )


def answered_held(pitcher: str) -> str:
    """The question once the arm is on hold."""
    return f"{safe(pitcher)} is on hold since: only a licensed clinician's clearance ends that."


def ask_family(pitcher: str, what: str, since: date) -> str:
    """Told to the staff where no guardian can be asked by the bot."""
    return (
        f"I can reach no guardian of {safe(pitcher)}, whose {what} was reported on {day(since)}. "
        "Please ask the family yourself how it is, and add a guardian. Until a guardian says that "
        f"it is gone, no answer says that this arm may throw. {NOT_A_DOCTOR}"
    )
