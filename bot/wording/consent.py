"""What is said of consent to a pitcher's record, and of deleting it."""

from collections.abc import Sequence
from datetime import date

from bot.wording.words import day, listed, safe
from core.model import ConsentAct, ConsentWay

AGREE, DECLINE, WITHDRAW = "I agree", "I do not agree", "Withdraw consent"
WHO_AGREES = (
    "Only a guardian agrees to a pitcher's record, or the pitcher from 18 on: they type “consent” "
    "to me. The staff record a signature on paper in the roster."
)
AGREE_AFTER_ALL = "I agree after all"
DELETE, DELETE_FOR_GOOD, KEEP = "Delete the record…", "Delete for good", "Keep it"
ON_PAPER = "Record consent on paper"


def terms(name: str, teams: Sequence[str], *, has_account: bool, is_own: bool) -> str:
    """What is kept, who sees it, for how long, and how it ends: what is agreed to."""
    who, team = safe(name), listed([safe(one) for one in teams])
    readers = ["you"] if is_own else ["the guardians"]
    if has_account and not is_own:
        readers.append(f"{who}, with an account of {who}'s own")
    return (
        "• *What is stored:* name, date of birth, throwing hand, and what lines in Slack say: "
        "pitches, innings, practice throws, and soreness or pain. No pictures, no medical files.\n"
        f"• *Who sees it:* the coaches and assistants of {team}, and {listed(readers)}. "
        "A scorekeeper sees only what he or she typed. Pain is told to the coaches and the "
        "guardians, never to the team's channel.\n"
        f"• *For how long:* until you end it. If {who} leaves the team, the record is kept until "
        "you have it deleted. If the club takes the app out of its workspace, everything is "
        "deleted after 14 days.\n"
        f"• *How to end it:* press “{WITHDRAW}”, or write me “withdraw consent”. From then on "
        "nothing is counted or shown, and you can have the record deleted."
    )


def request(name: str, teams: Sequence[str], told: str, *, is_own: bool) -> str:
    """The request, with what is agreed to."""
    whose = "your" if is_own else f"{safe(name)}'s"
    team = listed([safe(one) for one in teams])
    return (
        f"*May I keep {whose} pitching record?* I keep the pitching log of {team}. Without a "
        f"yes nothing is counted for {'you' if is_own else safe(name)}.\n{told}\n"
        "I'm a bot, not a doctor: I quote published limits and judge no arm."
    )


def given(name: str, by: str, on: date, teams: Sequence[str], *, by_reader: bool) -> str:
    """The request once somebody has agreed, with who sees the record now."""
    who = "You" if by_reader else safe(by) or "A guardian"
    readers = (
        f"The coaches of {listed([safe(one) for one in teams])} see it."
        if teams
        else f"{safe(name)} is on no team here now: nothing is logged, and the record is only "
        "kept. Withdraw consent to have it deleted."
    )
    return f"{who} agreed on {day(on)} to {safe(name)}'s pitching record. {readers}"


def on_no_team(name: str) -> str:
    """The request once the pitcher has left."""
    return f"{safe(name)} is on no team here now, so I keep no log and ask for nothing."


def refused(name: str, by: str, on: date, *, by_reader: bool, withdrew: bool) -> str:
    """The request once somebody has said no: what is kept, and what can be done."""
    who = "You" if by_reader else safe(by)
    did = "withdrew consent" if withdrew else "did not agree"
    ends = (
        ""
        if by_reader
        else f" It starts again only when {safe(by)} agrees, or is no longer a guardian here."
    )
    return (
        f"{who} {did} on {day(on)}. Lines about {safe(name)} are kept back: nothing is counted, "
        f"and no record is shown.{ends} Pain is still told to the coaches."
    )


RECORD_GONE = "The record was deleted. Nothing is stored about that pitcher any more."


