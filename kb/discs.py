"""A bar and its discs: which of them make a weight, with the fewest discs and the largest innermost.

Weights are worked in whole thousandths, so that nothing is lost in rounding. In the trade's words: a *disc* goes
on a sleeve, a *collar* holds it there, *iron* here is all three: bar, discs and collars.
"""

import math
from collections.abc import Mapping
from functools import cache
from itertools import groupby
from types import MappingProxyType
from typing import Literal, NamedTuple

from kb.errors import BadInput

# fmt: off
__all__ = [
    "BARS", "COLLAR_KG", "DISCS", "KG_OF_LB", "MOST_KG", "Disc", "Iron", "Unit", "at_most", "disc_list", "exactly",
    "iron_of", "kg_of", "weight",
]
# fmt: on

Unit = Literal["kg", "lb"]

KG_OF_LB = 0.45359237
"""One pound in kilograms, exactly, by definition (international yard and pound agreement, 1959)."""

BARS: Mapping[Unit, Mapping[str, float]] = MappingProxyType(
    {
        # men's and women's: 2.01 IWF TCRR; the training bar: common practice, no source
        "kg": MappingProxyType({"men": 20.0, "women": 15.0, "training": 10.0}),
        # common practice, no source
        "lb": MappingProxyType({"men": 45.0, "women": 35.0, "training": 25.0}),
    }
)
"""Weight of each bar that has a name. Lighter training bars (5 kg) exist: `--bar 5`."""

DISCS: Mapping[Unit, tuple[float, ...]] = MappingProxyType(
    {
        "kg": (25.0, 20.0, 15.0, 10.0, 5.0, 2.5, 2.0, 1.5, 1.0, 0.5),  # 2.03 IWF TCRR
        "lb": (45.0, 35.0, 25.0, 10.0, 5.0, 2.5),  # common practice, no source
    }
)
"""The usual discs, largest first."""

COLLAR_KG = 2.5
"""One competition collar, kg (2.05 IWF TCRR). Counted only where they are used: spring clips weigh next to nothing."""

MOST_KG = 500.0
"""More than this on a bar is a slip of the pen, kg. Common sense, no source."""

ON_A_SLEEVE = 20
"""Discs of one size that a sleeve holds: it is 415 mm (2.02), the thinnest about 20 mm. Common practice, no source."""

LEAST_DISC, MOST_DISC, MOST_BAR = 0.25, 100.0, 60.0
"""What a disc and a bar can weigh, in either unit. Common sense, no source."""


class Disc(NamedTuple):
    """A size of disc; `pairs` on hand, or None for as many as a sleeve holds."""

    weight: float
    pairs: int | None = None


class Iron(NamedTuple):
    """What can be put together: a bar, discs in pairs, largest first, and collars' weight each (0 without).

    `most` is the heaviest that all there is makes, where that was said.
    """

    bar: float = 20.0
    discs: tuple[Disc, ...] = tuple(map(Disc, DISCS["kg"]))
    collar: float = 0.0
    unit: Unit = "kg"
    most: float = math.inf

    @property
    def least(self) -> float:
        """The bar with its collars and no disc."""
        return self.bar + 2 * self.collar


def kg_of(weight: float, unit: Unit) -> float:
    """A weight in kilograms, from either unit."""
    return weight * KG_OF_LB if unit == "lb" else weight


def weight(text: str, what: str, most: float = math.inf) -> float:
    """A weight as it is typed, above nothing; BadInput that says of what it isn't one."""
    try:
        number = float(text)
    except ValueError:
        number = math.nan
    if not (math.isfinite(number) and number > 0):
        raise BadInput(f"{what} is a weight above 0, not {text.strip()!r}")
    if number > most:
        raise BadInput(f"{what} can't weigh {number:g}, which is more than {most:g}")
    return number


def iron_of(bar: str = "men", unit: Unit = "kg", discs: str | None = None, *, collars: bool = False) -> Iron:
    """A bar by its name or its weight, discs as they are listed, and collars if they are counted.

    Discs are sizes with a comma between, each with its pairs if they are few: `25x1,20,10x2,5`. Without a
    list there are the usual ones, as many as it takes.

    Raises BadInput, in one sentence, for a bar or a disc that can't be.
    """
    named = BARS[unit]
    if bar in named:
        heavy = named[bar]
    elif bar[:1].isalpha():
        raise BadInput(f"there is no bar {bar!r}; give its weight, or one of these", nearest=tuple(named))
    else:
        heavy = weight(bar, "the bar", MOST_BAR)
    sizes = tuple(map(Disc, DISCS[unit])) if discs is None else _listed(discs)
    # a competition collar is of the kilogram set; beside pounds it is counted as the 5 lb it nearly is
    collar = 5.0 if unit == "lb" else COLLAR_KG
    return Iron(heavy, sizes, collar if collars else 0.0, unit)


