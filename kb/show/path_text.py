"""A path on a terminal: the reach chart of every drill on the way, then when to move on from each."""

from collections.abc import Collection

from kb import dose
from kb.ask.path import Path
from kb.show.bars import path_bars
from kb.show.care import ASK_FIRST, NO_REVIEW, USUAL
from kb.show.chart import chart
from kb.show.coach_words import moved_on
from kb.show.setting import Setting, aside, hanging, titled, wrapped
from kb.terms import DrillId

__all__ = ["path_text"]


def path_text(
    path: Path, kit: str | None, gateways: Collection[DrillId], setting: Setting, *, from_nothing: bool
) -> list[str]:
    """A path in lines; `kit` is None where the question listed what there is."""
    lift = path.shelf.lift
    seconds = sum(entry.seconds for entry in path.entries)
    facts = [
        "from nothing" if from_nothing else "from what is held",
        f"{kit} kit" if kit else "your gear",
        f"{len(path.entries)} drills",
        f"{dose.minutes(seconds)} min in all",
    ]
    lines = aside(lift.name, setting.between.join(facts), setting)
    lines += ["", *chart(lift, path_bars(path, gateways), setting)]
    if not path.optimal:
        lines += [
            "",
            *wrapped(f"Not proved the best order: a better one could cost {path.gap:.0%} less.", setting.width),
        ]
    moves = [
        line
        for n, entry in enumerate(path.entries, 1)
        for line in hanging(f"{n:>2}  ", f"{entry.drill.name}: {moved_on(entry.drill.standard)}", setting)
    ]
    lines += titled("Move on when", moves, setting)
    spread = "Spread it over sessions, two new drills in each at most; what was new comes back as a check."
    return [
        *lines,
        "",
        *(line for text in (spread, USUAL, ASK_FIRST, NO_REVIEW) for line in wrapped(text, setting.width)),
    ]
