"""What can't be answered as it was asked: why, in one sentence, and the nearest that can."""

from typing import NamedTuple

from kb.show.page.page import Link, Page

__all__ = ["Refused", "refused_page"]

TITLES = {
    400: "That can't be understood",
    403: "That is not open here",
    404: "There is no such page",
    405: "Pages are only read here",
    414: "That is too much to ask at once",
    500: "Something broke",
    503: "Too many ask at once",
}


class Refused(NamedTuple):
    """Why, and the nearest there is."""

    title: str
    why: str
    near: tuple[Link, ...]


def refused_page(status: int, why: str, near: tuple[Link, ...] = ()) -> Page:
    """The page for a question that isn't answered; `status` is HTTP's."""
    title = TITLES.get(status, "No answer")
    return Page("refused", title, "refused", Refused(title, why, near), status=status)
