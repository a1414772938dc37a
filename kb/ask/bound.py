"""The least that a list still has to cost, ignoring what it needs first: never above the true rest."""

from collections.abc import Sequence

from kb.ask.field import STEP_WEIGHT, Field

__all__ = ["INFINITE", "detour", "rest"]

INFINITE = 1 << 60


def rest(field: Field) -> tuple[list[int], list[int]]:
    """Per node, the cheapest way to the goal: (once the cause is addressed, while it is not yet).

    Prerequisites, limits and repeats are ignored. Where nothing need be addressed the two are the same.
    """
    straight = _to_goal(field)
    addressed = _backwards(field, straight, straight)
    if not field.must_address:
        return addressed, addressed
    if not field.addresses[field.goal]:
        straight = [INFINITE] * len(straight)
    # from a drill that addresses it, the cause has been addressed
    done = [addressed[node] if addresses else straight[node] for node, addresses in enumerate(field.addresses)]
    return addressed, _backwards(field, straight, done)


def _to_goal(field: Field) -> list[int]:
    """The cost of going straight to the goal from each node that may come right before it."""
    return [
        INFINITE if node == field.goal or not allowed else field.step_cost(node, field.goal)
        for node, allowed in enumerate(field.before_goal)
    ]


def _backwards(field: Field, straight: Sequence[int], done: Sequence[int]) -> list[int]:
    """The cheapest way to the goal: straight there, or through nodes of which the last leaves what `done` says.

    Dijkstra backwards from the goal, over profiles: from nodes that share one, every way onward costs the same.
    """
    sizes, count = field.sizes, len(field.sizes)
    enter, onward, through = [INFINITE] * count, [INFINITE] * count, [INFINITE] * count
    for node, profile in enumerate(field.profile):
        # the goal ends a list: nothing goes through it, and preparation is never gone back to
        if node != field.goal and not field.prepares[node]:
            enter[profile] = min(enter[profile], field.enter[node])
            through[profile] = min(through[profile], field.enter[node] + done[node])
    there = set(field.profile)
    left = [(profile, sizes[profile], enter[profile]) for profile in there]
    waiting = {profile for profile in there if enter[profile] < INFINITE}
    while waiting and left:
        profile = min(waiting, key=through.__getitem__)
        base = through[profile]
        if base >= INFINITE:
            break
        waiting.remove(profile)
        left = [row for row in left if onward[row[0]] > base]  # no way through what remains is cheaper for the others
        for before, row, entering in left:
            way = base + STEP_WEIGHT * row[profile]
            if way < onward[before]:
                onward[before] = way
                if way + entering < through[before]:
                    through[before] = way + entering
    best = [min(direct, onward[profile]) for direct, profile in zip(straight, field.profile, strict=True)]
    best[field.goal] = 0
    return best


def detour(field: Field, addressed: list[int], node: int, nodes: tuple[int, ...]) -> int:
    """The least from `node` to the goal through any of `nodes` (the loads of one drill)."""
    row = field.least[field.profile[node]]
    return min(
        (STEP_WEIGHT * row[field.profile[to]] + field.enter[to] + addressed[to] for to in nodes),
        default=INFINITE,
    )
