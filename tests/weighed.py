"""A lift's steps with other weights: every part of a step, and what a chain costs beside its steps, by quarters."""

from array import array
from collections.abc import Mapping

import numpy as np
from scipy.sparse.csgraph import shortest_path

from kb.ask.shelf import Shelf, Steps
from kb.dials import Dials, changes, spans
from kb.terms import Catch, Load, Speed, Stage

__all__ = ["PARTS", "QUARTERS", "reweighed"]

PARTS = ("reach", "leaves_out", "speed", "load", "catch", "aid", "stage")
"""The parts of a step, as `kb.dials.changes` names them."""

QUARTERS = 4
"""Steps are reckoned in quarters of a notch here, so that 25 % more or less is a whole number."""


def _dials(key: tuple[int, ...]) -> Dials:
    stage, first, last, left_out, speed, load, catch, helped = key
    return Dials(Stage(stage), first, last, left_out, Speed(speed), Load(load), Catch(catch), bool(helped))


def reweighed(shelf: Shelf, quarters: Mapping[str, int]) -> Shelf:
    """The shelf with each part of every step weighed by so many quarters (4 where none is named), in quarters.

    The way out of preparation keeps its weight: it is the same for every chain that has one.
    """
    found = [_dials(key) for key, _ in sorted(shelf.steps.number.items(), key=lambda each: each[1])]
    points, parts = shelf.lift.points, spans(shelf.lift)
    table = np.zeros((len(found), len(found)), dtype=np.int64)
    for n, before in enumerate(found):
        if before.stage is Stage.PREPARE:
            table[n] = QUARTERS * np.array(shelf.steps.sizes[n])
            continue
        for m, after in enumerate(found):
            turned = changes(before, after, points, parts)
            table[n, m] = sum(each.size * quarters.get(each.dial, QUARTERS) for each in turned)
    return shelf._replace(steps=Steps(shelf.steps.number, _rows(table), _rows(_least(found, table))))


def _least(found: list[Dials], table: np.ndarray) -> np.ndarray:
    """Shortest sums of steps that never pass through preparation; a step of nothing is a way too."""
    between = np.array([dials.stage is not Stage.PREPARE for dials in found])
    ways = table.astype(float) + 1e-6  # scipy takes a weight of nothing for no way at all
    ways[:, ~between] = np.inf
    ways[~between, :] = np.inf
    least = shortest_path(np.where(np.isinf(ways), 0, ways), method="FW")
    whole = np.where(np.isinf(least), np.iinfo(np.int32).max, np.floor(least + 1e-3)).astype(np.int64)
    for n in np.flatnonzero(~between):
        whole[n] = (table[n][between][:, None] + whole[between]).min(axis=0)
        whole[:, n] = np.where(between, (table[:, n]), table[:, n])
    np.fill_diagonal(whole, 0)
    return whole


def _rows(table: np.ndarray) -> list["array[int]"]:
    return [array("H", row.clip(0, 65535).astype(np.uint16).tolist()) for row in table]
