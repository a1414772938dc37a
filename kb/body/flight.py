"""How long a body falls and how far a bar floats, without air: what the lifter has to get under it.

References
----------
g is the standard acceleration of free fall, 9.80665 m/s2 (BIPM, SI brochure, 9th ed.).
"""

import math

__all__ = ["G", "fall_seconds", "float_seconds", "rise"]

G = 9.80665
"""Standard acceleration of free fall, m/s2."""


def fall_seconds(height: float) -> float:
    """How long a fall from rest takes, s, by its height, m.

    >>> round(fall_seconds(0.30), 4)
    0.2474
    """
    return math.sqrt(2 * height / G)


def rise(speed: float) -> float:
    """How far a bar let go upwards at that speed, m/s, still rises, m.

    >>> round(rise(1.65), 4)
    0.1388
    """
    return speed * speed / (2 * G)


def float_seconds(speed: float) -> float:
    """How long it rises, s.

    >>> round(float_seconds(1.65), 4)
    0.1683
    """
    return speed / G
