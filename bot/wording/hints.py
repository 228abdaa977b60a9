"""Short help for lines that log nothing and for people the log does not know."""

from core.ledger.hints import Hint

EXAMPLES = "“62p 11cb 4.1ip vs Summit, no pain”, “catch 30 throws 12 spins 50%”, “pen 25 6ch”"

HINTS = {
    Hint.NO_TEXT: "There were no words in that message, and I read words only, so nothing was "
    f"counted. It is kept. Type the counts in a line, for example {EXAMPLES}.",
    Hint.NO_WORDS: "That is kept, but an emoji alone logs nothing. Type the counts in a line, for "
    f"example {EXAMPLES}.",
    Hint.TALK: "I keep the pitching log. One line after a game or a practice is enough, for "
    f"example {EXAMPLES}. Edit a line and I correct it; delete it and I take it out.",
}

STRANGER = (
    "I don't know you as part of a team yet, so nothing was counted; your line is kept. Ask a "
    "coach to add you to the team file."
)
