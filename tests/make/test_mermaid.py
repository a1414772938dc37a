"""The text graph that is committed: its lists, a line a drill, a line for what it builds on."""

from handmade import drill, library

from kb.make.mermaid import MARK, texts
from kb.terms import Stage

TEXT = f"""\
{MARK}
# Clean

6 drills.

**Gateways**, which every way from nothing to the full lift passes:

- Rack hold (`rack-hold`)
- Tall clean (`tall-clean`)

**Thin faults**, with a cause that fewer than 2 of its drills address:

- The bar "crashes" \\<hard\\> (`bar-crashes`), cause `drops-away`: 1 drill
- Hips rise first (`hips-rise`), cause `lost-angle`: 1 drill

In the graph a solid arrow leads to what builds on a drill, a dotted one from an easier version. After each
name stand the kits that the drill can be done with at some load.

```mermaid
flowchart LR
  subgraph prepare
    reach-up["Reach up / stick, hall"]
    wrist-rock["Wrist rock / stick, hall"]
  end
  subgraph position
    rack-hold{{{{"GATEWAY: Rack hold / stick, hall"}}}}
  end
  subgraph segment
    tall-clean{{{{"GATEWAY: Tall clean / stick, hall"}}}}
  end
  subgraph whole
    full-clean(["Full clean / stick, hall"])
  end
  subgraph finish
    squat["Squat / stick, hall"]
  end
  reach-up & wrist-rock --> rack-hold-any-0(("any of"))
  rack-hold-any-0 --> rack-hold
  wrist-rock -.-> rack-hold
  rack-hold --> tall-clean
  tall-clean --> full-clean
```
"""


def test_the_text_graph_by_example() -> None:
    """Gateways and thin faults first, then a line a drill and a line for what it builds on."""
    assert texts(library())["clean"] == TEXT


def test_the_text_graph_of_a_bare_lift() -> None:
    """Nothing to pass, nothing thin; a drill no named kit can do needs the full one; Mermaid's words kept apart."""
    made = library()
    clean = made.lifts["clean"]
    end = drill("end-hold", name='"End" & `more` #1', equipment=("bar",))
    only = drill(clean.drill, "end-hold", stage=Stage.WHOLE)
    bar = made.items["bar"]._replace(kits=(), stand_ins=())
    text = texts(library(lifts={clean.id: clean}, drills={end.id: end, only.id: only}, faults={}, items={bar.id: bar}))
    assert '    drill-end-hold{{"GATEWAY: #quot;End#quot; #amp; #96;more#96; #35;1 / full"}}' in text["clean"]
    assert "  drill-end-hold --> full-clean" in text["clean"]
    assert "address:\n\n- none\n" in text["clean"]
    alone = texts(library(lifts={clean.id: clean}, drills={only.id: only._replace(prerequisites=())}, faults={}))
    assert "passes:\n\n- none\n" in alone["clean"]
