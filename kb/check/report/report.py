"""A library's quality page, put together."""

from typing import NamedTuple

from kb.check.asked import told_all
from kb.check.beside import each, opened
from kb.check.report.contribution import Contribution, asked_of, contributions
from kb.check.report.coverage import Answered, Coverage, answered, coverages
from kb.check.report.gaps import Gap, gaps
from kb.check.report.reading import Reading, readings
from kb.check.report.reviewed import Unreviewed, unreviewed
from kb.errors import BrokenLibrary
from kb.make.library import Library

__all__ = ["ASKED_WITH", "Report", "report"]

ASKED_WITH = ("stick", "hall")
"""The kits whose questions judge a drill: the least and the usual; all kits where a library has neither."""


class Report(NamedTuple):
    """All that is counted of a library.

    `questions` is how many were asked, and how many have a chain, with the kits `asked_with`; `readings` are all, the
    hardest first.
    """

    entries: tuple[tuple[str, int], ...]
    asked_with: tuple[str, ...]
    questions: tuple[int, int]
    coverage: tuple[Coverage, ...]
    kits: tuple[Answered, ...]
    contributions: tuple[Contribution, ...]
    gaps: tuple[Gap, ...]
    readings: tuple[Reading, ...]
    unreviewed: Unreviewed

    @property
    def idle(self) -> tuple[Contribution, ...]:
        """Drills that nothing would miss, those kept for nothing else first."""
        idle = [each for each in self.contributions if not each.counts]
        return tuple(sorted(idle, key=lambda one: (bool(one.kept), one.drill)))


def report(library: Library, *, every_kit: bool = False) -> Report:
    """Ask a library everything and count; with `every_kit` what a drill is good for is asked with all of them.

    Raises
    ------
    BrokenLibrary
        If it has structural problems: then nothing can be asked of it.
    BadInput
        If what is kept of reviews can't be read.
    """
    if library.problems:
        many = len(library.problems)
        says = "1 problem" if many == 1 else f"{many} problems"
        raise BrokenLibrary(f"{says} in structure: nothing can be asked of this library.", problems=library.problems)
    unread = unreviewed(library)
    kits = tuple(library.kits)
    judged = () if every_kit else tuple(kit for kit in ASKED_WITH if kit in kits)
    judged = judged or kits
    others = tuple(kit for kit in kits if kit not in judged)
    with opened(library) as catalogue:
        asked = asked_of(catalogue, judged)
        more = each(catalogue, told_all, [(fault, others) for fault in library.faults])
        covered = coverages(library)
        missing = gaps(catalogue, [answer for answer, _ in asked.chains], covered)
    answers = [answer for answer, _ in asked.chains] + [answer for some in more for answer in some]
    return Report(
        entries=_entries(library),
        asked_with=judged,
        questions=(len(asked.chains), sum(bool(answer.drills) for answer, _ in asked.chains)),
        coverage=covered,
        kits=answered(library, answers, kits),
        contributions=contributions(library, asked),
        gaps=missing,
        readings=readings(library),
        unreviewed=unread,
    )


def _entries(library: Library) -> tuple[tuple[str, int], ...]:
    return (
        ("drill", len(library.drills)),
        ("fault", len(library.faults)),
        ("position", len(library.positions)),
        ("equipment", len(library.items)),
        ("lift", len(library.lifts)),
    )
