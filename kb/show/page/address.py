"""Where a page is: one address for each answer, as it is served and as a file in a folder."""

from typing import NamedTuple
from urllib.parse import quote, urlencode

__all__ = ["SERVED", "Form", "file_of", "form_at"]


class Form(NamedTuple):
    """How pages reach each other: by addresses of a server, or as files that open from anywhere.

    `up` leads from a page's folder to the folder that holds all pages ("../" for each folder between); it is
    only for files.
    """

    static: bool = False
    up: str = ""
    base: str = "/"

    def to(self, kind: str, name: str = "", **query: str) -> str:
        """The address of a page, by its kind and name.

        >>> Form().to("fault", "early-arm-bend")
        '/fault/early-arm-bend'
        >>> Form(static=True, up="../").to("fault", "early-arm-bend")
        '../fault/early-arm-bend.html'
        >>> Form(static=True).to("home"), Form().to("home"), Form().to("find", q="bar & neck")
        ('index.html', '/', '/find?q=bar+%26+neck')
        """
        asked = f"?{urlencode(query)}" if query else ""
        path = "/".join(quote(part, safe="") for part in (kind, name) if part)
        if self.static:
            return self.up + ("index" if kind == "home" else path) + ".html" + asked
        return self.base + ("" if kind == "home" else path) + asked

    def file(self, name: str) -> str:
        """The address of a file that pages share, such as the stylesheet or a figure."""
        return (self.up if self.static else self.base) + name

    def data(self, path: str, asked: str = "") -> str:
        """The address of the answer of the page at `path`, for programs; `asked` is the query that it answers.

        >>> Form(static=True, up="../").data("lift/jerk")
        '../lift/jerk.json'
        """
        return (self.up if self.static else self.base) + quote(path) + ".json" + (f"?{asked}" if asked else "")

    def tables(self) -> str:
        """The address of the tables behind the pages: a folder has none, so there it is the sentence that says so.

        >>> Form().tables(), Form(static=True).tables()
        ('/catalogue', '#tables')
        """
        return "#tables" if self.static else f"{self.base}catalogue"


SERVED = Form()
"""Pages at the root of a server of their own."""


def file_of(path: str) -> str:
    """The file of a page in a folder of pages.

    >>> file_of("home"), file_of("chain/a.b")
    ('index.html', 'chain/a.b.html')
    """
    return ("index" if path == "home" else path) + ".html"


def form_at(path: str) -> Form:
    """The form in which the page at `path` stands as a file.

    >>> form_at("home").up, form_at("chain/a.b").up
    ('', '../')
    """
    return Form(static=True, up="../" * path.count("/"))
