"""Pain that a line speaks of and that stands on no record yet: who it may be, and putting it there.

The staff say by a button whose pain it is. It is written as their own line then, so that it
holds, stops the arm and is told to the family like any other report. Where the author is asked
which pitcher a name means, theirs is the same answer, so that one report comes of both.
"""

from collections.abc import Sequence, Set
from datetime import date

from sqlmodel import Session, col, select

from core.audience import Relation
from core.ledger.answers import Answer
from core.ledger.by_hand import ByHandError, Hand, Refusal, standing_line
from core.ledger.crew import Crew, crew_of, load_crew
from core.ledger.days import outing_day
from core.ledger.dictation import DictationError, Wanted, dictate
from core.ledger.lines import hear_again
from core.ledger.notices import Notice
from core.ledger.question import OFFERS_PITCHERS, Question, QuestionCode
from core.ledger.spoken import spoken
from core.ledger.who import Arm, find, near
from core.model import Line, PainReport, Person, Pitcher, PitcherTeam, key
from core.reading import Entry, Pain, read
from core.reading.writing import write

#: More pitchers than this are no row of buttons; the staff write the name then.
MOST = 15
#: Naming the arm as a whole stops throwing, whichever part hurts.
_ARM = Pain(site="arm")


def who_may_it_be(session: Session, line: Line, team_id: int | None) -> list[Pitcher]:
    """The pitchers of a team, with consent on file, whose pain a line may speak of."""
    links = select(PitcherTeam.pitcher_id).where(PitcherTeam.team_id == team_id)
    rows = select(Pitcher).where(col(Pitcher.id).in_(links)).order_by(col(Pitcher.name))
    team = {key(one): one for one in session.exec(rows)}
    arms = [Arm(one, row.name, tuple(row.also_called)) for one, row in team.items()]
    meant: dict[int, None] = {}
    for asked in _open(line):
        meant |= dict.fromkeys(_meant(asked, arms))
    found = [team[one] for one in meant if one in team and team[one].consent_on is not None]
    return found if len(found) <= MOST else []


def _open(line: Line) -> list[Question]:
    asked = [Question.from_json(one) for one in line.questions]
    return [one for one in asked if one.code is QuestionCode.PAIN_UNPLACED]


def _meant(asked: Question, arms: list[Arm]) -> list[int]:
    if asked.pitcher_id is not None:
        return [asked.pitcher_id]
    named = (find(asked.about, arms) or near(asked.about, arms)) if asked.about else arms
    return [arm.pitcher_id for arm in named]


def placed_on(line: Line) -> list[tuple[int, str]]:
    """The pitchers (ids) on whose record the pain of a line was put since, and by whom."""
    given = [Answer.from_json(one) for one in line.answers or ()]
    return [(int(one.value), one.about) for one in given if one.code is QuestionCode.PAIN_UNPLACED]


def settled_by(session: Session, line: Line) -> list[tuple[int, str]]:
    """On whose record (ids) the pain of a line stands since it was asked whose it is, and by whom.

    By the staff's button, or by who answered the question about a name; first come, first kept.
    """
    placed = placed_on(line)
    if placed:
        return placed
    given = [Answer.from_json(one) for one in line.answers or ()]
    chosen = {one.value for one in given if one.code in OFFERS_PITCHERS}
    author = session.get(Person, line.author_id) if line.author_id is not None else None
    by = author.name if author is not None else ""
    return [(one, by) for one in hurt_by(session, line) if str(one) in chosen]


def hurt_by(session: Session, line: Line) -> list[int]:
    """The pitchers (ids) on whose record a report of this very line stands."""
    rows = select(PainReport.pitcher_id).where(
        PainReport.line_id == key(line), col(PainReport.withdrawn_at).is_(None)
    )
    return list(dict.fromkeys(session.exec(rows.order_by(col(PainReport.id)))))


def answer_for(hand: Hand, line: Line, pitcher_id: int) -> list[Notice] | None:
    """Answer for the author which pitcher the hurt name means; none where that lays no pain.

    Whoever presses was checked by `words_of`.
    """
    hurt = {one.about for one in _open(line)}
    asked = [Question.from_json(one) for one in line.questions]
    names = [one for one in asked if one.code in OFFERS_PITCHERS and one.about in hurt]
    if len(names) != 1 or str(pitcher_id) not in names[0].values:
        return None
    before = line.answers
    line.answers = [*before, Answer(names[0].code, str(pitcher_id), names[0].about).as_json()]
    notices = hear_again(hand.session, line, hand.person, hand.now)
    if pitcher_id in hurt_by(hand.session, line):
        return notices
    line.answers = before
    hear_again(hand.session, line, hand.person, hand.now)
    return None


def words_of(hand: Hand, line_id: int, pitcher_id: int, among: Set[int]) -> tuple[Line, str]:
    """The line, and the words that put its pain on this pitcher's record for the staff.

    `among` are those who may be meant. Raises `ByHandError` for who is not of his staff.
    """
    line = standing_line(hand, line_id)
    crew = load_crew(hand.session, hand.person, None)
    if pitcher_id not in among or not _open(line) or placed_on(line):
        raise ByHandError(Refusal.GONE)
    arm = next((one for one in crew.arms if one.pitcher_id == pitcher_id), None)
    if arm is None or Relation.STAFF not in crew.relations[pitcher_id] or not arm.consented:
        raise ByHandError(Refusal.NOT_ALLOWED)
    on = outing_day(crew.local(line.posted_at), None)
    said = _pain_in(hand.session, line)
    try:
        return line, _as_own_line(hand, crew, arm, on, said)
    except DictationError:
        return line, _as_own_line(hand, crew, arm, on, (_ARM,))


def _as_own_line(hand: Hand, crew: Crew, arm: Arm, on: date, pain: tuple[Pain, ...]) -> str:
    """The line that puts this pain on a pitcher's record. Raises `DictationError`."""

    def words(named: Sequence[Entry]) -> str:
        return write(Entry(who=named[0].who, pain=pain), on)

    wanted = [Wanted(arm, on, Entry(pain=pain))]
    return dictate(crew, crew.local(hand.now), wanted, words)


def _pain_in(session: Session, line: Line) -> tuple[Pain, ...]:
    """What the line says of where and how much it hurts; of the arm where it says nothing."""
    crew = crew_of(session, line)
    if crew is None:
        return (_ARM,)
    posted = crew.local(line.posted_at)
    reading = read(spoken(session, line), posted, crew.voice, roster=crew.roster())
    return next((one.pain for one in reading.entries if one.pain), (_ARM,))


def mark_placed(hand: Hand, line: Line, pitcher_id: int) -> None:
    """Keep with the line that its pain was put on a record, whose, and by whom."""
    done = Answer(QuestionCode.PAIN_UNPLACED, str(pitcher_id), about=hand.person.name)
    line.answers = [*(line.answers or []), done.as_json()]
    hand.session.add(line)