def _listed(discs: str) -> tuple[Disc, ...]:
    found: dict[float, Disc] = {}
    for text in discs.replace("\xd7", "x").split(","):
        size, by, count = text.partition("x")
        heavy = weight(size, "a disc", MOST_DISC)
        if heavy < LEAST_DISC or round(heavy * 100) / 100 != heavy:
            raise BadInput(f"a disc is {LEAST_DISC:g} or more, to two decimals, not {size.strip()}")
        if heavy in found:
            raise BadInput(f"the disc {heavy:g} is listed twice; write {heavy:g}x2 for two pairs")
        pairs = count.strip()
        if by and not (pairs.isascii() and pairs.isdigit() and 1 <= int(pairs[:4]) <= ON_A_SLEEVE):
            raise BadInput(f"of a disc there are 1 to {ON_A_SLEEVE} pairs, as in {heavy:g}x2, not {pairs!r}")
        found[heavy] = Disc(heavy, int(pairs) if by else None)
    return tuple(sorted(found.values(), key=lambda disc: -disc.weight))


def _thousandths(weight: float) -> int:
    return round(weight * 1000)


@cache
def _sides(discs: tuple[Disc, ...], most: int) -> Mapping[int, tuple[int, ...]]:
    """Every weight of one side up to `most`, thousandths, and its fewest discs, largest first.

    A shortest-list search by dynamic programming: disc by disc, largest first, each weight keeps the list
    of fewest discs, of equally short ones the one whose largest discs are larger.
    """
    found: dict[int, tuple[int, ...]] = {0: ()}
    for disc in discs:
        size = _thousandths(disc.weight)
        pairs = ON_A_SLEEVE if disc.pairs is None else disc.pairs
        before = sorted(found.items())
        for weight, held in before:
            for count in range(1, min(pairs, (most - weight) // size) + 1):
                known = found.get(weight + count * size)
                if known is not None and len(known) < len(held) + count:
                    continue
                made = held + (size,) * count
                if known is None or len(made) < len(known) or made > known:
                    found[weight + count * size] = made
    return MappingProxyType(found)


def _a_side(total: float, iron: Iron) -> int:
    """What each side must bear, twice over, thousandths."""
    return _thousandths(total) - _thousandths(iron.least)


def at_most(total: float, iron: Iron) -> tuple[float, ...] | None:
    """The discs of one side, largest first, of the heaviest weight that is `total` or less; None if the bar is more."""
    both = _a_side(min(total, iron.most), iron)
    if both < 0:
        return None
    side = _sides(iron.discs, both // 2)
    return tuple(each / 1000 for each in side[max(side)])


def exactly(total: float, iron: Iron) -> tuple[float, ...]:
    """The discs of one side, largest first, that make `total`: the fewest there are.

    Raises
    ------
    BadInput
        With the nearest weights below and above, if it can't be made.
    """
    if not (math.isfinite(total) and 0 < kg_of(total, iron.unit) <= MOST_KG):
        raise BadInput(f"a bar weighs more than 0 and at most {MOST_KG:g} kg, not {total:g} {iron.unit}")
    both = _a_side(total, iron)
    # twice over, so that an odd number of thousandths is no special case; a disc past the total is the nearest above
    largest = max((_thousandths(disc.weight) for disc in iron.discs), default=0)
    side = _sides(iron.discs, max(both, 0) // 2 + largest)
    if both >= 0 and both % 2 == 0 and both // 2 in side:
        return tuple(each / 1000 for each in side[both // 2])
    below = [weight for weight in side if 2 * weight < both]
    above = [weight for weight in side if 2 * weight > both]
    nearest = [max(below)] if below else []
    nearest += [min(above)] if above else []
    said = tuple(f"{_total(weight, iron):g} {iron.unit}" for weight in nearest)
    raise BadInput(f"{total:g} {iron.unit} can't be made with this bar and these discs", nearest=said)


def _total(side: int, iron: Iron) -> float:
    return iron.least + side / 500


def disc_list(discs: tuple[float, ...]) -> str:
    """Discs of one side as a coach calls them, innermost first.

    >>> disc_list((25.0, 25.0, 5.0, 0.5)), disc_list(())
    ('2 x 25, 5, 0.5', 'none')
    """
    counted = [(weight, len(list(same))) for weight, same in groupby(discs)]
    return ", ".join(f"{count} x {weight:g}" if count > 1 else f"{weight:g}" for weight, count in counted) or "none"
