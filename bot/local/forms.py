"""Modals and Home tabs: what is open, and what a person does with it."""

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from bot.local.blockkit import check_view, with_block_ids
from bot.local.delivery import Delivery, Outcome
from bot.local.errors import ApiError, ScriptError
from bot.local.happenings import ViewNews
from bot.local.interactions import action, value_of
from bot.local.records import Json, Person, View
from bot.local.touch import Touch, elements_of, find_element


class Forms(Touch):
    """Acts on views."""

    def home(self, person: Person) -> View | None:
        """Return the Home tab that the app published for a person."""
        return self.state.homes.get(person.id)

    def open_views(self, person: Person) -> list[View]:
        """Return the modals that a person has open, the top one last."""
        with self.changed:
            return [v for v in self.state.views.values() if v.user == person.id and not v.closed]

    def top_view(self, person: Person) -> View:
        """Return the modal in front of a person; raises ScriptError when there is none."""
        if not (open_now := self.open_views(person)):
            raise ScriptError(f"{person.real_name} has no modal open.")
        return open_now[-1]

    def press_in_view(
        self, person: Person, view: View, action_id: str, chosen: Any = None
    ) -> Delivery:
        """Press a button, or choose in a menu, of a modal or of a Home tab."""
        element, block_id = find_element(tuple(view.content["blocks"]), action_id)
        with self.changed:
            payload = self._sender(person).base("block_actions") | {
                "container": {"type": "view", "view_id": view.id},
                "trigger_id": self.tickets.trigger(person.id, view.id),
                "view": self.shown_view(view),
                "actions": [action(element, block_id, self.state.stamps.next(), chosen)],
            }
            return self.deliver("interactive", payload)

    def submit(self, person: Person, values: Mapping[str, Any] | None = None) -> Delivery:
        """Fill in the modal in front of a person, by action id, and submit it.

        Inputs without a value keep their initial one. Raises ScriptError for an action id
        that the modal does not have.
        """
        with self.changed:
            view = self._filled(self.top_view(person), values or {})
            payload = self._sender(person).base("view_submission") | {
                "trigger_id": self.tickets.trigger(person.id, view.id),
                "view": self.shown_view(view),
                "response_urls": [],
            }

            def answered(outcome: Outcome) -> None:
                self._answer_submission(view, outcome)

            return self.deliver("interactive", payload, answered)

    def close_view(self, person: Person, *, whole_stack: bool = False) -> Delivery | None:
        """Close the modal in front of a person; the app hears of it only if it asked to."""
        with self.changed:
            view = self.top_view(person)
            for each in self.stack_of(view) if whole_stack else [view]:
                self._keep(replace(each, closed=True))
            if not view.content.get("notify_on_close"):
                return None
            payload = self._sender(person).base("view_closed") | {
                "view": self.shown_view(view),
                "is_cleared": whole_stack,
            }
            return self.deliver("interactive", payload)

    def errors_of(self, delivery: Delivery) -> dict[str, str]:
        """Return the complaints, by block id, with which the app answered a submission."""
        found: dict[str, str] = delivery.wait().json().get("errors", {})
        return found

    def show_view(self, user: str, content: Json, below: View | None = None) -> View:
        """Open a modal in front of a person."""
        with self.changed:
            view_id = self.state.ids.next("V")
            root, previous = (below.root, below.id) if below is not None else (view_id, None)
            view = View(view_id, user, content, self._hash(), root, previous)
            return self._keep(replace(view, values=_initial_values(content)))

    def change_view(self, view: View, content: Json) -> View:
        """Replace what a modal shows."""
        with self.changed:
            changed = replace(view, content=content, hash=self._hash())
            return self._keep(replace(changed, values=_initial_values(content)))

    def publish_home(self, user: str, content: Json) -> View:
        """Set a person's Home tab."""
        with self.changed:
            before = self.state.homes.get(user)
            view_id = before.id if before is not None else self.state.ids.next("V")
            home = View(view_id, user, content, self._hash(), view_id)
            self.state.homes[user] = home
            self.tell(ViewNews(home))
            self.changed.notify_all()
            return home

    def stack_of(self, view: View) -> list[View]:
        """Return the open modals that lie on one another with this one, the bottom one first."""
        with self.changed:
            return [v for v in self.state.views.values() if v.root == view.root and not v.closed]

    def _keep(self, view: View) -> View:
        self.state.views[view.id] = view
        self.tell(ViewNews(view))
        self.changed.notify_all()
        return view

    def _hash(self) -> str:
        return f"{self.state.stamps.seconds()}.{self.state.ids.secret('hash')[:8]}"

    def _filled(self, view: View, values: Mapping[str, Any]) -> View:
        filled = {block: dict(held) for block, held in view.values.items()}
        for action_id, chosen in values.items():
            element, block_id = find_element(tuple(view.content["blocks"]), action_id)
            held = {"type": element["type"]} | value_of(element, chosen)
            filled.setdefault(block_id, {})[action_id] = held
        return self._keep(replace(view, values=filled))

    def _answer_submission(self, view: View, outcome: Outcome) -> None:
        answer = outcome.json()
        match answer.get("response_action"):
            case "errors":
                _check_errors(view, answer.get("errors"))
            case "update":
                self.change_view(view, self._content(answer))
            case "push":
                self.show_view(view.user, self._content(answer), view)
            case "clear":
                for each in self.stack_of(view):
                    self._keep(replace(each, closed=True))
            case None:
                self._keep(replace(view, closed=True))
            case other:
                raise ScriptError(f"The app answered with response_action {other!r}.")

    def _content(self, answer: Json) -> Json:
        view = answer.get("view")
        try:
            check_view(view)
        except ApiError as error:
            raise ScriptError(f"The app answered with a wrong view: {error.answer()}") from error
        assert isinstance(view, dict)
        return view | {"blocks": with_block_ids(view["blocks"], self.new_block_id)}


def _initial_values(content: Json) -> Json:
    values: Json = {}
    for block in content["blocks"]:
        for element in elements_of(block):
            if element["type"] != "button":
                held = {"type": element["type"]} | _initial(element)
                values.setdefault(block["block_id"], {})[element["action_id"]] = held
    return values


def _initial(element: Json) -> Json:
    kind = element["type"]
    if kind in ("checkboxes", "multi_static_select"):
        return {"selected_options": element.get("initial_options", [])}
    if kind in ("static_select", "radio_buttons", "overflow"):
        return {"selected_option": element.get("initial_option")}
    (name,) = value_of(element, None)
    return {name: element.get(name.replace("selected", "initial"), element.get("initial_value"))}


def _check_errors(view: View, errors: Any) -> None:
    inputs = {b["block_id"] for b in view.content["blocks"] if b.get("type") == "input"}
    if not isinstance(errors, dict) or not errors or not set(errors) <= inputs:
        raise ScriptError(f"errors must name input blocks of the view ({inputs}): {errors}")
