"""All drills, by stage, and what they need."""

from typing import NamedTuple

from kb.kit import fit
from kb.show.coach_words import listed
from kb.show.page.page import Link, Page
from kb.show.page.stock import Stock
from kb.terms import Drill, Stage

__all__ = ["Drills", "drills_page"]

STAGES = {
    Stage.PREPARE: "Prepare: warm and mobilise",
    Stage.POSITION: "Positions: own a posture",
    Stage.SEGMENT: "Parts: a stretch of the lift",
    Stage.JOIN: "Parts together",
    Stage.WHOLE: "Whole lifts",
    Stage.FINISH: "Strengthen, after training",
}


class Drills(NamedTuple):
    """By stage, its drills."""

    stages: tuple[tuple[str, str, tuple[Link, ...]], ...]


def drills_page(stock: Stock) -> Page:
    """The page of all drills."""
    held = tuple(
        (
            stage.word,
            said,
            tuple(
                Link(drill.name, "drill", drill.id, _beside(drill, stock))
                for drill in sorted(stock.drills.values(), key=lambda each: each.name)
                if drill.stage is stage
            ),
        )
        for stage, said in STAGES.items()
    )
    return Page("drills", "Drills", "drills", Drills(held), scripts=("index.js", "find.js"))


def _beside(drill: Drill, stock: Stock) -> str:
    least = next((kit for kit in stock.kits_by_size() if fit(drill, stock.kits[kit], stock.items) is not None), "")
    return f"{listed(drill.lifts)} · {least} kit" if least else listed(drill.lifts)
