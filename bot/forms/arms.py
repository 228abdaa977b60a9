"""The pitchers of a form: those for whom whoever opens it may log, and what is known of them."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

from slack_sdk.models.blocks import Block
from sqlmodel import col, select

from bot.forms import inputs
from bot.forms.form import Carried, FormError, Values
from bot.wording.forms import ERRORS, FIELDS, no_record
from bot.wording.words import listed, safe
from core.audience import Relation, Subject, may_log
from core.ledger.by_hand import ByHandError, Hand, Refusal
from core.ledger.crew import Crew, load_crew
from core.ledger.who import Arm
from core.model import Outing

#: Those who log for a whole staff.
COUNTING = frozenset({Relation.STAFF, Relation.SCOREKEEPER})


@dataclass(frozen=True, slots=True)
class Offered:
    """The pitchers whom a form offers, and those for whom nothing is kept."""

    crew: Crew
    now: datetime
    arms: tuple[Arm, ...]
    no_consent: tuple[Arm, ...]

    @property
    def posted(self) -> datetime:
        """The moment as wall-clock time of the team's zone."""
        return self.crew.local(self.now)


def offered(hand: Hand, subject: Subject, *, whole_staff: bool = False) -> Offered | None:
    """The pitchers about whom this may be logged, best known order; none where there are none."""
    crew = load_crew(hand.session, hand.person, None)
    allowed = [
        arm
        for arm in crew.arms
        if may_log(crew.relations[arm.pitcher_id], subject)
        and (not whole_staff or crew.relations[arm.pitcher_id] & COUNTING)
    ]
    found = Offered(
        crew,
        hand.now,
        tuple(sorted((one for one in allowed if one.consented), key=lambda one: one.name)),
        tuple(one for one in allowed if not one.consented),
    )
    return found if found.arms else None


def need(hand: Hand, subject: Subject, *, whole_staff: bool = False) -> Offered:
    """The same at submission; `ByHandError` for whoever may log for nobody."""
    found = offered(hand, subject, whole_staff=whole_staff)
    if found is None:
        raise ByHandError(Refusal.NOT_ALLOWED)
    return found


def pick(form: Offered, carried: Carried) -> list[Block]:
    """The choice of the pitcher, where there is more than one; prefilled where one is known."""
    if len(form.arms) == 1:
        return []
    named = [(str(arm.pitcher_id), arm.name) for arm in form.arms[:100]]
    own = [str(arm.pitcher_id) for arm in form.arms if form.crew.speaks_for(arm.pitcher_id)]
    known = str(carried.get("pitcher") or (own[0] if len(own) == 1 else ""))
    return [inputs.choice("who", FIELDS["who"], named, known)]


def picked(form: Offered, values: Values) -> Arm:
    """The pitcher who was chosen, or the only one. Raises `FormError`."""
    if len(form.arms) == 1:
        return form.arms[0]
    return by_id(form, inputs.read_choice(values, "who"), "who")


def by_id(form: Offered, chosen: str | None, block: str) -> Arm:
    """The offered pitcher of this id; what was not offered cannot be chosen."""
    found = [arm for arm in form.arms if str(arm.pitcher_id) == chosen]
    if not found:
        raise FormError(block, ERRORS["nobody"])
    return found[0]


def missing(arms: Sequence[Arm]) -> list[Block]:
    """A note on pitchers without consent."""
    if not arms:
        return []
    return [inputs.note(no_record(listed([safe(arm.name) for arm in arms])), "no_record")]


def last_kind(hand: Hand, pitcher_id: int, kinds: Sequence[str]) -> str | None:
    """The kind of the pitcher's newest outing among these kinds."""
    newest = (
        select(Outing.kind)
        .where(
            Outing.pitcher_id == pitcher_id,
            col(Outing.kind).in_(kinds),
            col(Outing.withdrawn_at).is_(None),
        )
        .order_by(col(Outing.on).desc(), col(Outing.id).desc())
    )
    return hand.session.exec(newest.limit(1)).first()
