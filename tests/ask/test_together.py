"""Two faults seen in one lift: how they hang together, by the graph of what makes what, read with networkx."""

import networkx as nx
import pytest

from kb.ask.shelf import Shelf
from kb.ask.together import together
from kb.errors import BadInput
from kb.terms import FaultId, LiftId


def makes(shelf: Shelf) -> nx.DiGraph:
    """An edge from what makes a fault to the fault."""
    graph = nx.DiGraph()
    graph.add_nodes_from(shelf.faults)
    for fault in shelf.faults.values():
        graph.add_edges_from((cause.earlier, fault.id) for cause in fault.causes if cause.earlier in shelf.faults)
    return graph


@pytest.mark.parametrize("lift", ["snatch", "clean", "jerk", "clean-and-jerk"])
def test_every_pair_is_joined_as_the_graph_of_causes_joins_it(lift: str, shelves: dict[LiftId, Shelf]) -> None:
    """What makes what is reachability; what makes both is a common ancestor; a cause in common bears one name."""
    shelf = shelves[LiftId(lift)]
    graph = makes(shelf)
    before = {fault: nx.ancestors(graph, fault) for fault in graph}
    own = {f.id: {cause.id for cause in f.causes if cause.earlier is None} for f in shelf.faults.values()}
    met = set()
    for asked in shelf.faults:
        for other in shelf.faults.keys() - {asked}:
            found = together(shelf.faults, shelf.lift, asked, other)
            met.add(found.relation)
            if other in before[asked]:
                expected = "makes"
            elif asked in before[other]:
                expected = "made"
            elif own[asked] & own[other]:
                expected = "one-cause"
            else:
                expected = "one-fault" if before[asked] & before[other] else "apart"
            assert found.relation == expected, (asked, other)
            if found.relation == "makes":
                assert found.cause is not None
                assert other in {found.cause.earlier, *before[found.cause.earlier]}
            if found.relation == "one-cause":
                assert found.cause is not None
                assert found.cause.id in own[asked] & own[other]
            if found.source is not None:
                assert found.source.id in before[asked] & before[other]
    assert {"apart", "makes", "made"} <= met


def test_what_is_no_second_fault_is_refused(shelves: dict[LiftId, Shelf]) -> None:
    """One of another lift, and the one that is asked about."""
    shelf = shelves[LiftId("snatch")]
    with pytest.raises(BadInput, match="is not a fault of the snatch"):
        together(shelf.faults, shelf.lift, FaultId("jumps-back"), FaultId("jerk-press-out"))
    with pytest.raises(BadInput, match="names another fault"):
        together(shelf.faults, shelf.lift, FaultId("jumps-back"), FaultId("jumps-back"))
