"""Which of the two languages a line is in."""

from core.reading.tokens import Form, Token

_SPANISH = frozenset(
    ["picheos", "pitcheos", "lanz", "lanzamientos", "curvas", "curva", "entradas", "entrada", "tire", "lance", "tiros", "sin", "dolor", "brazo", "ayer", "hoy", "el", "la", "los", "las", "de", "con", "y", "contra", "juego", "partido", "duele", "codo", "hombro", "bien", "mi", "para", "que", "en", "ganamos", "perdimos", "manana", "ninguna", "rectas", "cambios", "dice", "hijo", "fue", "por", "del", "un", "una", "me", "le", "no", "se", "termine", "lanzo", "tiro", "picheo", "mas", "pero"]
)
_ENGLISH = frozenset(
    ["pitches", "pitch", "curves", "curve", "innings", "inning", "threw", "pitched", "no", "pain", "arm", "yesterday", "today", "the", "of", "with", "and", "vs", "game", "hurts", "sore", "elbow", "shoulder", "good", "my", "for", "that", "in", "won", "lost", "his", "he", "was", "i", "it", "is", "to", "on", "at", "a", "had", "felt", "from", "him", "her", "throws", "curveballs", "catch", "long", "toss"]
)


def tell_language(tokens: list[Token]) -> str:
    """ "es" when more words are Spanish than English, else "en"."""
    words = [token.norm for token in tokens if token.form is Form.WORD]
    spanish = sum(word in _SPANISH for word in words)
    english = sum(word in _ENGLISH for word in words)
    return "es" if spanish > english else "en"
