"""Files that people send, as a message carries them."""

from bot.local.records import Json, Person

#: What Slack shows to a token that may not read a file: the page to sign in.
SIGN_IN = "<!DOCTYPE html><html><body>Sign in to this workspace</body></html>"


def file_json(
    address: str, file_id: str, created: int, person: Person, name: str, size: int
) -> Json:
    """A hosted file as a message carries it."""
    kind = name.rpartition(".")[2]
    mime = {"png": "image/png", "csv": "text/csv"}.get(kind, "text/plain")
    return {
        "id": file_id,
        "created": created,
        "timestamp": created,
        "name": name,
        "title": name,
        "mimetype": mime,
        "filetype": kind,
        "pretty_type": kind.upper(),
        "user": person.id,
        "editable": False,
        "size": size,
        "mode": "hosted",
        "is_external": False,
        "is_public": True,
        "url_private": f"{address}/{name}",
        "url_private_download": f"{address}/download/{name}",
        "permalink": address,
    }
