"""Slack over HTTP: guards before Bolt, listeners in a thread pool, health, the install."""

import re
from collections.abc import Awaitable, Callable

from slack_bolt import App, BoltRequest, BoltResponse
from slack_bolt.adapter.starlette.handler import to_bolt_request, to_starlette_response
from starlette.applications import Starlette
from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import JSONResponse, PlainTextResponse, Response
from starlette.routing import Route

from bot.health import Health
from bot.install import InstallFlow
from bot.manifest import INSTALL_PATH, REDIRECT_PATH

#: No Slack payload comes near this size; anything larger is not read (bytes).
LARGEST_BODY = 1_000_000
#: A time as Slack stamps its requests: seconds since 1970.
_SECONDS = re.compile(r"[0-9]{1,12}")


def make_http(app: App, health: Health, flow: InstallFlow | None = None) -> Starlette:
    """The ASGI application: `POST /slack/events`, `GET /healthz`, and with `flow` the install."""

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

    routes = [
        Route("/slack/events", events, methods=["POST"]),
        Route("/healthz", healthz, methods=["GET"]),
    ]
    if flow is not None:
        routes += [
            Route(INSTALL_PATH, _page(flow.install_page), methods=["GET"]),
            Route(REDIRECT_PATH, _page(flow.redirect_page), methods=["GET"]),
        ]
    return Starlette(routes=routes)


def _page(answer: Callable[[BoltRequest], BoltResponse]) -> Callable[..., Awaitable[Response]]:
    """A page that Bolt's flow makes, in a thread: it asks the database and Slack."""

    async def page(request: Request) -> Response:
        asked = to_bolt_request(request, b"")
        return to_starlette_response(await run_in_threadpool(answer, asked))

    return page


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
