"""The best use of a session's seconds: which doses, which warm-up, what to drop, what to finish with; exact.

Everything is numbers here. Each part of a session gives a front: its choices of which none takes longer and is
worth no more than another (Pareto). Fronts are joined part by part, so that the best that fits is found without
trying every combination, and nothing that could be better is ever thrown away (dynamic programming over Pareto
fronts, after Nemhauser & Ullmann 1969, Management Science 15(9):494-505).
"""

from collections.abc import Iterable, Sequence
from typing import NamedTuple

__all__ = ["Fitted", "Offer", "Opener", "Option", "Way", "fit", "least_seconds"]

Picks = tuple[int, ...]


class Option(NamedTuple):
    """One way to do a thing: how long it takes, s, and what it is worth."""

    seconds: int
    worth: int


class Opener(NamedTuple):
    """A warm-up drill that may be done or not: the joints it opens, as a bit set, and its doses."""

    covers: int
    options: tuple[Option, ...]


class Way(NamedTuple):
    """Things that are done together, one option of each; `covers` as in an opener, `worth` on top of theirs."""

    slots: tuple[tuple[Option, ...], ...]
    worth: int = 0
    covers: int = 0


class Offer(NamedTuple):
    """What a session may be made of.

    One of `raises` (any one, if there is one), any of `openers` within `opening_s`, one of `ways`, one of
    `ends`. A joint opened, by an opener or by the way, is worth `joints[n]` once.
    """

    seconds: int
    raises: tuple[Way, ...]
    openers: tuple[Opener, ...]
    opening_s: int
    joints: tuple[int, ...]
    ways: tuple[Way, ...]
    ends: tuple[Way, ...]


class Fitted(NamedTuple):
    """The best choice: which raise, way and end, with the option of each of their slots; openers' options by place.

    An opener that isn't done has None. `raising` is None where there is nothing to raise warmth with.
    """

    seconds: int
    worth: int
    raising: tuple[int, Picks] | None
    openers: tuple[int | None, ...]
    way: tuple[int, Picks]
    end: tuple[int, Picks]


class _Point(NamedTuple):
    """A choice on a front; `picks` say which, a tuple of numbers for each thing joined."""

    seconds: int
    worth: int
    picks: tuple[Picks, ...]


_NOTHING = [_Point(0, 0, ())]


def _front(points: Iterable[_Point]) -> list[_Point]:
    """The points that none beats: by time, each worth more than the one before."""
    kept: list[_Point] = []
    most = -1
    for point in sorted(points, key=_quickest):
        if not kept or point.worth > most:
            kept.append(point)
            most = point.worth
    return kept


def _quickest(point: _Point) -> tuple[int, int]:
    return point.seconds, -point.worth


def _joined(a: Sequence[_Point], b: Sequence[_Point], limit: int) -> list[_Point]:
    """Every choice of one from each that fits, as a front; of two that are alike the first by `a`, then by `b`."""
    pairs = [
        (x.seconds + y.seconds, -x.worth - y.worth, at, n)
        for at, x in enumerate(a)
        for n, y in enumerate(b)
        if x.seconds + y.seconds <= limit
    ]
    pairs.sort()
    kept: list[_Point] = []
    least = 1
    for seconds, minus_worth, at, n in pairs:
        if not kept or minus_worth < least:
            kept.append(_Point(seconds, -minus_worth, a[at].picks + b[n].picks))
            least = minus_worth
    return kept


def _of_way(way: Way, limit: int) -> list[_Point]:
    """The front of a way: what it picks of each slot."""
    front = [_Point(0, way.worth, ())]
    for options in way.slots:
        points = _front(_Point(option.seconds, option.worth, ((n,),)) for n, option in enumerate(options))
        front = _joined(front, points, limit)
    return front


def _of_any(ways: Sequence[Way], limit: int) -> list[_Point]:
    """The front of one of several ways: its number, then its picks."""
    return _front(
        point._replace(picks=((n, *(each for (each,) in point.picks)),))
        for n, way in enumerate(ways)
        for point in _of_way(way, limit)
    )


def _joint_worth(joints: Sequence[int], covered: int) -> int:
    return sum(worth for n, worth in enumerate(joints) if covered >> n & 1)


def _outdone(opener: Opener, other: Opener, *, later: bool) -> bool:
    """Whether nothing is lost without an opener, for `other` opens as much: sooner or for more; or as good, if `later`.

    Only where doing the one as well as the other is worth nothing.
    """
    if opener.covers & ~other.covers or any(option.worth > 0 for option in opener.options):
        return False
    return all(
        any(
            better.seconds <= option.seconds and better.worth >= option.worth and (later or better != option)
            for better in other.options
        )
        for option in opener.options
    )


