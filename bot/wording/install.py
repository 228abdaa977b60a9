"""The pages of installing: what was wrong, what was kept, what to do next."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

#: Shown to whoever calls the command where the bot is not installed.
NOT_INSTALLED = (
    "Spinkeeper is not installed in this workspace, so nothing was kept. Ask whoever runs it to "
    "install it here."
)
TITLE = "Install Spinkeeper"
TO_SLACK = "Go on to Slack"
TO_THE_APP = "Open Spinkeeper in Slack"
AGAIN = "Begin again"
NOTHING_KEPT = "Nothing was kept."


@dataclass(frozen=True, slots=True)
class Page:
    """What a page says: its heading, its paragraphs, and the words of its one link, if any."""

    heading: str
    says: tuple[str, ...]
    link: str = ""


BEGIN = Page(
    TITLE,
    (
        "Spinkeeper keeps a team's pitching log in your Slack workspace.",
        "Slack shows next what it may see and do, and asks you to allow it. You have ten minutes "
        "for that.",
        "What players, parents and coaches type to it is kept in the database of whoever runs "
        "this page, beside what Slack keeps itself.",
    ),
    TO_SLACK,
)
BEGIN_AGAIN = Page(
    TITLE,
    (
        "Spinkeeper serves a workspace already. Installing it there again gives it a new token "
        "and lifts a removal; the pitching log stays as it is.",
        "It cannot serve a second workspace.",
    ),
    TO_SLACK,
)


def done(workspace: str) -> Page:
    """It is installed."""
    return Page(
        "Spinkeeper is installed",
        (
            f"It works in {workspace or 'your workspace'} from now on. If no team is set up there "
            "yet, a message in Slack tells you the next step.",
            "You can close this page.",
        ),
        TO_THE_APP,
    )


def _problem(heading: str, *says: str) -> Page:
    return Page(heading, says, AGAIN)


#: By Slack's name of the error (docs.slack.dev, oauth.v2.access), or by ours.
PROBLEMS: Mapping[str, Page] = {
    "access_denied": _problem(
        "Not installed",
        f"You did not allow it at Slack. {NOTHING_KEPT}",
        "If that was a mistake, begin again. Where only admins may install apps, ask one.",
    ),
    "invalid_browser": _problem(
        "Please begin again",
        "This browser did not begin the install, or took more than ten minutes, or has used this "
        f"page already. {NOTHING_KEPT}",
        "If you have just seen that Spinkeeper is installed, it is, and you are done. If "
        "not, begin again, and let the browser keep cookies of this page.",
    ),
    "invalid_state": _problem(
        "Please begin again",
        f"This page was used already, or is more than ten minutes old. {NOTHING_KEPT}",
        "If you have just seen that Spinkeeper is installed, it is, and you are done. If "
        "not, begin again.",
    ),
    "missing_code": _problem(
        "Not installed", f"Slack sent you here without its code. {NOTHING_KEPT}", "Begin again."
    ),
    "invalid_code": _problem(
        "Not installed",
        f"Slack does not accept its code any more. {NOTHING_KEPT}",
        "Begin again, and do not wait long at Slack's page.",
    ),
    "code_already_used": _problem(
        "Please begin again",
        f"Slack's code was used already. {NOTHING_KEPT}",
        "If you have just seen that Spinkeeper is installed, it is, and you are done. If "
        "not, begin again.",
    ),
    "bad_redirect_uri": _problem(
        "Not installed",
        "The redirect URL in the app's settings at Slack is not the address of this page. "
        f"{NOTHING_KEPT}",
        "Whoever runs Spinkeeper: print the manifest with “spinkeeper manifest --http” and this "
        "page's address, paste it into the app's settings, then begin again.",
    ),
    "bad_client_secret": _problem(
        "Not installed",
        f"Slack does not know the app by its client id and secret. {NOTHING_KEPT}",
        "Whoever runs Spinkeeper: copy SLACK_CLIENT_ID and SLACK_CLIENT_SECRET from the app's "
        "pages again and start the bot anew. Then begin again.",
    ),
    "no_answer": _problem(
        "Slack did not answer",
        f"Slack could not be reached to finish the install. {NOTHING_KEPT}",
        "Wait a minute, then begin again.",
    ),
    "organization": _problem(
        "Not installed",
        "It was allowed for a whole organization. Spinkeeper works in one workspace, so that it "
        f"is clear who reads what. {NOTHING_KEPT}",
        "Begin again, and choose one workspace at Slack's page.",
    ),
    "too_many": _problem(
        "Please wait ten minutes",
        f"Too many installs were begun and not ended. {NOTHING_KEPT}",
        "Begin again in ten minutes. If it happens again, tell whoever runs Spinkeeper.",
    ),
    "rotation": _problem(
        "Not installed",
        "The app's settings at Slack have token rotation on, so that its token would end within "
        f"hours, and Spinkeeper does not renew it. {NOTHING_KEPT}",
        "Slack does not let it be turned off again. Whoever runs Spinkeeper: make a new app from "
        "what “spinkeeper manifest” prints, and start the bot with the new app's variables.",
    ),
    "other_workspace": Page(
        "This Spinkeeper serves another workspace",
        (
            "One database holds one workspace, so that no club reads another's log. "
            f"{NOTHING_KEPT} The other workspace is served as before.",
            "If you chose the wrong workspace at Slack's page, begin again and choose the right "
            "one. To serve this one, run a Spinkeeper of its own for it, with another "
            "SPINKEEPER_DATABASE_URL.",
            "In the workspace that you chose just now, an admin can take the app away again: it "
            "does nothing there.",
        ),
        AGAIN,
    ),
    "database": _problem(
        "Not installed",
        "The database could not be reached, so this step was not done. The pitching log is as it "
        "was.",
        "Wait a minute, then begin again. Whoever runs Spinkeeper finds the cause in its log.",
    ),
}
PROBLEMS_OF_THE_SAME_KIND: Mapping[str, str] = {
    "bad_client_id": "bad_client_secret",
    "code_expired": "invalid_code",
    "invalid_client_id": "bad_client_secret",
}


def problem(reason: str) -> Page:
    """The page for a reason, by Slack's name of it or ours."""
    known = PROBLEMS.get(PROBLEMS_OF_THE_SAME_KIND.get(reason, reason))
    return known or _problem(
        "Not installed",
        f"Slack refused the install ({reason}). {NOTHING_KEPT}",
        "Begin again. If it happens again, show this page to whoever runs Spinkeeper.",
    )


def missing(scopes: Iterable[str]) -> Page:
    """Slack granted less than the bot needs."""
    return _problem(
        "Not installed",
        f"Slack did not grant all that Spinkeeper needs: {', '.join(scopes)}. {NOTHING_KEPT}",
        "Whoever runs Spinkeeper: paste what “spinkeeper manifest” prints into the app's settings "
        "at Slack, then begin again.",
    )
