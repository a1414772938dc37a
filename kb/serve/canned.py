"""Questions to the tables that are asked by name: what each answers, and what it may be narrowed to."""

from typing import Any, NamedTuple

__all__ = ["CANNED", "FACETS", "Canned", "canned"]


class Canned(NamedTuple):
    """A question: its title, what it answers, and its SQL; a parameter that is left empty doesn't narrow."""

    title: str
    says: str
    sql: str


CANNED = {
    "ask_drills_for_fault": Canned(
        "Drills for a fault",
        "Every drill that works on a fault, from preparation to the whole lift. Fault: its id, such as early-arm-bend."
        " Cause: one of its causes, or empty for all.",
        "select fault_name, cause, kind, drill, drill_name, stage, load_most, work_s from drills_for_fault\n"
        "where (:fault = '' or fault = :fault) and (:cause = '' or cause = :cause)",
    ),
    "ask_causes_and_tells": Canned(
        "Causes of a fault and how to tell them apart",
        "What to have the lifter do, what to look for, and which cause the answer speaks for.",
        "select fault, cause, kind, text, do, look, answer, seconds from causes_and_tells\n"
        "where :fault = '' or fault = :fault",
    ),
    "ask_easier_versions": Canned(
        "Easier versions of a drill",
        "What to give a lifter for whom a drill is too hard, and what that eases.",
        "select drill, name, easier, easier_name, eases from easier_versions where :drill = '' or drill = :drill",
    ),
    "ask_what_comes_before": Canned(
        "What comes before a drill",
        "What must be held first; where several stand together, any one of them will do.",
        "select drill, name, any_of from what_comes_before where :drill = '' or drill = :drill",
    ),
    "ask_gear_for_drill": Canned(
        "Gear for a drill",
        "What it needs, what can serve instead, and what is lost by that.",
        "select drill, name, item, or_using, lost, at_most from gear_for_drill where :drill = '' or drill = :drill",
    ),
    "ask_drills_with_item": Canned(
        "Drills that use a thing",
        "Every drill that needs a piece of equipment, or can do with it instead. Item: its id, such as broom.",
        "select distinct drill, name, item, or_using from gear_for_drill\n"
        "where :item = '' or item = :item or or_using = :item",
    ),
    "ask_faults_by_phase": Canned(
        "Faults by phase",
        "Where in a lift its faults show, from the first point on. Lift: snatch, clean, jerk or clean-and-jerk.",
        "select lift, first, last, fault, name, view from faults_by_phase where :lift = '' or lift = :lift",
    ),
}
"""By the name in their address."""

FACETS = {
    "drill": ["family", "stage", "catch"],
    "fault": ["view", "speed", "load"],
    "cause": ["kind"],
    "drill_equipment": ["item"],
    "drills_for_fault": ["stage", "kind"],
    "faults_by_phase": ["lift", "first"],
}
"""Columns by whose values a table is narrowed with one touch."""


def canned() -> dict[str, Any]:
    """The questions as Datasette's metadata holds them."""
    return {
        name: {"title": each.title, "description": each.says, "sql": each.sql, "hide_sql": True}
        for name, each in CANNED.items()
    }
