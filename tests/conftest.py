"""Fixtures for every test: one stand-in server and one template database for the whole run."""

from tests.support.club import club, either, socket_club
from tests.support.database import any_store, postgres_template, sqlite_template, store
from tests.support.workspace import app_host, clock, stand_in, ws

__all__ = [
    "any_store",
    "app_host",
    "clock",
    "club",
    "either",
    "postgres_template",
    "socket_club",
    "sqlite_template",
    "stand_in",
    "store",
    "ws",
]
