"""What lets the pages be kept on a device: a list of them for the worker that keeps them, and a manifest."""

import json
from collections.abc import Iterable
from pathlib import Path

from kb.show.page.inert import inert

__all__ = ["keeper", "manifest"]

KEEPER = Path(__file__).parent / "assets" / "keep.js"

FIRST = ("home", "faults", "lifts", "drills", "find", "at-hand", "ask")
"""Pages that are kept at once; all others follow."""


def keeper(version: str, addresses: Iterable[tuple[str, str]], files: Iterable[str]) -> str:
    """The worker that keeps pages: `addresses` are each page's path and where it is found, `files` what all share.

    Addresses are relative to the worker's own. A new version of the library is a new worker.
    """
    found = list(addresses)
    pages = {
        "version": version,
        "first": [*files, *(address for path, address in found if path in FIRST)],
        "rest": [address for path, address in found if path not in FIRST],
    }
    return f"self.drillpathPages = {inert(pages)};\n{KEEPER.read_text('utf-8')}"


def manifest() -> str:
    """The manifest by which a device takes the pages as one thing to open."""
    return json.dumps(
        {
            "name": "drillpath",
            "short_name": "drillpath",
            "description": "From a fault seen in a snatch, clean or jerk to an ordered chain of drills.",
            "start_url": "./",
            "scope": "./",
            "display": "minimal-ui",
            "background_color": "#f7f3ea",
            "theme_color": "#f7f3ea",
            "icons": [{"src": "assets/icon.svg", "sizes": "any", "type": "image/svg+xml", "purpose": "any"}],
        },
        indent=1,
    )
