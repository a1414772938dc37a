"""How far apart a drill comes back: the best gap for the time left until it must be held.

Published once for gaps of learning in general (Cepeda, Vul, Rohrer, Wixted & Pashler 2008, Psychol Sci 19:1095-1102,
over 1,350 people learning facts): the best gap is 20 to 40 % of a delay of a week, falling to 5 to 10 % of a delay
of a year. One fixed share is wrong at both ends. That it holds for lifting is an assumption, said in kb/docs/plan.md.
"""

from math import floor, log

__all__ = ["PUBLISHED", "best_gap", "best_gap_days", "best_share", "least_gap"]

PUBLISHED: tuple[tuple[int, float, float], ...] = ((7, 0.20, 0.40), (365, 0.05, 0.10))
"""Delay in days, least and most of the best gap as a share of it: Cepeda 2008, abstract."""


def best_share(delay_days: float) -> float:
    """The best gap as a share of a delay: the middles of what is published, in between linear in log delay.

    Outside the published delays the nearest one's share stands: nothing is known there.

    >>> round(best_share(7), 3), round(best_share(365), 3), round(best_share(35), 3)
    (0.3, 0.075, 0.208)
    """
    (near, near_low, near_high), (far, far_low, far_high) = PUBLISHED
    near_share, far_share = (near_low + near_high) / 2, (far_low + far_high) / 2
    along = log(min(max(delay_days, near), far) / near) / log(far / near)
    return near_share + along * (far_share - near_share)


def best_gap_days(delay_days: float) -> float:
    """The best gap before a delay, days; it grows with the delay, ever more slowly.

    >>> round(best_gap_days(7), 1), round(best_gap_days(70), 1)
    (2.1, 11.8)
    """
    return best_share(delay_days) * delay_days


def best_gap(left: int, per_week: float) -> int:
    """The best gap in whole sessions, one at least, with `left` sessions still to go to the lift day.

    >>> best_gap(2, 2), best_gap(12, 2), best_gap(20, 2)
    (1, 2, 3)
    """
    return max(1, floor(best_gap_days(left * 7 / per_week) * per_week / 7 + 0.5))


def least_gap(before: int, left: int, per_week: float) -> int:
    """The least gap that may follow a gap of `before` sessions (0: there was none), `left` before the lift day.

    It is wider by a session each time until it is the best gap for the time that is left, and never shrinks.

    >>> least_gap(0, 20, 2), least_gap(1, 20, 2), least_gap(3, 20, 2), least_gap(1, 3, 2)
    (1, 2, 3, 1)
    """
    if not before:
        return 1
    return min(before + 1, max(before, best_gap(left, per_week)))
