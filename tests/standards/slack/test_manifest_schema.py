"""The manifest holds Slack's published manifest schema: keys, types, lengths and counts.

Source: github.com/slackapi/manifest-schema, schemas/manifest.schema.2.0.0.json, typed from
there for the parts that the manifest uses; keys that are not typed here are refused. The same
limits stand on docs.slack.dev/reference/app-manifest, which allows five shortcuts where the
schema allows ten: the smaller number is held.
"""

from typing import Annotated, Any, Literal

import pytest
from pydantic import (
    AfterValidator,
    BaseModel,
    ConfigDict,
    Field,
    StringConstraints,
    ValidationError,
)

from bot.manifest import make_manifest


class Part(BaseModel):
    """`additionalProperties: false`, and no other type in place of the right one."""

    model_config = ConfigDict(extra="forbid", strict=True)


def text(shortest: int, longest: int, pattern: str | None = None) -> Any:
    return StringConstraints(min_length=shortest, max_length=longest, pattern=pattern)


def unique(names: list[str]) -> list[str]:
    assert len(set(names)) == len(names)
    return names


Url = Annotated[str, text(0, 3000, r"^https?://")]


class Metadata(Part):
    major_version: int
    minor_version: int


class DisplayInformation(Part):
    name: Annotated[str, text(1, 35)]
    description: Annotated[str, text(1, 140)]
    long_description: Annotated[str, text(175, 4000)]


class AppHome(Part):
    home_tab_enabled: bool
    messages_tab_enabled: bool
    messages_tab_read_only_enabled: bool


class BotUser(Part):
    display_name: Annotated[str, text(1, 80)]
    always_online: bool


class Shortcut(Part):
    name: Annotated[str, text(1, 24)]
    type: Literal["message", "global"]
    callback_id: Annotated[str, text(1, 255)]
    description: Annotated[str, text(1, 150)]


class SlashCommand(Part):
    command: Annotated[str, text(2, 32, r"^/")]
    url: Url | None = None
    description: Annotated[str, text(1, 2000)]
    usage_hint: Annotated[str, text(1, 1000)]
    should_escape: bool


class Features(Part):
    app_home: AppHome
    bot_user: BotUser
    shortcuts: Annotated[list[Shortcut], Field(min_length=1, max_length=5)]
    slash_commands: Annotated[list[SlashCommand], Field(min_length=1, max_length=50)]


class Scopes(Part):
    bot: Annotated[list[Annotated[str, text(1, 50)]], Field(max_length=255)]


class OauthConfig(Part):
    scopes: Scopes
    redirect_urls: list[Url] | None = None


class EventSubscriptions(Part):
    request_url: Annotated[str, text(0, 3500, r"^https?://")] | None = None
    bot_events: Annotated[
        list[Annotated[str, text(1, 50)]], Field(max_length=100), AfterValidator(unique)
    ]


class Interactivity(Part):
    is_enabled: bool
    request_url: Annotated[str, text(0, 3500, r"^https?://")] | None = None


class Settings(Part):
    event_subscriptions: EventSubscriptions
    interactivity: Interactivity
    org_deploy_enabled: bool
    socket_mode_enabled: bool
    token_rotation_enabled: bool


class Schema(Part):
    metadata: Metadata = Field(alias="_metadata")
    display_information: DisplayInformation
    features: Features
    oauth_config: OauthConfig
    settings: Settings


@pytest.mark.parametrize("address", [None, "https://bot.example.org"])
def test_the_manifest_holds_the_published_schema(address: str | None) -> None:
    Schema.model_validate(make_manifest(address))


@pytest.mark.parametrize(
    ("part", "key", "wrong"),
    [
        ("display_information", "name", "x" * 36),
        ("display_information", "description", ""),
        ("display_information", "long_description", "x" * 174),
        ("display_information", "colour", "red"),
        ("settings", "socket_mode_enabled", "yes"),
        ("features", "shortcuts", []),
    ],
)
def test_the_typed_schema_refuses_what_slack_refuses(part: str, key: str, wrong: object) -> None:
    manifest = make_manifest()
    manifest[part][key] = wrong

    with pytest.raises(ValidationError):
        Schema.model_validate(manifest)
