"""People who were chosen by their account get the name that Slack has of them."""

from datetime import datetime

from sqlmodel import Session

from bot.errands.errand import Finish, Tools
from core.ledger import Notice
from core.ledger.crew import find_person
from core.model import Errand


def learn_names(tools: Tools, errand: Errand, _now: datetime) -> Finish:
    """Ask Slack for each name; a name that is known by now stays."""
    names = {slack_id: _name(tools, slack_id) for slack_id in errand.data["people"]}

    def finish(session: Session) -> list[Notice]:
        for slack_id, name in names.items():
            person = find_person(session, errand.workspace_id, slack_id)
            if person is not None and not person.name:
                person.name = name
                session.add(person)
        return []

    return finish


def _name(tools: Tools, slack_id: str) -> str:
    user = tools.client.users_info(user=slack_id)["user"]
    profile = user.get("profile") or {}
    return str(profile.get("real_name") or user.get("real_name") or user.get("name") or "")
