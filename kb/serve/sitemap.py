"""A list of all pages for search engines, as sitemaps.org has it: whole addresses, so only a server can give it."""

from collections.abc import Iterable
from xml.sax.saxutils import escape

__all__ = ["sitemap"]

MOST = 50_000
"""Addresses that one such list may hold (sitemaps.org/protocol.html)."""


def sitemap(host: str, addresses: Iterable[str]) -> bytes:
    """The list, of addresses from the root of `host`, which begins with http:// or https://."""
    rows = [f"<url><loc>{escape(host + address)}</loc></url>" for address in addresses]
    head = '<?xml version="1.0" encoding="UTF-8"?>\n<urlset xmlns="http://www.sitemaps.org/schemas/sitemap/0.9">'
    return "\n".join([head, *rows[:MOST], "</urlset>\n"]).encode()
