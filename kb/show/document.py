"""A whole HTML document of one column that brings its own stylesheet and nothing else."""

from base64 import b64encode
from collections.abc import Iterable
from hashlib import sha256
from html import escape

__all__ = ["document"]


def document(title: str, style: str, body: Iterable[str]) -> str:
    """A document with a title, CSS and the lines of its body, which are HTML; its policy allows that CSS alone."""
    digest = b64encode(sha256(style.encode()).digest()).decode()
    return "\n".join(
        [
            "<!DOCTYPE html>",
            '<html lang="en">',
            "<head>",
            '<meta charset="utf-8">',
            '<meta http-equiv="Content-Security-Policy" content="default-src \'none\'; style-src'
            f" 'sha256-{digest}'; base-uri 'none'; form-action 'none'\">",
            '<meta name="viewport" content="width=device-width, initial-scale=1">',
            f"<title>{escape(title)}</title>",
            f"<style>{style}</style>",
            "</head>",
            "<body>",
            "<main>",
            *body,
            "</main>",
            "</body>",
            "</html>",
            "",
        ]
    )
