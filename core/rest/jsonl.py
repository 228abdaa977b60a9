"""Lines of JSON in, lines of JSON out: the rest question for other programs."""

import json
from collections.abc import Iterable, Iterator

from core.rest.answering import answer
from core.rest.request import Request, parse_request
from core.rest.values import RestAnswer, RestError
from core.rulebooks import RuleBookError, load_books


def rest_lines(lines: Iterable[str]) -> Iterator[str]:
    """One answer for each line that is not blank, in order; a bad line gets its error instead."""
    for line in lines:
        if line.strip():
            yield json.dumps(_answered(line), ensure_ascii=False)


def _answered(line: str) -> dict[str, object]:
    try:
        data = json.loads(line)
    except ValueError as error:
        return {"id": None, "error": f"the line is no JSON: {error}"}
    given = data.get("id") if isinstance(data, dict) else None
    try:
        return {"id": given, **_as_json(_ask(parse_request(data)))}
    except (RestError, RuleBookError) as error:
        return {"id": given, "error": str(error)}


def _ask(request: Request) -> RestAnswer:
    return answer(
        load_books(request.rulebooks),
        request.thrower(),
        [outing.thrown() for outing in request.outings],
        request.on,
        phase=request.phase,
        kind=request.kind,
        game=request.game,
        tournament=request.tournament,
        series=request.series,
    )


def _as_json(found: RestAnswer) -> dict[str, object]:
    outs = {} if found.outs_allowed is None else {"outs_allowed": found.outs_allowed}
    return {
        "eligible": found.eligible,
        "pitches_allowed": found.pitches_allowed,
        **outs,
        "next_eligible": found.next_eligible and found.next_eligible.isoformat(),
        "rest": [
            {"on": r.on.isoformat(), "pitches": r.pitches, "days": r.days} for r in found.rest
        ],
        "why": [{"rulebook": r.rulebook, "rule": r.rule, "says": r.says} for r in found.why],
    }
