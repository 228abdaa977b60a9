"""Slack over HTTP: guards in front of Bolt, listeners in a thread pool, a health page."""

import re

from slack_bolt import App, BoltRequest
from slack_bolt.adapter.starlette.handler import to_bolt_request, to_starlette_response
from starlette.applications import Starlette
from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import JSONResponse, PlainTextResponse, Response
from starlette.routing import Route

from bot.health import Health

#: No Slack payload comes near this size; anything larger is not read (bytes).
LARGEST_BODY = 1_000_000
#: A time as Slack stamps its requests: seconds since 1970.
_SECONDS = re.compile(r"[0-9]{1,12}")


def make_http(app: App, health: Health) -> Starlette:
    """The ASGI application: `POST /slack/events` and `GET /healthz`."""

    async def events(request: Request) -> Response:
        body = await _body(request)
        if body is None:
            return PlainTextResponse("too large", status_code=413)
        bolt_request = _parsed(request, body)
        if bolt_request is None:
            return PlainTextResponse("not a Slack request", status_code=400)
        # Bolt's sync app runs its listener before it answers: never on the event loop.
        answer = await run_in_threadpool(app.dispatch, bolt_request)
        return to_starlette_response(answer)

    async def healthz(_request: Request) -> Response:
        report = await run_in_threadpool(health.report)
        return JSONResponse(report.as_json(), status_code=200 if report.database else 503)

    return Starlette(
        routes=[
            Route("/slack/events", events, methods=["POST"]),
            Route("/healthz", healthz, methods=["GET"]),
        ]
    )


async def _body(request: Request) -> bytes | None:
    """The body, or none as soon as it grows over the limit."""
    parts, size = [], 0
    async for part in request.stream():
        size += len(part)
        if size > LARGEST_BODY:
            return None
        parts.append(part)
    return b"".join(parts)


def _parsed(request: Request, body: bytes) -> BoltRequest | None:
    """The request as Bolt reads it, or none: Bolt parses before it checks who sent it."""
    stamp = request.headers.get("x-slack-request-timestamp")
    if stamp is not None and not _SECONDS.fullmatch(stamp):
        return None
    try:
        body.decode("utf-8")
        return to_bolt_request(request, body)
    except Exception:
        # Whatever Bolt trips over in an unsigned body is the sender's fault, and never logged.
        return None
