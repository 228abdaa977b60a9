"""What a line as it stands now calls for: which messages, and to whom they go."""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from datetime import datetime
from typing import Any

from sqlmodel import Session, select

from core.audience import Occasion, Told, who_is_told
from core.consent.asking import ask_for_consent, tell_kept_back, tell_of_line
from core.ledger.answer_notices import answers_again, answers_to_line, is_answered_elsewhere
from core.ledger.answers import GONE
from core.ledger.care import LOOKED_AT_BY_FAMILY, LOOKED_AT_BY_STAFF
from core.ledger.holds import is_thrown_on_hold, stops
from core.ledger.notices import (
    PITCHED,
    SILENT_STATES,
    TOLD_FEELINGS,
    Heard,
    Notice,
    NoticeKind,
    quiet_until,
)
from core.ledger.of_line import OfLine
from core.ledger.people import second_adult
from core.ledger.question import QuestionCode
from core.ledger.still_hurts import questions_about
from core.model import (
    FORM_TS,
    Feeling,
    JoinedAs,
    Line,
    Outing,
    Pitcher,
    Team,
    key,
)


def owed(session: Session, heard: Heard, rows: OfLine) -> list[Notice]:
    """Every message that the line as it stands now calls for, and to whom it goes.

    A message that is called for no more is still named, to bring it up to date where it
    is shown already.
    """
    line = heard.line
    elsewhere = is_answered_elsewhere(session, line, rows)
    heard = replace(heard, answered_elsewhere=elsewhere)
    notices = answers_to_line(session, heard)
    if line.deleted_at is None and not line.ts.startswith(FORM_TS):
        notices.append(_reaction(heard))
    return [
        *notices,
        *_counts(session, heard, rows),
        *_arm(session, heard, rows),
        *_hold(session, heard, rows),
        *_about_line(session, heard, rows),
        *_gone(session, heard, rows),
        *_danger(session, heard, rows),
        *_contact(session, heard, rows),
        *_still_hurts(session, heard, rows),
    ]


def _gone(session: Session, heard: Heard, rows: OfLine) -> list[Notice]:
    """The staff hear who said that pain is gone: nobody's word ends it unseen.

    What the staff wrote down for a family that family hears too.
    """
    gone = [
        answer
        for answer in heard.line.answers
        if answer["code"] == QuestionCode.PAIN_FREE and answer["value"] == GONE
    ]
    written = {answer["pitcher_id"] for answer in gone if answer.get("said_by")}
    own = {answer["pitcher_id"] for answer in gone} - written
    wanted = heard.line.deleted_at is None
    kind = NoticeKind.PAIN_GONE
    return [
        *_tell(session, heard, rows, Occasion.PAIN_GONE, kind, own, wanted),
        *_tell(session, heard, rows, Occasion.SORE_GONE, kind, written, wanted),
    ]


def _danger(session: Session, heard: Heard, rows: OfLine) -> list[Notice]:
    """An adult is asked to look at words of danger; never the one whom the line names."""
    reasons = [q["reason"] for q in heard.line.questions if q["code"] == QuestionCode.DANGER]
    if LOOKED_AT_BY_STAFF in reasons:
        return _to_staff(heard, NoticeKind.DANGER, heard.teams, wanted=True)
    if LOOKED_AT_BY_FAMILY not in reasons or heard.line.author_id is None:
        return []
    own = select(Pitcher.id).where(Pitcher.person_id == heard.line.author_id)
    pitchers = {one for one in session.exec(own) if one is not None}
    occasion = Occasion.DANGER_NAMING_STAFF
    return _tell(session, heard, rows, occasion, NoticeKind.DANGER, pitchers, wanted=True)


def _still_hurts(session: Session, heard: Heard, rows: OfLine) -> list[Notice]:
    """The questions after pain of these arms, brought up to what the line says."""
    arms = {row.pitcher_id for row in rows.reports}
    arms |= {row.pitcher_id for row in rows.clearances}
    return questions_about(session, arms, heard.now) if arms else []


def _contact(session: Session, heard: Heard, rows: OfLine) -> list[Notice]:
    """The staff hear whom they and the bot must not write to, and when that ends."""
    of_child = {row.pitcher_id for row in rows.opt_outs if row.pitcher_id is not None}
    occasion, kind = Occasion.NO_CONTACT, NoticeKind.NO_CONTACT
    return _tell(session, heard, rows, occasion, kind, of_child, wanted=True)


NOT_IN_A_THREAD = frozenset(
    {NoticeKind.PAIN, NoticeKind.PAIN_WITHDRAWN, NoticeKind.PAIN_GONE, NoticeKind.DANGER}
)


