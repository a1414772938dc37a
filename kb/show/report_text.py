"""A library's quality page on a terminal: what to look at first, then the counts."""

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from kb.show.coach_words import listed
from kb.show.gap_words import gap_asked, gap_worth
from kb.show.setting import Setting, hanging, rows, titled, wrapped
from kb.terms import Stage

if TYPE_CHECKING:
    from kb.check.report.contribution import Contribution, Use
    from kb.check.report.coverage import Answered, Coverage
    from kb.check.report.report import Report
    from kb.check.report.reviewed import Unreviewed

__all__ = ["report_text"]

NAMED = 4
"""Entries named in one line at most; of more it is said how many there are."""

SHOWN = 10
"""Of what is ranked, how many are shown; `--json` has all."""


def report_text(found: "Report", setting: Setting) -> list[str]:
    """A report in lines of at most the setting's width."""
    lines = _head(found, setting)
    lines += titled("Drills that nothing would miss", list(_idle(found, setting)), setting)
    lines += titled("What a new drill would have to be", list(_gaps(found, setting)), setting)
    lines += titled("Thin places", list(_thin(found, setting)), setting)
    lines += titled("Kits", list(_kits(found.kits, setting)), setting)
    lines += titled("Hardest to read", list(_reading(found, setting)), setting)
    lines += titled("Not read since they changed", list(_unreviewed(found.unreviewed, setting)), setting)
    for each in found.coverage:
        lines += titled(f"Coverage: {each.lift}", list(_coverage(each, setting)), setting)
    return lines + titled("What each drill is good for", list(_contributions(found, setting)), setting)


def _head(found: "Report", setting: Setting) -> list[str]:
    counts = listed([f"{count} {kind}{'s' * (count != 1 and kind != 'equipment')}" for kind, count in found.entries])
    asked, answers = found.questions
    idle, bare = len(found.idle), sum(not each.kept for each in found.idle)
    says = (
        f"{counts}. With {listed(found.asked_with)}, {answers:,} of {asked:,} questions for a chain have one. "
        f"Of the drills {idle} could go without any answer lost or dearer, {bare} of them kept for nothing else."
    )
    return wrapped(says, setting.width)


def _named(ids: Sequence[str]) -> str:
    return listed(ids) if len(ids) <= NAMED else f"{', '.join(ids[:NAMED])} and {len(ids) - NAMED} more"


def _reasons(each: "Contribution") -> str:
    return "; ".join(f"{kept.why} {_named(kept.of)}" for kept in each.kept) or "nothing: a candidate for removal"


def _idle(found: "Report", setting: Setting) -> Iterator[str]:
    if found.idle:
        yield from wrapped("No chain, path or swap would be lost or dearer; each is kept for:", setting.width)
        yield from rows([(each.drill, _reasons(each)) for each in found.idle], setting)


def _gaps(found: "Report", setting: Setting) -> Iterator[str]:
    if found.gaps:
        says = f"Tried one by one with {listed(found.asked_with)}; worth most first, {SHOWN} at most."
        yield from wrapped(says, setting.width)
    for n, gap in enumerate(found.gaps[:SHOWN], 1):
        yield from hanging(f"{n:>2}  ", gap_asked(gap), setting, indent=2)
        yield from hanging("    ", f"It {gap_worth(gap)}.", setting, indent=2)


def _reading(found: "Report", setting: Setting) -> Iterator[str]:
    if found.readings:
        middle = found.readings[len(found.readings) // 2].ease
        says = f"Flesch's reading ease: 60 and more is plain English. Half of the entries are above {middle:g}."
        yield from wrapped(says, setting.width)
    yield from rows(
        [
            (f"{each.ease:g}", each.id, f"{each.a_sentence:g} words a sentence, {each.a_word:g} syllables a word")
            for each in found.readings[:SHOWN]
        ],
        setting,
    )


def _unreviewed(unread: "Unreviewed", setting: Setting) -> Iterator[str]:
    yield from rows([(each.id, f"last read {each.on} by {each.who}") for each in unread.changed], setting)
    if unread.never:
        says = f"{len(unread.never)} entries were never marked as read (`drillpath check --reviewed ID --by WHO`)"
        yield from hanging("", f"{says}: {_named(unread.never)}.", setting, indent=2)


def _thin(found: "Report", setting: Setting) -> Iterator[str]:
    thin = sorted({each for coverage in found.coverage for each in coverage.thin})
    if thin:
        yield from wrapped("Causes that one drill addresses, or none:", setting.width)
        yield from rows([(f"{each.fault}, {each.cause}", _named(each.drills) or "no drill") for each in thin], setting)


def _kits(kits: "Sequence[Answered]", setting: Setting) -> Iterator[str]:
    yield from rows(
        [
            (each.kit, f"{each.faults}/{each.of_faults} faults", f"{each.answered}/{each.asked} questions have a chain")
            for each in kits
        ],
        setting,
    )
    for each in kits:
        if each.without:
            says = f"no chain for {listed(each.without)}"
            yield from hanging(f"{each.kit}: ", says, setting, indent=2)


def _coverage(each: "Coverage", setting: Setting) -> Iterator[str]:
    middle = [stage for stage in Stage if stage not in (Stage.PREPARE, Stage.FINISH)]
    yield from _table(["", *(stage.word for stage in Stage)], [["drills", *map(str, each.stages)]])
    yield from _table(
        ["drills at", *(stage.word for stage in middle)],
        [[point, *(str(counts[stage]) for stage in middle)] for point, counts in each.points],
    )
    yield from _table(
        ["drills over", *(stage.word for stage in middle)],
        [
            [first if first == last else f"{first}-{last}", *(str(counts[stage]) for stage in middle)]
            for first, last, counts in each.stretches
        ],
    )
    kinds = ", ".join(f"{kind} {count}" for kind, count in each.kinds)
    yield from hanging(f"causes of its {each.faults} faults: ", kinds, setting, indent=2, hang=4)
    yield from hanging("every way passes: ", listed(each.gateways) or "nothing", setting, indent=2, hang=4)


def _table(head: Sequence[str], body: Sequence[Sequence[str]]) -> Iterator[str]:
    """Numbers in columns, under their heads; a nought is a point."""
    table = [list(head), *([row[0], *("." if cell == "0" else cell for cell in row[1:])] for row in body)]
    widths = [max(len(row[n]) for row in table) for n in range(len(head))]
    for row in table:
        cells = [
            f"{row[0]:<{widths[0]}}",
            *(f"{cell:>{width}}" for cell, width in zip(row[1:], widths[1:], strict=True)),
        ]
        yield f"  {'  '.join(cells)}".rstrip()


def _contributions(found: "Report", setting: Setting) -> Iterator[str]:
    says = "Questions lost without it / dearer / held by it, of chains, of paths and of swaps."
    yield from wrapped(says, setting.width)
    ranked = sorted(found.contributions, key=lambda each: (-_lost(each), -_dearer(each), each.drill))
    yield from _table(
        ["", "chains", "paths", "swaps"],
        [[each.drill, *(_use(use) for use in (each.chains, each.paths, each.swaps))] for each in ranked],
    )


def _lost(each: "Contribution") -> int:
    return each.chains.lost + each.paths.lost + each.swaps.lost


def _dearer(each: "Contribution") -> int:
    return each.chains.dearer + each.paths.dearer + each.swaps.dearer


def _use(use: "Use") -> str:
    return f"{use.lost}/{use.dearer}/{use.holds}" if any(use) else "0"
