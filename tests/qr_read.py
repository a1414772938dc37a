"""A QR code drawn as SVG, read by a library that had no hand in drawing it."""

import re

import numpy as np
import zxingcpp

__all__ = ["qr_read"]

SCALE = 6
"""Pixels a module."""


def qr_read(svg: str) -> str:
    """What the code says: its rows of strokes as pixels, given to the reader."""
    found = re.search(r'viewBox="0 0 (\d+) (\d+)"', svg)
    path = re.search(r'stroke="#000" d="([^"]+)"', svg)
    assert found
    assert path
    drawn = np.full((int(found[2]), int(found[1])), 255, np.uint8)
    x = y = 0.0
    for command, said in re.findall(r"([Mmh])([-0-9. ]+)", path[1]):
        numbers = [float(each) for each in re.findall(r"-?[0-9.]+", said)]
        if command == "M":
            x, y = numbers
        elif command == "m":
            x, y = x + numbers[0], y + numbers[1]
        else:
            drawn[int(y), int(x) : int(x + numbers[0])] = 0
            x += numbers[0]
    read = zxingcpp.read_barcodes(np.kron(drawn, np.ones((SCALE, SCALE), np.uint8)))
    return str(read[0].text) if read else ""
