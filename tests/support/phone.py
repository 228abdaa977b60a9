"""What somebody does on a phone: calls the command, fills a form in, reads what comes back."""

from typing import Any

from tests.support.club import Club


def call(club: Club, who: str, text: str = "") -> str:
    """Type the command in the log channel; gives what only this person sees of the answer."""
    person = club.people[who]
    before = len(club.ws.ephemerals(person))
    club.ws.command(person, club.log, "/spinkeeper", text)
    club.settle()
    return "\n".join(one.text for one in club.ws.ephemerals(person)[before:])


def form(club: Club, who: str) -> str:
    """The form in front of somebody as text: title, labels and what stands in the inputs."""
    content = club.ws.top_view(club.people[who]).content
    return "\n".join([content["title"]["text"], *map(_block, content["blocks"])])


def fill(club: Club, somebody: str, /, **values: Any) -> dict[str, str]:
    """Fill the form in and send it; gives the complaints by block."""
    delivery = club.ws.submit(club.people[somebody], values)
    club.settle()
    return club.ws.errors_of(delivery)


def is_open(club: Club, who: str) -> bool:
    """Whether a form stands in front of somebody."""
    return bool(club.ws.open_views(club.people[who]))


def home(club: Club, who: str) -> str:
    """Open the Home tab; gives it as text, buttons in brackets."""
    club.ws.open_home(club.people[who])
    club.settle()
    return shown(club, who)


def shown(club: Club, who: str) -> str:
    """The Home tab as it stands, as text."""
    view = club.ws.home(club.people[who])
    return shown_view(view.content) if view is not None else ""


def shown_view(content: dict[str, Any]) -> str:
    """A Home tab's view as text."""
    return "\n".join(map(_home_block, content["blocks"]))


def press_home(club: Club, who: str, label: str) -> None:
    """Press the first button of this label on the Home tab."""
    view = club.ws.home(club.people[who])
    assert view is not None
    found = [
        element["action_id"]
        for block in view.content["blocks"]
        if block["type"] == "actions"
        for element in block["elements"]
        if element["text"]["text"] == label
    ]
    club.ws.press_in_view(club.people[who], view, found[0])
    club.settle()


def _home_block(block: dict[str, Any]) -> str:
    if block["type"] == "header":
        return f"# {block['text']['text']}"
    if block["type"] == "actions":
        return " ".join(f"[{one['text']['text']}]" for one in block["elements"])
    return str(block["text"]["text"])


def _block(block: dict[str, Any]) -> str:
    if block["type"] == "context":
        return " ".join(str(one["text"]) for one in block["elements"])
    if block["type"] == "section":
        return str(block["text"]["text"])
    element = block.get("element", {})
    first = element.get("initial_option") or {}
    several = [one["text"]["text"] for one in element.get("initial_options") or []]
    shown = (
        element.get("initial_value")
        or element.get("initial_date")
        or first.get("text", {}).get("text")
        or ", ".join(several)
    )
    label = str((block.get("label") or {}).get("text", ""))
    return f"{label}: {shown}" if shown else label
