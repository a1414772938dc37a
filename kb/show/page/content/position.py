"""A position: its figure and angles, what it should feel like, faults seen here, drills that own it."""

from typing import NamedTuple

from kb.evidence import phase_masks
from kb.show.as_json import show_json
from kb.show.coach_words import human
from kb.show.page.page import Link, Page
from kb.show.page.stock import Stock
from kb.terms import Position, PositionId, Stage

__all__ = ["PositionShown", "position_page"]

_PARTS = ("ankle", "knee", "hip", "trunk", "shoulder", "elbow", "wrist")
"""Joints from the floor up, as a body is read."""


class PositionShown(NamedTuple):
    """What a position's page holds."""

    position: Position
    angles: tuple[tuple[str, str], ...]
    bar: str
    feet: str
    stands_in: tuple[Link, ...]
    faults: tuple[Link, ...]
    drills: tuple[Link, ...]
    prepare: tuple[Link, ...]


def position_page(stock: Stock, position_id: str) -> Page:
    """The page of a position; KeyError if there is none of that id."""
    position = stock.positions[PositionId(position_id)]
    joints = sorted(position.angles, key=lambda joint: (_PARTS.index(joint.rpartition("_")[2]), joint))
    places = [
        (lift, n)
        for lift in stock.lifts.values()
        for n, timed in enumerate(lift.timeline)
        if timed.position == position_id
    ]
    faults = {
        fault.id: Link(fault.name, "fault", fault.id)
        for lift, n in places
        for fault in stock.faults.values()
        if lift.id in fault.lifts and any(mask >> n & 1 for mask in phase_masks(fault, lift))
    }
    held = PositionShown(
        position=position,
        angles=tuple((human(joint.replace("_", " ")), f"{position.angles[joint]:g}°") for joint in joints),
        bar=human(position.bar),
        feet=human(position.contact),
        stands_in=tuple(Link(lift.name, "lift", lift.id, human(lift.points[n])) for lift, n in places),
        faults=tuple(faults.values()),
        drills=tuple(
            Link(drill.name, "drill", drill.id)
            for drill in stock.drills.values()
            if position_id in drill.target_position.values() and drill.stage is not Stage.PREPARE
        ),
        prepare=tuple(
            Link(drill.name, "drill", drill.id) for drill in stock.drills.values() if position_id in drill.for_positions
        ),
    )
    return Page(f"position/{position.id}", position.name, "position", held, data=show_json("position", position))
