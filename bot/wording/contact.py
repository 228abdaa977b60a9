"""What is said to whoever ends, or takes up again, what the bot writes unasked."""

from bot.wording.words import safe

NO_REMINDERS = (
    "Done: from now on you get no more reminders from me. Reports of pain, holds, alerts about "
    "health and answers to your own lines still come. “start reminders” brings them back."
)
#: Said beside it to a guardian, who may have meant the child.
OR_THE_CHILD = "If you mean that I should not write to your child, write “do not message {name}”."
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
