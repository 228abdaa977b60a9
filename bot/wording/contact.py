"""What is said to whoever ends, or takes up again, what the bot writes unasked."""

from collections.abc import Sequence

from bot.wording.pain import NOT_A_DOCTOR
from bot.wording.words import listed, safe

NO_REMINDERS = (
    "Done: no more reminders. Reports of pain, holds, health alerts and answers to your own "
    "lines still come. “start reminders” brings them back."
)
#: Said beside it to a guardian, who may have meant the child.
OR_THE_CHILD = "To stop what I write to your child, type “do not message {name}”."
REMINDERS = "Done: reminders come again, between 08:00 and 20:00. “stop reminders” ends them."


def no_contact(pitcher: str) -> str:
    """Said to the guardian who asked that a child is not written to."""
    name = safe(pitcher)
    return (
        f"Done: from now on I write nothing to {name}. What would have gone to {name} comes to you "
        f"alone, answers to {name}'s own lines too. The staff see that you asked for it. “message "
        f"{name} again” ends it."
    )


def contact(pitcher: str) -> str:
    """Said to the guardian who ended it."""
    name = safe(pitcher)
    return f"Done: messages for {name} go to {name} again. “do not message {name}” ends them."


def no_contact_for_staff(guardian: str, pitcher: str) -> str:
    """Told to the staff, who are bound by it too."""
    return (
        f"{safe(guardian)} asked that {safe(pitcher)} is not written to. I write to "
        f"{safe(guardian)} alone instead. Please do the same; emergencies are exempt."
    )


def contact_for_staff(guardian: str, pitcher: str) -> str:
    """Told to the staff when it ends."""
    return f"{safe(guardian)} says that {safe(pitcher)} may be written to again."


def instead_of(pitcher: str, text: str) -> str:
    """What stands above an answer that goes to a guardian in place of the child."""
    quoted = safe(text if len(text) <= 120 else f"{text[:119]}…")
    return f"{safe(pitcher)} wrote “{quoted}”. The answer comes to you alone, as you asked:"


def goes_to(names: Sequence[str]) -> str:
    """What stands above the form: who reads it, and when."""
    return (
        f"Goes to {listed([*(safe(name) for name in names), 'you'])}, in one conversation. "
        "Between 20:00 and 08:00 it waits for the morning."
    )


def no_family(pitcher: str) -> str:
    """Why nothing can be sent, said before anything is typed."""
    return (
        f"I can send nothing: no guardian of {safe(pitcher)} is in this workspace, and nothing "
        "that an adult writes goes to a minor alone. Please call the family, and add a guardian."
    )


def to_family(writer: str, pitcher: str, text: str) -> str:
    """A coach's words in the conversation with the family."""
    quoted = "\n".join(f"> {safe(line)}" for line in text.splitlines() if line.strip())
    return (
        f"{safe(writer)} writes about the report of {safe(pitcher)}'s arm:\n{quoted}\nPlease keep "
        f"to this conversation, in which everybody reads along. {NOT_A_DOCTOR}"
    )


def unsent(pitcher: str, text: str) -> str:
    """That a coach's words did not go, and why."""
    quoted = "\n".join(f"> {safe(line)}" for line in text.splitlines() if line.strip())
    return (
        f"Not sent: I could not open a conversation with a guardian of {safe(pitcher)} in it, and "
        f"nothing that an adult writes goes to a minor alone. Please call the family.\n{quoted}"
    )
