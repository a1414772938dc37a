"""The structural rules in the order they are asked: the one list of them.

A new rule is a new file and a line here.
"""

from collections.abc import Callable, Iterator
from types import ModuleType
from typing import NamedTuple

from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure import (
    dial_on_preparation,
    duplicate_cause,
    duplicate_id,
    duplicate_name,
    earlier_circle,
    earlier_mismatch,
    earlier_only,
    impossible_dose,
    impossible_posture,
    impossible_standard,
    leaves_out,
    load_backwards,
    load_from_unfit,
    map_by_lift,
    missing_dial,
    phase_off_timeline,
    prerequisite_circle,
    reach_backwards,
    reach_off_timeline,
    regression_circle,
    regression_needs_harder,
    regression_not_easier,
    stage_against_reach,
    stand_in_of_itself,
    tell_both_ways,
    unfit_checkpoint,
    unknown_cause,
    unknown_drill,
    unknown_equipment,
    unknown_fault,
    unknown_lift,
    unknown_position,
    unsound_kit,
    unsound_lift,
)

__all__ = ["RULES", "Rule"]


class Rule(NamedTuple):
    """A rule: the code of its problems, what finds them, its place in the order, and what explains it."""

    name: str
    function: Callable[[Library], Iterator[Problem]]
    order: int
    explanation: str


_MODULES: tuple[ModuleType, ...] = (
    # names first: whatever else is wrong, they must lead somewhere
    duplicate_id,
    unknown_lift,
    unknown_position,
    unknown_fault,
    unknown_cause,
    unknown_equipment,
    unknown_drill,
    duplicate_name,
    # then what each kind must be by itself
    unsound_lift,
    unfit_checkpoint,
    duplicate_cause,
    phase_off_timeline,
    earlier_mismatch,
    earlier_only,
    earlier_circle,
    tell_both_ways,
    impossible_posture,
    unsound_kit,
    stand_in_of_itself,
    missing_dial,
    dial_on_preparation,
    map_by_lift,
    reach_off_timeline,
    reach_backwards,
    leaves_out,
    stage_against_reach,
    load_backwards,
    load_from_unfit,
    impossible_dose,
    impossible_standard,
    # then how drills stand to one another
    prerequisite_circle,
    regression_circle,
    regression_not_easier,
    regression_needs_harder,
)

RULES: tuple[Rule, ...] = tuple(
    Rule(name=module.CODE, function=module.rule, order=order, explanation=module.__doc__ or "")
    for order, module in enumerate(_MODULES)
)
"""Every structural rule, in order."""
