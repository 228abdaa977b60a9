"""Words of pain that stand on no record are laid to the one pitcher whom they can mean.

Health comes first: a report too many is put right by a guardian's word that nothing hurts;
one too few leaves an arm throwing of which nobody was told.
"""

import re
from dataclasses import replace
from datetime import datetime
from itertools import pairwise

from core.audience import Relation, Subject
from core.ledger.care import with_care
from core.ledger.crew import Crew
from core.ledger.days import outing_day
from core.ledger.decide import Decision, Kept
from core.ledger.question import PAIN_UNPLACED, REFUSALS, Question, QuestionCode
from core.ledger.who import Arm, is_named_in, names_of, plain
from core.model import LineState
from core.reading import Entry, Pain, UnreadReason

#: Such a word tells of somebody else than the author.
_ANOTHER = re.compile(
    r"\b(he|him|his|she|her|they|their|buddy|friend|teammate|brother|sister|kid|somebody|someone"
    r"|él|su|amigo|hermano|alguien)\b",
    re.IGNORECASE,
)
#: Naming the arm as a whole stops throwing, whichever part hurts.
_ARM = Pain(site="arm")


def with_placed_pain(text: str, decision: Decision, crew: Crew, posted: datetime) -> Decision:
    """The decision with a report of pain where words of pain can mean one pitcher alone.

    `posted` is local wall-clock time. Only where the line was to be told to the staff as pain
    without a record, and names nobody whom they cannot mean.
    """
    decision = _of_another(text, decision, crew)
    cared = with_care(text, decision)
    asked = [one for one in cared.questions if one.code is QuestionCode.PAIN_UNPLACED]
    if not asked or any(one.about for one in asked):
        return decision
    arm = _one_meant(text, crew)
    if arm is None or not arm.consented:
        if arm is None:
            return decision
        about = replace(asked[0], about=arm.name, pitcher_id=arm.pitcher_id)
        others = [one for one in decision.questions if one.code is not about.code]
        return replace(decision, questions=(about, *others), state=cared.state)
    report = Kept(
        arm=arm,
        slot=f"{arm.pitcher_id}/{sum(one.arm == arm for one in decision.kept)}",
        on=outing_day(posted, None),
        kind=None,
        entry=Entry(pain=(_ARM,)),
        waiting=(),
        subjects=frozenset({Subject.ARM}),
    )
    questions = tuple(one for one in decision.questions if not _is_answered(one))
    state = LineState.ASKED if {one.code for one in questions} - REFUSALS else LineState.READ
    return replace(decision, kept=(*decision.kept, report), questions=questions, state=state)


#: Words of one's own arm: then the report is the author's.
_OWN = re.compile(r"\b(i|i'm|im|i've|my|mine|me|mi|me duele|mío)\b", re.IGNORECASE)


def _of_another(text: str, decision: Decision, crew: Crew) -> Decision:
    """Pain that a line tells of a teammate by name stands on no record of the author's.

    "Leo says his elbow hurts" is taken for the author's own, or his child's, where the words
    leave out whose it is; the staff confirm on whose record it belongs.
    """
    if crew.is_staff or not _ANOTHER.search(text) or _OWN.search(text):
        return decision
    mine = [one for one in decision.kept if one.entry.pain and one.entry.who is None]
    named = [arm for arm in crew.local_arms() if is_named_in(text, arm)]
    whose = any(q.reason == UnreadReason.UNCLEAR_PERSON for q in decision.questions)
    if not mine or any(one.arm in named for one in mine) or not (named or _is_nobody(whose, crew)):
        return decision
    kept = tuple(one for one in decision.kept if one not in mine)
    one = named[0] if len(named) == 1 else None
    unplaced = replace(
        PAIN_UNPLACED,
        about=one.name if one is not None else "",
        pitcher_id=one.pitcher_id if one is not None else None,
    )
    others = [q for q in decision.questions if q.reason != UnreadReason.UNCLEAR_PERSON]
    return replace(decision, kept=kept, questions=(unplaced, *others), state=LineState.ASKED)


def _is_nobody(whose: bool, crew: Crew) -> bool:
    """Whether a pitcher's words leave open whose arm it is: "somebody's arm hurts"."""
    return whose and bool(crew.related(Relation.SELF))


def _is_answered(question: Question) -> bool:
    """Whether the report says what was asked: whose pain it is, and that the words mean pain."""
    return (
        question.code in {QuestionCode.PAIN_UNPLACED, QuestionCode.WHO}
        or question.reason == UnreadReason.UNCLEAR_PAIN
    )


def _one_meant(text: str, crew: Crew) -> Arm | None:
    """The one pitcher whom a line names; with no name the author's own arm or only child."""
    words = [plain(word) for word in text.split()]
    pairs = {" ".join(pair) for pair in pairwise(words)}
    said = {*words, *pairs}
    named = [arm for arm in crew.local_arms() if names_of(arm) & said]
    whole = [arm for arm in named if plain(arm.name) in said]
    if named:
        meant = whole or named
        return meant[0] if len(meant) == 1 else None
    if crew.is_staff:
        return None
    own, children = crew.related(Relation.SELF), crew.related(Relation.GUARDIAN)
    if own:
        return None if _ANOTHER.search(text) else own[0]
    return children[0] if len(children) == 1 else None
