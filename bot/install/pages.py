"""The pages of installing as HTML: small, for a phone, and nothing of anybody else in them."""

from base64 import b64encode
from hashlib import sha256
from html import escape
from typing import Final

from bot.wording.install import Page

_STYLE: Final = (
    "body{font:1.1rem/1.5 system-ui,sans-serif;max-width:34rem;margin:0 auto;padding:1.5rem;"
    "color:#1c1c1c;background:#fff}h1{font-size:1.5rem;line-height:1.2}"
    "a{display:inline-block;padding:.8rem 1.2rem;border-radius:.4rem;background:#1b4d3e;"
    "color:#fff;text-decoration:none}"
)
_STYLE_HASH: Final = b64encode(sha256(_STYLE.encode()).digest()).decode()

#: Nothing is loaded, framed, cached or indexed, and the code in the address is told to nobody.
HEADERS: Final = {
    "Content-Type": "text/html; charset=utf-8",
    "Content-Security-Policy": (
        f"default-src 'none'; style-src 'sha256-{_STYLE_HASH}'; base-uri 'none'; "
        "form-action 'none'; frame-ancestors 'none'"
    ),
    "X-Content-Type-Options": "nosniff",
    "X-Frame-Options": "DENY",
    "Referrer-Policy": "no-referrer",
    "Cache-Control": "no-store",
    "X-Robots-Tag": "noindex",
}


def html(page: Page, address: str) -> str:
    """The page; its link leads to `address`."""
    says = "".join(f"<p>{escape(one)}</p>" for one in page.says)
    link = f'<p><a href="{escape(address)}">{escape(page.link)}</a></p>' if page.link else ""
    return (
        '<!doctype html><html lang="en"><head><meta charset="utf-8">'
        '<meta name="viewport" content="width=device-width, initial-scale=1">'
        f"<title>{escape(page.heading)}</title><style>{_STYLE}</style></head>"
        f"<body><main><h1>{escape(page.heading)}</h1>{says}{link}</main></body></html>"
    )
