"""What is said where a question got no answer: refused, not understood, or about no line."""

from bot.cut import cut
from bot.wording.questions import QUOTED, question
from bot.wording.words import listed, safe, starts
from core.ledger.asked import NotUnderstood, Refused
from core.ledger.question import Question

NO_LAST_LINE = "I find no line of yours in the log that could be put right."


def last_line(typed: str, *, pressed: bool) -> str:
    """The newest line of somebody who wants it undone or put right, and how that is done."""
    quoted = f"Your newest line in the log: “{safe(cut(typed, QUOTED))}”."
    if pressed:
        return (
            f"{quoted} Nothing is changed yet: press what you want. You can also edit or delete it."
        )
    return f"{quoted} Nothing is changed yet: edit or delete your message, and I follow."


def other_count(typed: str, pitches: int) -> str:
    """The newest line of somebody who names another count for it."""
    return (
        f"Your newest line in the log: “{safe(cut(typed, QUOTED))}”. Should it be {pitches}? "
        "Nothing is changed yet: press what you want. A new outing? Type it with its kind."
    )


def make_it(pitches: int) -> str:
    """The label of the button that sets the count."""
    return f"Make it {pitches}"


def counts_so(typed: str, pitches: int) -> str:
    """The newest line, once it has that count."""
    return f"Done: your line “{safe(cut(typed, QUOTED))}” counts {pitches} now."


def taken(answer: str, typed: str) -> str:
    """Said of a typed answer that was taken."""
    return (
        f"Got it: “{safe(cut(answer, QUOTED))}” for your line “{safe(cut(typed, QUOTED))}”. My "
        "answer to that line is up to date."
    )


def which(*, unsure: bool, several: bool) -> str:
    """Said above the questions that a typed answer may be of."""
    if unsure:
        return "No problem: press what you know. What you don't know stays open."
    return "Which one do you mean? Press it." if several else "I'm not sure what that answers."


def of_line(typed: str, asked: Question) -> str:
    """A question once more, with the line that it is about."""
    return f"“{safe(cut(typed, QUOTED))}”: {question(asked)}"


EMPTY_ROSTER = "Your roster holds no pitcher yet. Add the first one, then ask me again."


def refused(answer: Refused) -> str:
    """A polite refusal that gives no hint of the answer."""
    if answer.empty_roster:
        return EMPTY_ROSTER
    if not answer.own_names:
        return "There is no pitcher whose record you may ask about here. The coaches can answer."
    own = listed(list(map(safe, answer.own_names)))
    if answer.staff_only:
        return f"That is for the coaches to ask. You can ask me about {own}."
    return f"I can only answer you about {own}."


def not_understood(answer: NotUnderstood) -> str:
    """What was not clear in a question, and how to ask it."""
    if answer.typed:
        typed = safe(answer.typed)
        if answer.offered:
            names = listed([safe(name) for _, name in answer.offered], last="or")
            return f"Which pitcher is “{typed}”: {names}? Ask again with the full name."
        return f"I know no pitcher called “{typed}”. Ask again with the name as on the roster."
    if answer.past:
        return (
            f"{starts(answer.past)} lies in the past already. Which day do you mean? Write a "
            "date, such as 5/9."
            if len(answer.past) == 1
            else f"{starts(answer.past)} lie in the past already. Which days do you mean? Write "
            "dates, such as 5/9."
        )
    return _UNCLEAR.get(answer.unclear[0]) or (
        f"I understood a question, but not “{safe(answer.unclear[0])}”. Ask it once more in other "
        f"words, for example {EXAMPLES}."
    )


EXAMPLES = "“who can throw saturday”, “when can Leo pitch”, “how many did Leo throw sat”"
_UNCLEAR = {
    "who": "Who is that about? Ask again with the pitcher's name.",
    "pitches": "How many pitches? Ask again with a number, for example “if Leo throws 40 sat”.",
    "games": "Which games? For example “plan sat 9am 80, sat 2pm 70, sun 10am 90”.",
}
