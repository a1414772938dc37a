"""From what weight on a fault is seen, as it was typed: in kilograms, or in per cent of the best."""

from typing import NamedTuple

import click

__all__ = ["ShowsFrom", "in_kilograms_if_known", "shows_from_of"]

MOST_KG, MOST_PERCENT = 500, 110
"""More than anybody lifts, and than anybody lifts of a best."""


class ShowsFrom(NamedTuple):
    """So many kilograms, or so many per cent of the best of the lift."""

    amount: float
    percent: bool = False


def shows_from_of(_ctx: click.Context, _option: click.Parameter, typed: str | None) -> ShowsFrom | None:
    """What was typed: "70" or "85%". Raises click.BadParameter, in one sentence, for anything else."""
    if typed is None:
        return None
    text, percent = typed.strip().removesuffix("kg").strip(), typed.strip().endswith("%")
    try:
        amount = float(text.removesuffix("%"))
    except ValueError:
        raise click.BadParameter(f"{typed!r} is neither kilograms, as 70, nor a share of the best, as 85%.") from None
    most = MOST_PERCENT if percent else MOST_KG
    if not 1 <= amount <= most:
        raise click.BadParameter(f"{typed!r} is not between 1 and {most}{' %' if percent else ' kg'}.")
    return ShowsFrom(amount, percent)


def in_kilograms_if_known(shows_from: ShowsFrom, best: float | None) -> ShowsFrom:
    """The same in kilograms where the best of the lift, kg, is known.

    >>> in_kilograms_if_known(ShowsFrom(85, percent=True), 60)
    ShowsFrom(amount=51.0, percent=False)
    """
    if not shows_from.percent or best is None:
        return shows_from
    return ShowsFrom(shows_from.amount * best / 100)
