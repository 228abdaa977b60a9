"""Words beside a report of pain that call for a clinician now: phrases, no diagnosis.

Which words they are follows orthopaedic and first-aid advice for families (locking, a joint
that cannot be bent or straightened, a sudden pop, numbness or tingling: stop and be seen;
pain at rest or at night, fever, swelling, deformity, a cold or blue arm, a fall or a blow:
urgent care; a blow to the chest, collapse: the emergency number). The list is from common
pages of orthopaedic societies and general first aid, from memory, and is no triage: a word
that is not on it makes no pain harmless.
"""

import re
from enum import IntEnum


class Urgency(IntEnum):
    """How soon a clinician must look, by the words of a line alone."""

    BE_SEEN = 1
    URGENT_CARE = 2
    EMERGENCY = 3


_JOINT = r"(elbow|shoulder|arm|wrist|joint|codo|hombro|brazo)"
_CANNOT = (
    r"(can'?t|cant|cannot|can not|couldn'?t|could not|won'?t|wont|unable to|no puedo|no puede)"
)
_BE_SEEN = re.compile(
    rf"\b{_JOINT}\b.{{0,20}}\b(lock(s|ed|ing)?( up)?|catches|gets stuck|stuck|se traba\w*)\b"
    rf"|\block(s|ed|ing) up\b|\b{_JOINT} (is|was|keeps|kept) catching\b"
    rf"|\b{_CANNOT} (\w+ ){{0,3}}(straighten|bend|extend|lift|raise|estirar|doblar|levantar)\b"
    r"|\b(felt|heard|feel|hear|feeling|with) (a |the |it |something |my \w+ |his \w+ )*pop(ping)?\b"
    rf"|\bpopp(ed|ing)\b(?! (up|out|the mitt|it up))|\bpop in (\w+ ){{0,2}}{_JOINT}\b"
    r"|\bsharp\b|\bsudden(ly)?\b|\bde repente\b|\bpinchazo\b|\btron[oó]\b"
    r"|\belbow (feels|felt|is) loose\b"
    r"|\b(numb(ness)?|tingl\w+|pins and needles|entumecid\w+|hormigueo\w*|adormecid\w+)\b",
    re.IGNORECASE,
)
_URGENT = re.compile(
    r"\b(at rest|resting|sitting still|at night|can'?t sleep|cant sleep|wakes? (me|him|her) up"
    r"|woke (me|him|her) up|en reposo|de noche)\b"
    r"|\b(fever|fiebre|swollen|swelling|swelled|hinchad\w+|deformed|out of place|out of shape)\b"
    r"|\b(arm|hand|fingers?|elbow|brazo|mano|dedos?)\b.{0,15}\b(blue|cold|pale|morad\w+|fr[ií]\w)\b"
    r"|\b(arm|hand|brazo|mano)\b((?!finger|dedo).){0,20}\b(numb|entumecid\w+|adormecid\w+)\b"
    r"|\bnumb (arm|hand)\b"
    r"|\b(fell (on|down|off|and)|got hit|was hit|hit by|hit me|hit him|hit her|line ?drive"
    r"|comebacker|me ca[ií]|golpe)\b",
    re.IGNORECASE,
)
_EMERGENCY = re.compile(
    r"\bcollaps\w+\b|\bpassed out\b|\bfaint(ed|ing)?\b|\bunconscious\b|\bcan'?t breathe\b"
    r"|\b(hit|struck) (\w+ ){0,3}in the chest\b|\bblow to the chest\b|\bchest (pain|hurts)\b"
    r"|\bdesmay\w+\b|\bno puede? respirar\b",
    re.IGNORECASE,
)
_BEFORE = re.compile(
    r"\b(no|not|without|never|isn'?t|wasn'?t|didn'?t|doesn'?t|don'?t|aint|ain'?t|sin|ni|nor)"
    r"( (a|any|more|feel|have|really|even|is|está))*"
    r"( [a-z]+( or| and|,| ni| y))?( any)? $",
    re.IGNORECASE,
)


def urgency(text: str) -> Urgency | None:
    """The greatest urgency that the words of a line name, or none.

    What the line denies ("no swelling", "not numb") does not count. Only meaningful beside a
    report of pain: "popped up" and "locked in" are baseball.
    """
    for level, words in (
        (Urgency.EMERGENCY, _EMERGENCY),
        (Urgency.URGENT_CARE, _URGENT),
        (Urgency.BE_SEEN, _BE_SEEN),
    ):
        if any(not _BEFORE.search(text[: found.start()]) for found in words.finditer(text)):
            return level
    return None


_SURE = re.compile(
    r"\b(felt|heard) (a|it|something) pop\b|\bpins and needles\b"
    rf"|\b{_CANNOT} (straighten|bend|extend) (\w+ )?{_JOINT}\b"
    r"|\b(my|his|her) (arm|hand|fingers?) (is|are|went|goes|go|feels?) (numb|tingl\w+)\b",
    re.IGNORECASE,
)


def surely_of_the_body(text: str) -> bool:
    """Whether words of urgency speak of a body even where no pain is named beside them."""
    return _SURE.search(text) is not None
