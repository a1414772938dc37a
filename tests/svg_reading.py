"""An independent reading of figures: an SVG as a tree, and the circles that its outlines are hung on.

It knows nothing of how figures are drawn, only what SVG says of path data and transforms.
"""

import math
import re
from collections.abc import Iterator
from typing import NamedTuple
from xml.etree import ElementTree as ET

__all__ = ["SVG", "Circle", "circles", "classed", "read", "said_by", "transgressions"]

SVG = "{http://www.w3.org/2000/svg}"

NUMBER = re.compile(r"-?(?:\d+\.?\d*|\.\d+)")

TAKES = {"M": 2, "L": 2, "l": 2, "H": 1, "V": 1, "a": 7, "z": 0}


class Circle(NamedTuple):
    """A circle some outline runs round, in the drawing's units, y down."""

    x: float
    y: float
    r: float


def read(svg: str) -> ET.Element:
    """The drawing as a tree; an error of the parser's if it is no XML."""
    return ET.fromstring(svg)  # noqa: S314  # ours


def classed(root: ET.Element, name: str) -> list[ET.Element]:
    """Every element of a class."""
    return [each for each in root.iter() if name in each.get("class", "").split()]


def said_by(root: ET.Element) -> tuple[str, str]:
    """Title and description, as `aria-labelledby` leads to them."""
    by_id = {each.get("id"): each for each in root.iter() if each.get("id")}
    title, desc = (by_id[name] for name in root.get("aria-labelledby", "").split())
    assert title.tag == f"{SVG}title"
    assert desc.tag == f"{SVG}desc"
    return title.text or "", desc.text or ""


def _commands(data: str) -> Iterator[tuple[str, list[float]]]:
    for letter, rest in re.findall(r"([A-Za-z])([^A-Za-z]*)", data):
        numbers = [float(each) for each in NUMBER.findall(rest)]
        takes = TAKES[letter]
        assert len(numbers) == takes or (takes and len(numbers) % takes == 0), (letter, rest)
        for n in range(0, max(len(numbers), 1), max(takes, 1)):
            yield letter, numbers[n : n + takes]


def _centre(x: float, y: float, r: float, large: bool, dx: float, dy: float) -> Circle:
    """The circle of an arc that is drawn clockwise on the screen (sweep 1) from x, y."""
    chord = math.hypot(dx, dy)
    r = max(r, chord / 2)
    height = math.sqrt(max(r * r - chord * chord / 4, 0.0))
    side = 1 if large else -1
    # clockwise on a screen whose y goes down, the centre of a small arc lies to the right of the chord
    return Circle(x + dx / 2 + side * height * dy / (chord or 1), y + dy / 2 - side * height * dx / (chord or 1), r)


def circles(root: ET.Element, *, dx: float = 0.0, dy: float = 0.0) -> Iterator[Circle]:
    """Every circle below an element, moved as transforms say; what is only repeated by `use` is left out."""
    move = re.fullmatch(r"translate\((\S+) (\S+)\)", root.get("transform", ""))
    if move:
        dx, dy = dx + float(move[1]), dy + float(move[2])
    if root.tag == f"{SVG}circle":
        yield Circle(float(root.get("cx", 0)) + dx, float(root.get("cy", 0)) + dy, float(root.get("r", 0)))
    x = y = start_x = start_y = 0.0
    for letter, numbers in _commands(root.get("d", "")):
        if letter in "ML":
            x, y = numbers
        elif letter == "l":
            x, y = x + numbers[0], y + numbers[1]
        elif letter == "H":
            x = numbers[0]
        elif letter == "V":
            y = numbers[0]
        elif letter == "a":
            assert numbers[0] == numbers[1]
            assert numbers[4] == 1
            found = _centre(x, y, numbers[0], bool(numbers[3]), numbers[5], numbers[6])
            yield Circle(found.x + dx, found.y + dy, found.r)
            x, y = x + numbers[5], y + numbers[6]
        else:
            x, y = start_x, start_y
        if letter == "M":
            start_x, start_y = x, y
    for child in root:
        yield from circles(child, dx=dx, dy=dy)


def transgressions(root: ET.Element, *, alone: bool) -> list[str]:
    """What a strict policy would refuse or a page must not hold: script, handlers, style attributes, addresses."""
    found = []
    for each in root.iter():
        tag = each.tag.removeprefix(SVG)
        if tag in ("script", "foreignObject", "image", "a", "iframe") or (tag == "style" and not alone):
            found.append(tag)
        for name, value in each.attrib.items():
            if name.startswith("on") or name == "style" or "javascript" in value or "url(" in value or "//" in value:
                found.append(f"{tag} {name}={value}")
            if name.endswith("href") and not value.startswith("#"):
                found.append(f"{tag} {name}={value}")
    return found
