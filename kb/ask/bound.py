"""The least that a list still has to cost, ignoring what it needs first: never above the true rest."""

from kb.ask.field import STEP_WEIGHT, Field

__all__ = ["INFINITE", "detour", "rest"]

INFINITE = 1 << 60


def rest(field: Field) -> tuple[list[int], list[int]]:
    """Per node, the cheapest way to the goal: (once the cause is addressed, while it is not yet).

    Dijkstra backwards over two layers of the complete graph of nodes past preparation; prerequisites,
    limits and repeats are ignored. Where nothing need be addressed the layers are the same.
    """
    addressed = _backwards(field, _to_goal(field))
    if not field.must_address:
        return addressed, addressed
    start = [INFINITE] * len(field.drill)
    if field.addresses[field.goal]:
        start = _to_goal(field)
    columns = _columns(field)
    for node, addresses in enumerate(field.addresses):
        if not addresses or node == field.goal or field.prepares[node] or addressed[node] >= INFINITE:
            continue
        base = field.enter[node] + addressed[node]
        column = columns[field.profile[node]]
        start = [
            old if old <= (new := base + STEP_WEIGHT * column[profile]) else new
            for old, profile in zip(start, field.profile, strict=True)
        ]
    return addressed, _backwards(field, start)


def _columns(field: Field) -> list[list[int]]:
    return [list(column) for column in zip(*field.sizes, strict=True)]


def _to_goal(field: Field) -> list[int]:
    """The cost of going straight to the goal from each node that may come right before it."""
    return [
        INFINITE if node == field.goal or not allowed else field.step_cost(node, field.goal)
        for node, allowed in enumerate(field.before_goal)
    ]


def _backwards(field: Field, start: list[int]) -> list[int]:
    columns = _columns(field)
    profiles = field.profile
    best = list(start)
    waiting = {node for node in range(len(best)) if node != field.goal and not field.prepares[node]}
    # the goal ends a list: nothing goes through it, and preparation is never gone back to
    while waiting:
        node = min(waiting, key=best.__getitem__)
        if best[node] >= INFINITE:
            break
        waiting.remove(node)
        base = best[node] + field.enter[node]
        column = columns[profiles[node]]
        best = [
            old if old <= (new := base + STEP_WEIGHT * column[profile]) else new
            for old, profile in zip(best, profiles, strict=True)
        ]
    best[field.goal] = 0
    return best


def detour(field: Field, addressed: list[int], node: int, nodes: tuple[int, ...]) -> int:
    """The least from `node` to the goal through any of `nodes` (the loads of one drill)."""
    row = field.least[field.profile[node]]
    return min(
        (STEP_WEIGHT * row[field.profile[to]] + field.enter[to] + addressed[to] for to in nodes),
        default=INFINITE,
    )
