"""Fetches a calendar from its address: https alone, from public hosts, small and in time.

The address comes from a chat message, so it must not reach into the network that the bot runs
in: every host, those of redirects too, is resolved once, checked, and connected to at the
address that was checked.
"""

import ipaddress
import socket
import ssl
from collections.abc import Callable
from http.client import HTTPException, HTTPResponse, HTTPSConnection
from urllib.parse import urljoin, urlsplit

from core.calendar.ics import CalendarError

#: Bytes of a calendar; a season's games fill some hundred thousand at most.
LARGEST = 2_000_000
#: Seconds for one step (connect, a read), and redirects that are followed.
TIMEOUT, HOPS = 10.0, 3
_MOVED = frozenset({301, 302, 303, 307, 308})
_PIECE = 65_536

#: From a host's name and port to the addresses it has.
Resolve = Callable[[str, int], list[str]]
Seconds = Callable[[], float]
#: A whole fetch, redirects included, takes no longer (seconds).
LONGEST = 20.0


def addresses_of(host: str, port: int) -> list[str]:
    """The addresses of a host, as the system's resolver gives them."""
    found = socket.getaddrinfo(host, port, type=socket.SOCK_STREAM)
    return [str(sockaddr[0]) for *_, sockaddr in found]


class Fetcher:
    """Gets calendars; what the network does is given, so that a test needs none."""

    def __init__(
        self,
        seconds: Seconds,
        resolve: Resolve = addresses_of,
        context: ssl.SSLContext | None = None,
        *,
        public_only: bool = True,
    ) -> None:
        """`seconds` measures how long a fetch takes; `public_only` is off only in tests."""
        self._seconds, self._resolve = seconds, resolve
        self._context = context or ssl.create_default_context()
        self._public_only = public_only

    def __call__(self, address: str) -> bytes:
        """The file at an https address.

        Raises `CalendarError` with "address" (not https, or no public host), "not found",
        "too large", "too slow" or "no answer".
        """
        until = self._seconds() + LONGEST
        for _hop in range(HOPS + 1):
            try:
                found = self._get(address, until)
            except (OSError, HTTPException, ValueError) as wrong:
                late = isinstance(wrong, TimeoutError)
                raise CalendarError("too slow" if late else "no answer") from wrong
            if isinstance(found, bytes):
                return found
            address = found
        raise CalendarError("address")

    def _get(self, address: str, until: float) -> bytes | str:
        """The file, or where it has moved to."""
        url = urlsplit(address)
        if url.scheme.lower() != "https" or not url.hostname or url.username is not None:
            raise CalendarError("address")
        port = url.port or 443
        connection = _Pinned(url.hostname, port, self._checked(url.hostname, port), self._context)
        try:
            path = (url.path or "/") + (f"?{url.query}" if url.query else "")
            headers = {"Accept": "text/calendar", "User-Agent": "spinkeeper"}
            connection.request("GET", path, headers=headers)
            with connection.getresponse() as answer:
                if answer.status in _MOVED:
                    return urljoin(address, answer.getheader("Location") or "")
                if answer.status != 200:
                    raise CalendarError("not found")
                return self._read(answer, until)
        finally:
            connection.close()

    def _checked(self, host: str, port: int) -> str:
        """An address of the host; refused where any of them is not public."""
        found = self._resolve(host, port)
        if not found or (self._public_only and not all(map(_is_public, found))):
            raise CalendarError("address")
        return found[0]

    def _read(self, answer: HTTPResponse, until: float) -> bytes:
        parts, size = [], 0
        while part := answer.read1(_PIECE):
            size += len(part)
            if size > LARGEST:
                raise CalendarError("too large")
            if self._seconds() > until:
                raise CalendarError("too slow")
            parts.append(part)
        return b"".join(parts)


class _Pinned(HTTPSConnection):
    """A connection to the address that was checked, under the host's own name."""

    def __init__(self, host: str, port: int, address: str, context: ssl.SSLContext) -> None:
        super().__init__(host, port, timeout=TIMEOUT, context=context)
        self._address, self._trusted = address, context

    def connect(self) -> None:
        plain = socket.create_connection((self._address, self.port), TIMEOUT)
        self.sock = self._trusted.wrap_socket(plain, server_hostname=self.host)


def _is_public(address: str) -> bool:
    """Whether an address belongs to the public internet."""
    found = ipaddress.ip_address(address.partition("%")[0])
    mapped = getattr(found, "ipv4_mapped", None)
    if mapped is not None:
        found = mapped
    return found.is_global and not found.is_multicast
