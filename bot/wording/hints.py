"""Short help for lines that log nothing and for people the log does not know."""

from core.ledger.hints import Hint

EXAMPLES = "“62p 11cb 4.1ip vs Summit, no pain”, “catch 30 throws 12 spins 50%”, “pen 25 6ch”"

HINTS = {
    Hint.NO_TEXT: "There were no words in that message, and I read words only, so nothing was "
    f"counted. It is kept. Type the counts in a line, for example {EXAMPLES}.",
    Hint.NO_WORDS: "That is kept, but an emoji alone logs nothing. Type the counts in a line, for "
    f"example {EXAMPLES}.",
    Hint.TALK: "I keep the pitching log. One line after a game or a practice is enough, for "
    f"example {EXAMPLES}. “help” lists what I know.",
    Hint.THANKS: "",
    Hint.WHO: "I'm Spinkeeper, the bot that keeps your team's pitching log. Type what was thrown, "
    "for example “62p 11cb vs Summit”, or ask “when can I pitch”. “help” lists the rest.",
    Hint.QUESTION: "I can't answer that one. I know counts, rest and the log: “help” lists what to "
    "ask. If it is about how an arm feels: stop throwing, tell a coach and a parent; a licensed "
    "clinician decides.",
    Hint.SPANISH: "Llevo el registro de lanzamientos. Puedes escribirme en español, por ejemplo "
    "“62 lanzamientos 11 curvas”, “bullpen 25” o “le duele el codo”; contesto en inglés. “parar” "
    "termina los recordatorios; “ayuda” muestra la lista. Si duele: no lanzar, y "
    "avisar a un adulto.",
}

STRANGER = (
    "I don't know you as part of a team yet, so nothing was counted; your line is kept. Ask a "
    "coach to add you to the roster."
)
