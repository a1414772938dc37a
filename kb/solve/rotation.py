"""The least idle time of a class, then the fewest different drills at once, with what of it is proved.

Imports ortools, which is an extra: whoever imports this module must be ready for ImportError.
"""

import math
from typing import NamedTuple

from ortools.sat.python import cp_model

from kb.ask.class_.rotation import Plan, Rotation
from kb.solve.at_once import at_once
from kb.solve.model import Built, built, total

__all__ = ["Effort", "Undecided", "best_plan", "exists", "solver_of"]


class Undecided(Exception):
    """No plan was found in the time there was, and none was proved impossible."""


class Effort(NamedTuple):
    """How long to try at most, s: alone and repeatably, then in parallel, then for fewer drills at once."""

    alone: float = 2.0
    together: float = 8.0
    drills: float = 3.0


WORKERS = 4
"""Searches of different kinds side by side, where one alone doesn't prove it soon."""

COUNTED = 0.1
"""The solver's own count of work for each second allowed: a repeatable answer, if the machine isn't very busy."""


def best_plan(rotation: Rotation, start: Plan | None = None, effort: Effort = Effort()) -> Plan | None:  # noqa: B008
    """The plan of least idle time, and of those one with few different drills at once; None if there is none.

    A plan to `start` from helps. The plan's bounds say what is proved. Raises Undecided when no plan was found
    and none was proved impossible.
    """
    model = built(rotation)
    if start is not None:
        _hint(model, start)
    model.model.minimize(model.idle())
    solver = solver_of(effort.alone)
    status = solver.solve(model.model)
    if status not in (cp_model.OPTIMAL, cp_model.INFEASIBLE):
        least = solver.best_objective_bound
        if status == cp_model.FEASIBLE:
            _go_on(model, solver)
        solver = solver_of(effort.together, workers=WORKERS)
        status = solver.solve(model.model)
    else:
        least = solver.best_objective_bound
    if status == cp_model.INFEASIBLE:
        return None
    if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        raise Undecided
    bound = math.ceil(max(least, solver.best_objective_bound) - 1e-6)
    return _fewer_drills(model, solver, effort)._replace(bound=bound)


def exists(rotation: Rotation, seconds: float) -> bool | None:
    """Whether there is any plan; None where that isn't known in so many seconds."""
    status = solver_of(seconds).solve(built(rotation).model)
    if status == cp_model.INFEASIBLE:
        return False
    return True if status in (cp_model.OPTIMAL, cp_model.FEASIBLE) else None


def solver_of(seconds: float, workers: int = 1) -> cp_model.CpSolver:
    """A solver that stops after some time, s; one that works alone by its own count of work if it can."""
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = workers
    solver.parameters.max_time_in_seconds = seconds
    solver.parameters.random_seed = 1
    if workers == 1:
        solver.parameters.max_deterministic_time = seconds * COUNTED
    return solver


def _fewer_drills(model: Built, solved: cp_model.CpSolver, effort: Effort) -> Plan:
    """The same idle time with fewer different drills at once, and with as few sticks for bars."""
    found = _plan(model, solved)
    model.model.add(model.idle() <= round(solved.objective_value))
    _go_on(model, solved)
    most = at_once(model, solved)
    light = [
        lit
        for unit, literals in zip(model.rotation.units, model.modes, strict=True)
        for task, chosen in zip(unit.tasks, literals, strict=True)
        for mode, lit in zip(task.modes, chosen, strict=True)
        if mode.light
    ]
    many = len(light) + 1
    model.model.minimize(many * most + total(list(light)))
    solver = solver_of(effort.drills)
    if solver.solve(model.model) not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        return found._replace(drills_bound=1)
    bound = math.ceil(solver.best_objective_bound - 1e-6) // many
    return _plan(model, solver)._replace(drills_bound=bound)


def _plan(model: Built, solver: cp_model.CpSolver) -> Plan:
    return Plan(
        starts=tuple(tuple(solver.value(start) for start in starts) for starts in model.starts),
        modes=tuple(
            tuple(next(n for n, lit in enumerate(literals) if solver.boolean_value(lit)) for literals in chosen)
            for chosen in model.modes
        ),
        shown=tuple(solver.value(start) for start in model.shown),
        helpers={
            task: next(h for h, literals in chosen.items() if any(solver.boolean_value(lit) for lit in literals))
            for task, chosen in model.helpers.items()
        },
    )


def _go_on(model: Built, solver: cp_model.CpSolver) -> None:
    """Let the next search begin from what the last one found."""
    model.model.clear_hints()  # type: ignore[no-untyped-call]  # by ortools
    for n, value in enumerate(solver.response_proto.solution):
        model.model.add_hint(model.model.get_int_var_from_proto_index(n), value)


def _hint(model: Built, plan: Plan) -> None:
    for starts, values in zip(model.starts, plan.starts, strict=True):
        for start, value in zip(starts, values, strict=True):
            model.model.add_hint(start, value)
    for chosen, modes in zip(model.modes, plan.modes, strict=True):
        for literals, mode in zip(chosen, modes, strict=True):
            for n, lit in enumerate(literals):
                model.model.add_hint(lit, n == mode)
    for start, value in zip(model.shown, plan.shown, strict=True):
        model.model.add_hint(start, value)
