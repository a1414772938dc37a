"""All rules in the order they are asked, and the questions put to them: what is wrong, and what a code means.

A new rule is a new file and a line here. Its module's docstring is its explanation, for `check --explain`
and for the page of all problems alike.
"""

from collections.abc import Callable, Iterator
from types import ModuleType
from typing import NamedTuple

from kb.check import (
    angles_disagree,
    bar_through_body,
    beyond_joint,
    cue_count,
    earlier_elsewhere,
    earlier_first,
    feet_disagree,
    few_causes,
    implied_prerequisite,
    inward_cues,
    long_cue,
    missing_section,
    near_duplicate,
    no_chain,
    no_miss,
    no_rehearsal,
    off_balance,
    stray_prerequisite,
    stretch_hold,
    timeline_jumps,
    too_long,
    too_many_lifts,
    unaddressed_cause,
    uncountable_standard,
    unlabelled_cue,
    unowned_position,
    unsourced_claim,
    untold_causes,
    unused_drill,
)
from kb.check.answers import Answers, answers
from kb.errors import BadInput, Problem
from kb.make.entry_codes import ENTRY_CODES
from kb.make.library import Library
from kb.make.structure.table import RULES

__all__ = ["CONTENT", "GRAPH", "ContentRule", "GraphRule", "check", "explain", "explanations"]


class ContentRule(NamedTuple):
    """A rule over what entries say: it is asked of whatever loaded, however broken the rest is."""

    name: str
    function: Callable[[Library], Iterator[Problem]]
    explanation: str


class GraphRule(NamedTuple):
    """A rule over what follows from all entries together: it is asked only when nothing is broken in structure."""

    name: str
    function: Callable[[Library, Answers], Iterator[Problem]]
    explanation: str


_CONTENT: tuple[ModuleType, ...] = (
    # the text
    missing_section,
    no_miss,
    feet_disagree,
    cue_count,
    long_cue,
    inward_cues,
    unlabelled_cue,
    too_long,
    uncountable_standard,
    unsourced_claim,
    # postures
    beyond_joint,
    angles_disagree,
    off_balance,
    bar_through_body,
    timeline_jumps,
    # how much is done
    stretch_hold,
    too_many_lifts,
    # causes and what is done about them
    few_causes,
    earlier_first,
    earlier_elsewhere,
    untold_causes,
    unaddressed_cause,
    # drills beside one another
    stray_prerequisite,
    near_duplicate,
)

_GRAPH: tuple[ModuleType, ...] = (
    implied_prerequisite,
    unowned_position,
    no_chain,
    no_rehearsal,
    unused_drill,
)

CONTENT: tuple[ContentRule, ...] = tuple(
    ContentRule(module.CODE, module.rule, module.__doc__ or "") for module in _CONTENT
)
GRAPH: tuple[GraphRule, ...] = tuple(GraphRule(module.CODE, module.rule, module.__doc__ or "") for module in _GRAPH)

_CHAPTERS: tuple[tuple[str, str, dict[str, str]], ...] = (
    (
        "Reading an entry",
        "One file by itself. A problem of this sort stops a build.",
        ENTRY_CODES,
    ),
    (
        "Entries together",
        "What entries say of one another, and numbers that can't be. A problem of this sort stops a build.",
        {rule.name: rule.explanation for rule in RULES},
    ),
    (
        "Content",
        "What a coach would miss or be misled by. Only `drillpath check` fails.",
        {rule.name: rule.explanation for rule in CONTENT},
    ),
    (
        "Graph",
        "What follows when every question is asked. Only `drillpath check` fails, and only when nothing is wrong "
        "with the structure.",
        {rule.name: rule.explanation for rule in GRAPH},
    ),
)


def check(library: Library) -> tuple[Problem, ...]:
    """Everything wrong with a library: structural problems first, then the rest, each by file and line.

    Content is judged in whatever loaded; the graph only when there is no structural problem.
    """
    found = [problem for rule in CONTENT for problem in rule.function(library)]
    if not library.problems and library.lifts:
        asked = answers(library)
        found += (problem for each in GRAPH for problem in each.function(library, asked))
    return (*library.problems, *sorted(found))


def explanations() -> str:
    """A Markdown document of every code, in the order in which the rules are asked."""
    parts = [
        "# Problems",
        "Each problem that `drillpath check` reports has a code. `drillpath check --explain CODE` prints what is "
        "written here.",
    ]
    for title, about, codes in _CHAPTERS:
        parts += [f"## {title}", about]
        parts += [f"### {code}\n\n{text.strip()}" for code, text in codes.items()]
    return "\n\n".join(parts) + "\n"


def explain(code: str) -> str:
    """What a code means: what is checked, why it matters, wrong and right.

    Raises
    ------
    BadInput
        With the nearest codes, if there is none of that name.
    """
    codes = {name: text for _, _, chapter in _CHAPTERS for name, text in chapter.items()}
    if code in codes:
        return f"{code}\n\n{codes[code].strip()}\n"
    from difflib import get_close_matches

    nearest = tuple(get_close_matches(code, codes, n=3, cutoff=0.5))
    raise BadInput(f"there is no problem with the code {code!r}", nearest=nearest)
