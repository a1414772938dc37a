"""How many different drills are done at once, as an expression of the model.

Imports ortools, which is an extra: whoever imports this module must be ready for ImportError.
"""

from ortools.sat.python import cp_model

from kb.solve.model import Built, total

__all__ = ["at_once"]


def at_once(b: Built, solved: cp_model.CpSolver) -> cp_model.IntVar:
    """A variable that is at least the number of different drills done at any minute.

    What was `solved` is where the search for fewer begins. The most stands at some drill's start: there, each other
    drill counts unless each task of it starts later or has ended.
    """
    model, units = b.model, b.rotation.units
    tasks = [(u, k, task.drill) for u, unit in enumerate(units) for k, task in enumerate(unit.tasks)]
    drills = sorted({drill for _, _, drill in tasks})
    most = model.new_int_var(1, len(drills), "at once")
    for u, k, drill in tasks:
        now = b.starts[u][k]
        under_way = {other: model.new_bool_var(f"a{u}.{k}.{other}") for other in drills if other != drill}
        for v, n, other in tasks:
            if v == u or other == drill:
                continue
            later, over = model.new_bool_var(""), model.new_bool_var("")
            model.add_hint(later, solved.value(b.starts[v][n]) > solved.value(now))
            model.add_hint(over, solved.value(b.ends[v][n]) <= solved.value(now))
            model.add(b.starts[v][n] > now).only_enforce_if(later)
            model.add(b.ends[v][n] <= now).only_enforce_if(over)
            model.add_bool_or(later, over, under_way[other])
        model.add(most >= 1 + total(list(under_way.values())))
    return most