def _worth_trying(openers: Sequence[Opener]) -> list[tuple[int, Opener]]:
    """The openers, by their place, less those that another makes needless."""
    return [
        (at, opener)
        for at, opener in enumerate(openers)
        if not any(n != at and _outdone(opener, other, later=n < at) for n, other in enumerate(openers))
    ]


def _of_openers(offer: Offer, covered: int, limit: int) -> list[_Point]:
    """The front of the warm-up drills, where `covered` joints are opened without them."""
    limit = min(limit, offer.opening_s)
    fronts: dict[int, list[_Point]] = {0: _NOTHING}
    for at, opener in _worth_trying(offer.openers):
        fresh = opener.covers & ~covered
        done = _front(_Point(option.seconds, option.worth, ((at, n),)) for n, option in enumerate(opener.options))
        worthless = all(option.worth <= 0 for option in opener.options)
        grown: dict[int, list[_Point]] = {}
        for mask, front in fronts.items():
            if mask | fresh == mask and worthless:
                continue  # all that it opens is open
            grown.setdefault(mask | fresh, list(fronts.get(mask | fresh, ()))).extend(_joined(front, done, limit))
        fronts |= {mask: _front(points) for mask, points in grown.items()}
    return _front(
        point._replace(worth=point.worth + _joint_worth(offer.joints, mask | covered))
        for mask, front in fronts.items()
        for point in front
    )


def least_seconds(offer: Offer) -> int:
    """The least time any choice takes, s."""

    def shortest(ways: Sequence[Way]) -> int:
        return min(
            (sum(min(option.seconds for option in slot) for slot in way.slots) for way in ways),
            default=0,
        )

    return shortest(offer.raises) + shortest(offer.ways) + shortest(offer.ends)


def _most(way: Way, rest: int) -> int:
    """No choice of a way is worth more than this with `rest` around it."""
    return way.worth + rest + sum(max(option.worth for option in slot) for slot in way.slots)


def fit(offer: Offer) -> Fitted | None:
    """The choice worth most that fits; of several the shortest, then the first. None if nothing fits."""
    limit = offer.seconds
    raises = _of_any(offer.raises, limit) if offer.raises else _NOTHING
    ends = _of_any(offer.ends, limit)
    around: dict[int, list[_Point]] = {}
    best: tuple[int, int, tuple[_Point, int, _Point]] | None = None
    for at, way in enumerate(offer.ways):
        if way.covers not in around:
            both = _joined(raises, _of_openers(offer, way.covers, limit), limit)
            around[way.covers] = _joined(both, ends, limit)
        others = around[way.covers]
        if not others or (best is not None and _most(way, others[-1].worth) < -best[0]):
            continue
        found = _best_pair(others, _of_way(way, limit), limit)
        if found is not None:
            key = (-(found[0].worth + found[1].worth), found[0].seconds + found[1].seconds)
            if best is None or key < best[:2]:
                best = (*key, (found[0], at, found[1]))
    return None if best is None else _fitted(offer, *best)


def _best_pair(a: Sequence[_Point], b: Sequence[_Point], limit: int) -> tuple[_Point, _Point] | None:
    """Of two fronts, the points worth most together that fit: for each of `a` the longest of `b` that still does."""
    best: tuple[_Point, _Point] | None = None
    at = len(b) - 1
    for x in a:
        while at >= 0 and x.seconds + b[at].seconds > limit:
            at -= 1
        if at < 0:
            break
        y = b[at]
        if best is None or (-(x.worth + y.worth), x.seconds + y.seconds) < (
            -(best[0].worth + best[1].worth),
            best[0].seconds + best[1].seconds,
        ):
            best = (x, y)
    return best


def _fitted(offer: Offer, minus_worth: int, seconds: int, parts: tuple[_Point, int, _Point]) -> Fitted:
    around, at, way = parts
    picks = list(around.picks)
    raising = picks.pop(0) if offer.raises else None
    end = picks.pop()
    openers: list[int | None] = [None] * len(offer.openers)
    for place, option in picks:
        openers[place] = option
    return Fitted(
        seconds,
        -minus_worth,
        (raising[0], raising[1:]) if raising else None,
        tuple(openers),
        (at, tuple(each for (each,) in way.picks)),
        (end[0], end[1:]),
    )
