"""What can go wrong in the local workspace, for the app that calls it and for the script."""

from typing import Any


class ApiError(Exception):
    """A Web API answer with `ok: false`; `code` is Slack's name of the error."""

    def __init__(self, code: str, *messages: str, **extra: Any) -> None:
        super().__init__(code)
        self.code = code
        self.extra = extra
        if messages:
            self.extra["response_metadata"] = {"messages": list(messages)}

    def answer(self) -> dict[str, Any]:
        """Return the body that Slack answers with."""
        return {"ok": False, "error": self.code, **self.extra}


class ScriptError(Exception):
    """The script asked for something that no person could do; says what to do instead."""
