"""A lift's graph as text: read in a review, drawn wherever Mermaid is.

One line a drill, and one line for what it builds on, so that a change of content shows as changed lines.
"""

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence

from kb.kit import fit
from kb.make.library import Library
from kb.make.order import ENOUGH, groups_of, layers, must_pass, thin, with_what_they_need
from kb.terms import Drill, DrillId, ItemId, Lift, LiftId, Stage

__all__ = ["MARK", "texts"]

MARK = "<!-- Made by build.py from drills/; edits here are lost. -->"
"""The first line of every file written here, by which it is known."""

_WORDS = re.compile(
    r"(call|class|click|default|direction|end|flowchart|graph|href|interpolate|linkStyle|style|subgraph)"
)
_IN_MERMAID = str.maketrans({"#": "#35;", '"': "#quot;", "<": "#lt;", ">": "#gt;", "&": "#amp;", "`": "#96;"})
_IN_MARKDOWN = re.compile(r"([\\`*_\[\]<>|])")


def _node(drill: str) -> str:
    """An id that Mermaid won't take for a word of its own."""
    return f"drill-{drill}" if _WORDS.match(drill) else drill


def _label(words: str) -> str:
    return words.translate(_IN_MERMAID)


def _prose(words: str) -> str:
    return _IN_MARKDOWN.sub(r"\\\1", words)


def _kits_of(drill: Drill, kits: Mapping[str, frozenset[ItemId]], library: Library) -> str:
    """The named kits that a drill can be done with at some load, smallest first; `full` if no other."""
    fitting = [
        kit
        for kit, held in sorted(kits.items(), key=lambda each: (len(each[1]), each[0]))
        if kit != "full" and fit(drill, held, library.items)
    ]
    return ", ".join(fitting) or "full"


def _drill_lines(
    library: Library, lift: Lift, stages: Mapping[Stage, list[DrillId]], gateways: frozenset[str]
) -> Iterator[str]:
    kits = library.kits
    for stage, ids in stages.items():
        yield f"  subgraph {stage.word}"
        for drill_id in ids:
            drill = library.drills[drill_id]
            says = f"{_label(drill.name)} / {_label(_kits_of(drill, kits, library))}"
            if drill_id == lift.drill:
                shape = f'(["{says}"])'
            elif drill_id in gateways:
                shape = f'{{{{"GATEWAY: {says}"}}}}'
            else:
                shape = f'["{says}"]'
            yield f"    {_node(drill_id)}{shape}"
        yield "  end"


def _any_of(drill: Drill) -> Iterator[tuple[str, tuple[str, ...]]]:
    """What stands for each group of a drill, and the members of those of several."""
    for n, group in enumerate(drill.groups):
        members = tuple(sorted(set(group)))
        yield (_node(members[0]), ()) if len(members) == 1 else (f"{_node(drill.id)}-any-{n}", members)


def _edge_lines(drills: Iterable[Drill], shown: frozenset[str]) -> Iterator[str]:
    for drill in drills:
        before = []
        for stand, members in _any_of(drill):
            before.append(stand)
            if members:
                yield f'  {" & ".join(map(_node, members))} --> {stand}(("any of"))'
        if before:
            yield f"  {' & '.join(before)} --> {_node(drill.id)}"
        easier = [_node(regression.drill) for regression in drill.regressions if regression.drill in shown]
        if easier:
            yield f"  {' & '.join(easier)} -.-> {_node(drill.id)}"


def _lists(library: Library, lift: Lift, gateways: Sequence[Drill]) -> Iterator[str]:
    yield "**Gateways**, which every way from nothing to the full lift passes:"
    yield ""
    yield from (f"- {_prose(drill.name)} (`{drill.id}`)" for drill in gateways)
    if not gateways:
        yield "- none"
    yield ""
    yield f"**Thin faults**, with a cause that fewer than {ENOUGH} of its drills address:"
    yield ""
    found = thin(library, lift)
    for fault, cause, count in found:
        many = "no drill" if count == 0 else "1 drill" if count == 1 else f"{count} drills"
        yield f"- {_prose(library.faults[fault].name)} (`{fault}`), cause `{cause}`: {many}"
    if not found:
        yield "- none"


def texts(library: Library) -> dict[LiftId, str]:
    """Each lift's graph: its gateways and thin faults as lists, then its drills by stage and what each builds on.

    Drills of other lifts that these build on are shown too. The same library gives the same texts.
    """
    lifts = library.lifts.values()
    gateways = must_pass(groups_of(library.drills), [lift.drill for lift in lifts])
    return {lift.id: _text(library, lift, gateways[lift.drill]) for lift in lifts}


def _text(library: Library, lift: Lift, gateways: frozenset[str]) -> str:
    shown = with_what_they_need(library.drills, lift)
    stages = layers(shown)
    order = [drill for ids in stages.values() for drill in ids]
    lines = [
        MARK,
        f"# {_prose(lift.name)}",
        "",
        f"{len(order)} drills.",
        "",
        *_lists(library, lift, [library.drills[drill] for drill in order if drill in gateways]),
        "",
        "In the graph a solid arrow leads to what builds on a drill, a dotted one from an easier version. After each",
        "name stand the kits that the drill can be done with at some load.",
        "",
        "```mermaid",
        "flowchart LR",
        *_drill_lines(library, lift, stages, gateways),
        *_edge_lines((library.drills[drill] for drill in order), frozenset(shown)),
        "```",
        "",
    ]
    return "\n".join(lines)