def _reaction(heard: Heard) -> Notice:
    line = heard.line
    return Notice(
        slot=f"reaction/{key(line)}",
        kind=NoticeKind.REACTION,
        destination=line.channel,
        not_before=heard.now,
        line_id=key(line),
        only_if_shown=line.state in SILENT_STATES,
    )


def _counts(session: Session, heard: Heard, rows: OfLine) -> list[Notice]:
    """What the staff read of game counts: a scorekeeper's whole line, else rules gone over.

    Whether a rule was gone over is seen when the message is rendered; without one it is dropped.
    """
    outings = rows.outings
    pitched = [outing for outing in outings if outing.kind in PITCHED]
    standing = any(outing.withdrawn_at is None for outing in pitched)
    pitchers = {outing.pitcher_id for outing in outings}
    counted, broken = Occasion.COUNTED_BY_SCOREKEEPER, Occasion.RULE_BROKEN
    by_scorekeeper = standing and heard.by_scorekeeper
    by_others = standing and not heard.by_scorekeeper
    return [
        *_tell(session, heard, rows, counted, NoticeKind.STAFF_COUNTS, pitchers, by_scorekeeper),
        *_tell(session, heard, rows, broken, NoticeKind.RULE_BROKEN, pitchers, by_others),
        *_twice(session, heard, rows, outings),
    ]


def _twice(session: Session, heard: Heard, rows: OfLine, outings: Sequence[Outing]) -> list[Notice]:
    """The staff see both counts of an outing that was logged twice, where they differ.

    What was said of the line that was there first is brought up to date.
    """
    joined = {outing.joins for outing in outings if outing.joins is not None} | heard.joined_before
    found = [session.get(Outing, one) for one in sorted(joined)]
    firsts = [outing for outing in found if outing is not None]
    twins = {o.pitcher_id for o in outings if o.joined_as == JoinedAs.SAME}
    notices = [one for outing in firsts for one in answers_again(outing.line_id, heard.now)]
    for outing in firsts:
        first = replace(heard, line=session.get_one(Line, outing.line_id))
        teams = rows.teams_of({outing.pitcher_id})
        for shown in (NoticeKind.STAFF_COUNTS, NoticeKind.RULE_BROKEN):
            notices += _to_staff(first, shown, teams, wanted=False)
    kind = NoticeKind.TWO_COUNTS
    return notices + _tell(session, heard, rows, Occasion.TWO_COUNTS, kind, twins, bool(twins))


def _arm(session: Session, heard: Heard, rows: OfLine) -> list[Notice]:
    """What follows from pain, soreness and tiredness, reports taken back included."""
    reports = [one for one in rows.reports if one.feeling in TOLD_FEELINGS]
    pain = {
        one.pitcher_id
        for one in reports
        if one.feeling == Feeling.PAIN
        or stops(session, one, session.get_one(Pitcher, one.pitcher_id))
    }
    milder = {one.pitcher_id for one in reports} - pain
    standing = {one.pitcher_id for one in reports if one.withdrawn_at is None}
    notices = _tell(
        session,
        heard,
        rows,
        Occasion.SORE_OR_TIRED,
        NoticeKind.PAIN,
        milder,
        bool(milder & standing),
    )
    # One message for each reader and line: where both are told, the pain's row decides.
    by_slot = {notice.slot: notice for notice in notices}
    for notice in _tell(
        session, heard, rows, Occasion.PAIN, NoticeKind.PAIN, pain, bool(pain & standing)
    ):
        by_slot[notice.slot] = notice
    gone = bool(reports) and not standing
    withdrawn = NoticeKind.PAIN_WITHDRAWN
    taken_back = _tell(session, heard, rows, Occasion.PAIN_WITHDRAWN, withdrawn, pain, gone)
    told = [*by_slot.values(), *taken_back]
    return [replace(notice, anew=notice.kind in heard.news) for notice in told]


def news_of_pain(
    before: Iterable[dict[str, Any]], after: Iterable[dict[str, Any]]
) -> frozenset[NoticeKind]:
    """What an edit brings that adults must not miss: pain that is new, worse or taken back."""
    was, now = _pains(before), _pains(after)
    news: set[NoticeKind] = set()
    if any(name not in was or severity > was[name] for name, severity in now.items()):
        news.add(NoticeKind.PAIN)
    if was and not now:
        news.add(NoticeKind.PAIN_WITHDRAWN)
    return frozenset(news)


def _pains(entries: Iterable[dict[str, Any]]) -> dict[str, int]:
    return {
        f"{entry['slot']}/{name}": felt["severity"] or 0
        for entry in entries
        for name, felt in entry["felt"].items()
        if felt["feeling"] == Feeling.PAIN
    }


