"""What no message may ever say of an arm, as patterns."""

import re

#: A bot must not diagnose, call an arm well, name a score below which throwing is all right,
#: advise medicine, ice or injections, or speak of a risk (the American Academy of Pediatrics
#: advises to stop on arm pain: Pediatrics 129(3):e842-e856, 2012; the rest is this project's
#: own rule).
FORBIDDEN = {
    "says that an arm is well": r"\b(safe|safely|healthy|ready|fine|good to go|harmless)\b",
    "clears an arm": r"(?<!not )\bcleared\b(?! (?:Leo|Mateo|–|by)\b)(?! – by)",
    "speaks of risk": r"\b(risk|risky|danger zone|sweet spot|injury-prone)\b",
    "plays on": r"\b(throw|pitch|play|push|work) through\b|\btough it out\b|\bshake it off\b",
    "allows throwing with pain": r"\b(ok|okay|all right|fine) to (throw|pitch)\b"
    r"|\b(only|just) (a )?(mild|little|soreness)\b|\bnothing serious\b|\bdon'?t worry\b",
    "diagnoses": r"\b(probably|likely|sounds like|looks like) (a |an |your |his )?"
    r"(strain|sprain|tear|inflammation|tendon\w*|growth plate|fracture|overuse)\b"
    r"|\b(tendonitis|tendinitis|UCL|little league(r)? (elbow|shoulder)|epiphys\w+|ligament)\b",
    "advises medicine": r"\b(ice (it|the)|icing|ibuprofen|aspirin|acetaminophen|painkillers?"
    r"|anti-inflammator\w+|injections?|take (a|some) (pill|medicine))\b",
    "sets medical rest": r"\b(heal|heals|healed|recovers?) (in|within|by)\b",
    "ranks by pain": r"\b(worst|most hurt|rank\w*) (arm|pain)\b",
}


def faults(text: str) -> list[str]:
    """What a text says that it must not, with the words."""
    found = ((what, re.search(pattern, text, re.IGNORECASE)) for what, pattern in FORBIDDEN.items())
    return [f"{what}: “{hit[0]}” in “{text}”" for what, hit in found if hit is not None]
