"""What Slack would not do, what was kept all the same, and what helps."""

from bot.wording.words import safe

_FIXES = {
    "archived": (
        "it is archived. Unarchive it, or give the team another channel",
        "read no lines there",
    ),
    "invite": (
        "I'm not in it. Open the channel and type /invite @Spinkeeper",
        "read no lines there",
    ),
    "allow": (
        "its settings let only some people post. Ask whoever runs the workspace to let me post",
        "put no reactions under lines",
    ),
}


def channel_trouble(team: str, *, is_log: bool, fix: str) -> str:
    """One of a team's channels takes no messages; `fix` is archived, invite or allow."""
    name = "log channel" if is_log else "staff channel"
    help_, meanwhile = _FIXES[fix]
    kept = (
        f"Until then I {meanwhile}; what was logged before is kept."
        if is_log
        else "The log is kept as always, but what I had to say there was not posted."
    )
    return f"I cannot post in the {name} of {safe(team)}: {help_}. {kept}"


def person_trouble(name: str, *, gone: bool) -> str:
    """Somebody gets no direct messages from us any more."""
    why = (
        "the Slack account is closed"
        if gone
        else "Slack lets me send no direct messages there. Whoever runs the workspace can allow it"
    )
    return (
        f"I cannot write to {safe(name)}: {why}. What I had to say there was not sent. Please "
        "pass on yourself what matters; where it is about a pitcher, to the family."
    )