def _hold(session: Session, heard: Heard, rows: OfLine) -> list[Notice]:
    """What adults hear of a clearance that a line recorded, and of throwing during a hold."""
    clearances = rows.clearances
    pitchers = {row.pitcher_id for row in clearances}
    stands = any(row.withdrawn_at is None for row in clearances)
    held = {row.pitcher_id for row in rows.outings if is_thrown_on_hold(session, row)}
    threw = {row.pitcher_id for row in rows.outings}
    occasion, kind = Occasion.THROWN_ON_HOLD, NoticeKind.THROWN_ON_HOLD
    return [
        *_tell(session, heard, rows, Occasion.CLEARANCE, NoticeKind.CLEARANCE, pitchers, stands),
        *_tell(session, heard, rows, occasion, kind, held, wanted=True),
        *_tell(session, heard, rows, occasion, kind, threw - held, wanted=False),
    ]


def _about_line(session: Session, heard: Heard, rows: OfLine) -> list[Notice]:
    """What is told of a line that is on nobody's record, or that speaks of consent."""
    notices: list[Notice] = []
    unplaced = [q for q in heard.line.questions if q["code"] == QuestionCode.PAIN_UNPLACED]
    kind = NoticeKind.PAIN_UNPLACED
    notices += _to_staff(heard, kind, heard.teams, bool(unplaced))
    known = {q["pitcher_id"] for q in unplaced if q.get("pitcher_id") is not None}
    if known and Told.GUARDIANS in who_is_told(Occasion.PAIN_UNPLACED).told:
        notices += _to_guardians(heard, rows, kind, known, heard.now, wanted=True)
    notices += tell_of_line(session, rows.consents, heard.now)
    for question in heard.line.questions:
        if question["code"] == QuestionCode.NO_CONSENT:
            pitcher = session.get_one(Pitcher, question["pitcher_id"])
            notices += tell_kept_back(session, pitcher, heard.now)
            notices += ask_for_consent(session, pitcher, heard.now)
    return notices


def _tell(
    session: Session,
    heard: Heard,
    rows: OfLine,
    occasion: Occasion,
    kind: NoticeKind,
    pitchers: set[int],
    wanted: bool,
) -> list[Notice]:
    """The messages of one row of the audience table about these pitchers."""
    if not pitchers:
        return []
    row = who_is_told(occasion)
    notices: list[Notice] = []
    if Told.STAFF_CHANNEL in row.told:
        notices += _to_staff(heard, kind, rows.teams_of(pitchers), wanted)
    if Told.GUARDIANS in row.told:
        at = quiet_until(heard.now, heard.time_zone) if row.waits_for_morning else heard.now
        notices += _to_guardians(heard, rows, kind, pitchers, at, wanted)
    if Told.SECOND_ADULT in row.told:
        notices += _to_second_adult(session, heard, rows, kind, pitchers, wanted)
    return notices


def _to_second_adult(
    session: Session,
    heard: Heard,
    rows: OfLine,
    kind: NoticeKind,
    pitchers: set[int],
    wanted: bool,
) -> list[Notice]:
    """A copy to another of the staff, about those of whom no guardian is on file."""
    alone = {one for one in pitchers if not rows.guardians_of({one})}
    found = (
        (team, second_adult(session, team, heard.line.author_id))
        for team in (rows.teams_of(alone) if alone else [])
    )
    return [
        Notice(
            slot=f"{kind}/{key(heard.line)}/adult/{key(team)}",
            kind=kind,
            destination=person.slack_id or "",
            not_before=heard.now,
            line_id=key(heard.line),
            team_id=key(team),
            person_id=key(person),
            only_if_shown=not wanted,
        )
        for team, person in found
        if person is not None
    ]


def _to_staff(heard: Heard, kind: NoticeKind, teams: Sequence[Team], wanted: bool) -> list[Notice]:
    line = heard.line
    return [
        Notice(
            slot=f"{kind}/{key(line)}/team/{key(team)}",
            kind=kind,
            destination=team.staff_channel,
            not_before=heard.now,
            line_id=key(line),
            team_id=key(team),
            only_if_shown=not wanted,
        )
        for team in teams
        # In the staff channel itself the thread under the line tells the staff, where it is
        # answered there; but pain must not hide in a thread.
        if kind in NOT_IN_A_THREAD or team.staff_channel != line.channel or heard.answered_elsewhere
    ]


def _to_guardians(
    heard: Heard,
    rows: OfLine,
    kind: NoticeKind,
    pitchers: set[int],
    at: datetime,
    wanted: bool,
) -> list[Notice]:
    line = heard.line
    return [
        Notice(
            slot=f"{kind}/{key(line)}/person/{key(person)}",
            kind=kind,
            destination=person.slack_id,
            not_before=at,
            line_id=key(line),
            person_id=key(person),
            only_if_shown=not wanted,
        )
        for person in rows.guardians_of(pitchers)
        if person.slack_id is not None and key(person) != line.author_id
    ]
