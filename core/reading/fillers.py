"""Words that never change a count, in every form: "windy", "chopping", "zippiest"."""

from core.reading.lexicon import Lexicon

_SHORTEST_STEM = 3


def is_filler(words: Lexicon, norm: str, *, slips: bool = True) -> bool:
    """Whether the word, or the word that it is a form or a slip of, never changes a count."""
    norm = norm.removesuffix("'s")
    if norm in words.fillers:
        return True
    if words.is_phrase(norm) or norm in words.weighing or norm in words.everyday:
        return False
    return _is_form(words, norm) or (slips and words.slip_of_filler(norm))


def _is_form(words: Lexicon, norm: str) -> bool:
    """As in "chopping", "zippiest", "calentaron": a form of a word of the table."""
    for ending in words.endings:
        stem = norm.removesuffix(ending)
        if stem == norm or len(stem) < _SHORTEST_STEM:
            continue
        undoubled = stem[:-1] if stem[-1] == stem[-2] else stem
        forms = (undoubled, *(stem + completion for completion in words.completions))
        if not words.fillers.isdisjoint(forms):
            return True
    return False
