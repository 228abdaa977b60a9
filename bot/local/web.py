"""The HTTP side: the Web API, response URLs, and the door to Socket Mode."""

import base64
import json
from collections.abc import Callable
from typing import Any
from urllib.parse import parse_qsl

from starlette.applications import Starlette
from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import JSONResponse, PlainTextResponse, Response
from starlette.routing import Route, WebSocketRoute
from starlette.websockets import WebSocket

from bot.local.arguments import Arguments
from bot.local.calls import Call
from bot.local.errors import ApiError
from bot.local.faults import Dropped, Fault, Gate, HttpError, RateLimited, Refused
from bot.local.files import SIGN_IN
from bot.local.methods.table import METHODS
from bot.local.records import Json
from bot.local.registry import Registry
from bot.local.responses import respond
from bot.local.workspace import Workspace


def make_app(registry: Registry) -> Starlette:
    """Return the ASGI application that answers for every workspace of the registry."""
    door = Door(registry)
    return Starlette(
        routes=[
            Route("/api/{method}", door.api, methods=["GET", "POST"]),
            Route("/response/{team}/{ticket}", door.response, methods=["POST"]),
            Route("/files/{team}/{file}/{rest:path}", door.file),
            WebSocketRoute("/link", door.link),
        ]
    )


class Door:
    """The ways in."""

    def __init__(self, registry: Registry) -> None:
        self.registry = registry

    async def api(self, request: Request) -> Response:
        """Answer one Web API call."""
        method = request.path_params["method"]
        try:
            given = await _arguments(request)
            if method == "oauth.v2.access":
                return JSONResponse(self._installed(request, given))
            token = _token(request, given)
            ws = self.registry.by_token(token, method)
        except ApiError as error:
            return JSONResponse(error.answer())
        call = ws.calls.begin(method, given)
        try:
            response = await self._answer(ws, call, request, self._processed)
        except BaseException:
            ws.calls.end(call, None, None)
            raise
        return response

    def _installed(self, request: Request, given: Json) -> Json:
        basic = request.headers.get("authorization", "").removeprefix("Basic ")
        pair = base64.b64decode(basic).decode() if basic else ":"
        client_id, _, client_secret = pair.partition(":")
        args = Arguments(given)
        ws = self.registry.by_code(
            args.text("client_id") or client_id,
            args.text("client_secret") or client_secret,
            args.text("code") or "",
        )
        redirect_uri = args.text("redirect_uri") or ""
        return {"ok": True} | ws.exchange(args.required("code"), redirect_uri)

    async def _answer(
        self, ws: Workspace, call: Call, request: Request, work: Callable[[Workspace, Call], Json]
    ) -> Response:
        fault = ws.faults.take(call.method) or _too_fast(ws, call)
        if isinstance(fault, Gate) and not fault.processed:
            await run_in_threadpool(fault.stand)
        if _refuses_at_once(fault):
            return self._faulty(ws, call, request, fault)
        answer = work(ws, call)
        if isinstance(fault, Gate):
            if fault.processed:
                await run_in_threadpool(fault.stand)
        elif fault is not None:
            return self._faulty(ws, call, request, fault)
        return _ended(ws, call, answer)

    def _processed(self, ws: Workspace, call: Call) -> Json:
        method = METHODS.get(call.method)
        try:
            with ws.changed:
                if call.method == "apps.connections.open":
                    return {"ok": True, "url": self.registry.socket_url(ws)}
                if method is None:
                    raise ApiError("unknown_method", req_method=call.method)
                ws.check_call(method.scopes)
                return {"ok": True} | method.answer(ws, Arguments(call.args))
        except ApiError as error:
            return error.answer()

    def _faulty(self, ws: Workspace, call: Call, request: Request, fault: Fault | None) -> Response:
        match fault:
            case RateLimited(retry_after):
                headers = {} if retry_after is None else {"Retry-After": str(retry_after)}
                return _ended(ws, call, {"ok": False, "error": "ratelimited"}, 429, headers)
            case HttpError(status, body):
                ws.calls.end(call, status, None)
                return PlainTextResponse(body, status, media_type="text/html")
            case Refused(error):
                return _ended(ws, call, {"ok": False, "error": error})
            case _:
                ws.calls.end(call, None, None)
                self.registry.hang_up(request)
                return Response(status_code=500)

    async def response(self, request: Request) -> Response:
        """Take an answer to an interaction at its response URL."""
        ws = self.registry.by_team(request.path_params["team"])
        call = ws.calls.begin("response_url", _json_object(await request.body()))

        def work(ws: Workspace, call: Call) -> Json:
            try:
                with ws.changed:
                    respond(ws, request.path_params["ticket"], call.args)
            except ApiError as error:
                return error.answer()
            return {"ok": True}

        answered = await self._answer(ws, call, request, work)
        if answered.status_code == 200 and not call.ok:
            return JSONResponse(call.answer, 404)
        return answered

    async def file(self, request: Request) -> Response:
        """Hand a file to the bot's token where it may read files, else the page to sign in."""
        ws = self.registry.by_team(request.path_params["team"])
        try:
            if _token(request, {}) != ws.bot_token:
                raise ApiError("invalid_auth")
            ws.check_call(("files:read",))
        except ApiError:
            return Response(SIGN_IN, media_type="text/html")
        return Response(ws.contents[request.path_params["file"]], media_type="text/csv")

    async def link(self, socket: WebSocket) -> None:
        """Let a Socket Mode client in, if its ticket is good."""
        ws = self.registry.by_ticket(socket.query_params.get("ticket", ""))
        if ws is None:
            await socket.close(4001)
            return
        await ws.sockets.serve(socket, ws.installation.app_id)


def _too_fast(ws: Workspace, call: Call) -> Fault | None:
    seconds = ws.rates.wait(call.method, call.args)
    return None if seconds is None else RateLimited(seconds)


def _refuses_at_once(fault: Fault | None) -> bool:
    if isinstance(fault, RateLimited):
        return True
    return isinstance(fault, HttpError | Refused | Dropped) and not fault.processed


def _ended(
    ws: Workspace,
    call: Call,
    answer: Json,
    status: int = 200,
    headers: dict[str, str] | None = None,
) -> Response:
    ws.calls.end(call, status, answer)
    scopes = {} if ws.scopes is None else {"x-oauth-scopes": ",".join(sorted(ws.scopes))}
    return JSONResponse(answer, status, {**scopes, **(headers or {})})


def _token(request: Request, given: Json) -> str:
    header = request.headers.get("authorization", "")
    from_form = given.pop("token", None)
    token = header.removeprefix("Bearer ").strip() if header else from_form
    if not token:
        raise ApiError("not_authed")
    return str(token)


async def _arguments(request: Request) -> Json:
    given: dict[str, Any] = dict(request.query_params)
    body = await request.body()
    content_type = request.headers.get("content-type", "").partition(";")[0]
    if content_type == "application/json":
        given |= _json_object(body)
    elif content_type == "application/x-www-form-urlencoded":
        given |= dict(parse_qsl(body.decode(), keep_blank_values=True))
    elif body:
        raise ApiError("invalid_post_type")
    return given


def _json_object(body: bytes) -> Json:
    try:
        found = json.loads(body or b"{}")
    except ValueError:
        raise ApiError("invalid_json") from None
    if not isinstance(found, dict):
        raise ApiError("json_not_object")
    return found