def said_to_staff(
    name: str, act: ConsentAct, way: ConsentWay, by: str, on: date, recorded_by: str
) -> str:
    """What the staff hear of it."""
    who = safe(by) or "A guardian"
    paper = f" on paper (recorded by {safe(recorded_by)})" if way is ConsentWay.PAPER else ""
    match act:
        case ConsentAct.AGREED:
            return (
                f"*Consent for {safe(name)}:* {who} agreed{paper}, {day(on)}. Lines that were kept "
                "back are counted now."
            )
        case ConsentAct.DECLINED:
            did = f"did not agree{paper}"
        case ConsentAct.WITHDRAWN:
            did = f"withdrew consent{paper}"
    return (
        f"*No consent for {safe(name)}:* {who} {did}, {day(on)}. From now on lines are kept back: "
        "nothing is counted and no record is shown. Please keep the count another way, and talk "
        "with the family."
    )


def kept_back(name: str, asked: Sequence[str]) -> str:
    """Told to the staff once of each pitcher whose lines are kept back."""
    if asked:
        who = listed([safe(one) for one in asked], last="or")
        next_step = f"I asked {who} in a direct message; a yes there starts the record."
    else:
        next_step = (
            "Nobody who may agree has a Slack account here: record a signature on paper with the "
            "button below."
        )
    return (
        f"Lines about {safe(name)} are kept but not counted: no consent is on file. {next_step} "
        "What was kept is counted then."
    )


def no_longer_kept_back(name: str, since: date) -> str:
    """The same message once consent stands."""
    return f"Consent for {safe(name)} is on file since {day(since)}: lines are counted."


def nothing_shown(name: str) -> str:
    """Said on the Home tab of the family of a pitcher without consent."""
    return (
        f"No consent is on file for {safe(name)}, so nothing is counted and no record is shown. "
        "What was written stays stored, kept back: it counts once consent is given, or a guardian "
        "(the pitcher from 18 on) has it deleted."
    )


def withdrawn_by_word(name: str) -> str:
    """The answer to whoever wrote “withdraw consent”."""
    return (
        f"Done: consent for {safe(name)} is withdrawn. Nothing is counted or shown from now on, "
        "and the coaches are told. Deleting your message does not take it back; the button here "
        "does."
    )


PAPER_TITLE, PAPER_SUBMIT = "Consent on paper", "Record it"
PAPER_FIELDS = {
    "who": "Name of the guardian (or adult pitcher) who signed",
    "on": "Day of the signature",
    "act": "What was said",
}
PAPER_CHOICES = {
    ConsentAct.AGREED: "Agrees to the record",
    ConsentAct.WITHDRAWN: "Does not agree, or withdraws",
}
PAPER_NEEDS_NAME = "Write the name of whoever signed. Nothing was recorded."


def on_paper(name: str, told: str) -> str:
    """What stands above the inputs: what must be on the paper."""
    return f"*{safe(name)}.* The paper must say at least this, and be kept by the club:\n{told}"


DELETE_TITLE, DELETE_SUBMIT = "Delete the record", "Go on"


def delete_explained(name: str) -> str:
    """What deletion does, before it is asked a second time."""
    return (
        f"*This deletes everything that I store about {safe(name)}:* name, date of birth, every "
        "outing, practice and pain report, holds and clearances, and the words of lines about "
        f"{safe(name)} alone. In lines about several pitchers the name and counts are taken out.\n"
        "It cannot be undone, and the pitcher is off the team's list. Rest that was owed is "
        "forgotten with it: the coach must keep it another way.\n"
        "Messages that stand in Slack stay there; whoever wrote them can delete them.\n"
        "I ask once more in a direct message before anything is deleted."
    )


def delete_asked(name: str) -> str:
    """The second question."""
    return f"Last question: delete everything that I store about {safe(name)}, for good?"


def delete_begun(name: str) -> str:
    """Until it is done, seconds later."""
    return f"Deleting everything about {safe(name)}…"


DELETE_KEPT = "Nothing was deleted."


def delete_for_staff(name: str, by: str, state: str) -> str:
    """What the staff read of a deletion, before and after."""
    if not name:
        return f"At the request of {safe(by)} a pitcher's record was deleted for good."
    if state == "cancelled":
        return f"{safe(by)} thought about deleting {safe(name)}'s record and kept it."
    return f"{safe(by)} asks to have {safe(name)}'s record deleted and may confirm it now."
