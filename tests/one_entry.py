"""One entry with every field of a drill, and how tests parse it and what is made of it."""

from broken_cases import SMALL

from kb.make.entries import parse
from kb.make.files import EntryFile, Kind
from kb.make.library import Parsed

__all__ = ["DRILL", "parsed", "small", "told"]

DRILL = """---
name: Extra drill
also: [extra pull, "012"]
lifts: [snatch, clean]
stage: segment
target_position: {snatch: snatch-knee, clean: clean-knee}
reach: [start, knee]
leaves_out: [knee]
speed: slow
load: [stick, light]
catch: none
aid: [wall, hand]
faults:
  - {fault: hips-rise-first, cause: weak-legs}
  - bar-drifts-forward
prerequisites: [start-hold, [knee-hold, hip-hold]]
regressions: [{drill: start-hold, eases: "no lift"}]
equipment: [bar, discs]
dose: {rounds: 3, reps: 4, tempo: [3, 1, 1, 0], hold_s: 5, sides: 2, rest_s: 30}
set_up_s: 20
teach_s: 90
load_from: {lift: clean, percent: [40, 55]}
standard: {count: 4, of: 5, seen: "shins touched"}
cautions: [back]
bridge: no
not_for: "anyone in a hurry"
---
## Do
Lift it.

- slowly
  and close

## Say
- "Push the floor"
"""


def parsed(text: str, kind: Kind = "drill") -> Parsed:
    """An entry called extra, parsed."""
    return parse(EntryFile("drills/folder/extra.md", kind, "extra"), text.encode("utf-8", "surrogatepass"))


def told(text: str, kind: Kind = "drill") -> list[tuple[int, str, str, str]]:
    """What is wrong with an entry: line, code, sentence and help."""
    return [(problem.line, problem.code, problem.message, problem.help) for problem in parsed(text, kind).problems]


def small(file: str) -> str:
    """An entry of the small library."""
    return (SMALL / "drills" / file).read_text(encoding="utf-8")
