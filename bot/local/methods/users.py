"""users.* and auth.test: who is who."""

from bot.local.arguments import Arguments
from bot.local.errors import ApiError
from bot.local.paging import next_cursor, page
from bot.local.records import Json, Person
from bot.local.shapes import person_json
from bot.local.workspace import Workspace


def info(ws: Workspace, args: Arguments) -> Json:
    """users.info: one user."""
    person = ws.state.people.get(args.required("user"))
    if person is None:
        raise ApiError("user_not_found")
    return {"user": _shown(ws, args, person)}


def list_(ws: Workspace, args: Arguments) -> Json:
    """users.list: everybody, deactivated accounts and bots too."""
    some, cursor = page(list(ws.state.people.values()), args)
    shown = [_shown(ws, args, p) for p in some]
    return {"members": shown, "cache_ts": ws.state.stamps.seconds()} | next_cursor(cursor)


def auth_test(ws: Workspace, _args: Arguments) -> Json:
    """auth.test: whose token this is."""
    return {
        "url": f"https://{ws.domain}.slack.com/",
        "team": ws.name,
        "user": ws.bot.name,
        "team_id": ws.team_id,
        "user_id": ws.bot.id,
        "bot_id": ws.bot.bot_id,
        "is_enterprise_install": False,
    }


def _shown(ws: Workspace, args: Arguments, person: Person) -> Json:
    shown = person_json(ws.state, person, ws.team_id)
    return shown | ({"locale": person.locale} if args.flag("include_locale") else {})
