"""What differs between two libraries, as text for whoever reviews a change of content."""

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING, Any

from kb.show.coach_words import duration, either, human, listed
from kb.show.setting import Setting, hanging, titled, wrapped

if TYPE_CHECKING:
    from kb.check.asked import PathTold, Told
    from kb.check.diff.answers import Change
    from kb.check.diff.diff import Diff
    from kb.check.diff.edges import Edge
    from kb.check.diff.entries import Changed, Entries, Field

__all__ = ["diff_text"]

LONGEST = 60
"""Letters of a value of front matter that are worth showing; of a longer one it is said only that it changed."""


def diff_text(found: "Diff", before: str, after: str, setting: Setting) -> list[str]:
    """How much differs between the libraries called `before` and `after`, then entries, edges, chains and paths."""
    lines = hanging("", f"From {before} to {after}: {_summary(found)}", setting)
    if found.unasked:
        lines += wrapped(f"Chains and paths were not compared: {found.unasked}.", setting.width)
    lines += titled("Entries", list(_entries(found.entries, setting)), setting)
    lines += titled("What they say of one another", list(_edges(found, setting)), setting)
    lines += titled(f"Chains ({_of(_many(found.chains), 'answer')})", _changes(found.chains, setting), setting)
    return lines + titled(f"Paths ({_of(_many(found.paths), 'answer')})", _changes(found.paths, setting), setting)


def _many(changes: "Sequence[Change]") -> int:
    return sum(len(change.kits) for change in changes)


def _changes(changes: "Sequence[Change]", setting: Setting) -> list[str]:
    """Each change once: those that read the same, whatever their loads, together."""
    kits: dict[tuple[str, str, str, tuple[str, ...]], list[str]] = {}
    for change in changes:
        said = tuple(_change(change, setting))
        kits.setdefault((change.lift, change.fault, change.cause, said), []).extend(change.kits)
    lines: list[str] = []
    for (lift, fault, cause, said), named in kits.items():
        about = f"{fault}, {cause} ({lift}; {listed(sorted(named))})" if fault else f"{lift} ({listed(sorted(named))})"
        lines += [*hanging("", about, setting, indent=2), *said]
    return lines


def _summary(found: "Diff") -> str:
    if found.empty:
        return "nothing differs." if not found.unasked else "no entry differs."
    entries, edges = found.entries, found.edges
    counts = [
        (len(entries.added), "added"),
        (len(entries.removed), "removed"),
        (len(entries.renamed), "renamed"),
        (len(entries.changed), "changed"),
    ]
    said = listed([f"{count} {what}" for count, what in counts if count]) or "none differ"
    parts = [f"entries: {said}"]
    if edges.added or edges.removed:
        parts.append(f"edges: {len(edges.added)} more, {len(edges.removed)} fewer")
    if not found.unasked and any(found.asked):
        chains, paths = _many(found.chains), _many(found.paths)
        parts.append(f"{chains} of {_of(found.asked[0], 'chain')} and {paths} of {_of(found.asked[1], 'path')} differ")
    return "; ".join(parts) + "."


def _of(count: int, what: str) -> str:
    return f"{count:,} {what}{'s' * (count != 1)}"


def _entries(entries: "Entries", setting: Setting) -> Iterator[str]:
    for word, keys in (("added", entries.added), ("removed", entries.removed)):
        for kind, id_ in keys:
            yield f"  {word:<9}{kind:<11}{id_}"
    for each in entries.renamed:
        yield from hanging("  renamed  ", f"{each.kind:<11}{each.before}, now {each.after}", setting)
        yield from _changed(each, setting)
    for each in entries.changed:
        if each.fields:
            yield f"  changed  {each.kind:<11}{each.after}"
            yield from _changed(each, setting)
    by_sections: dict[tuple[str, ...], list[str]] = {}
    for each in entries.changed:
        if not each.fields:
            by_sections.setdefault(each.sections, []).append(each.after)
    for sections, ids in sorted(by_sections.items()):
        says = f"only text, {listed(sections)}: {', '.join(ids)}"
        yield from hanging("  changed  ", says, setting)


def _changed(each: "Changed", setting: Setting) -> Iterator[str]:
    for field in each.fields:
        yield from hanging(f"{field.name}: ", _values(field), setting, indent=11)
    if each.sections:
        yield from hanging("text: ", ", ".join(each.sections), setting, indent=11)


def _values(field: "Field") -> str:
    was, now = field.before, field.after
    if isinstance(was or [], list) and isinstance(now or [], list):
        gone = [each for each in was or [] if each not in (now or [])]
        come = [each for each in now or [] if each not in (was or [])]
        parts = [f"- {_value(each)}" for each in gone] + [f"+ {_value(each)}" for each in come]
        if not parts:
            return "in another order"
        said = ", ".join(parts)
        return said if len(said) <= 4 * LONGEST else f"{len(gone)} gone, {len(come)} new"
    said = f"{_value(was)} -> {_value(now)}"
    return said if len(said) <= 2 * LONGEST else "changed"


def _value(value: Any) -> str:
    if value is None:
        return "not set"
    if isinstance(value, dict):
        said = ", ".join(f"{key} {_value(each)}" for key, each in value.items())
    elif isinstance(value, list):
        said = " ".join(_value(each) for each in value)
    else:
        said = str(value)
    return said if len(said) <= LONGEST else f"{said[: LONGEST - 3]}..."


def _edges(found: "Diff", setting: Setting) -> Iterator[str]:
    for mark, edges in (("+", found.edges.added), ("-", found.edges.removed)):
        for edge in edges:
            yield from hanging(f"{mark} ", _edge(edge), setting, indent=2)


def _edge(edge: "Edge") -> str:
    detail = f" ({edge.detail})" if edge.detail else ""
    return f"{edge.start} {human(edge.kind)} {either(edge.end)}{detail}"


def _change(change: "Change", setting: Setting) -> Iterator[str]:
    was, now = change.before, change.after
    parts = [f"+ {each}" for each in change.added] + [f"- {each}" for each in change.dropped]
    parts += [f"moved {each}" for each in change.moved] + [f"other load {each}" for each in change.reloaded]
    old, new = ([*getattr(answer, "finish", ())] for answer in (was, now))
    if was and now:
        parts += [f"+ {each} to strengthen" for each in new if each not in old]
        parts += [f"- {each} to strengthen" for each in old if each not in new]
    if was and now and was.drills and now.drills and was.ids == now.ids:
        costs = f"cost {was.cost:,} -> {now.cost:,}, {duration(was.seconds)} -> {duration(now.seconds)}"
        yield from hanging("", "; ".join([f"the same drills: {costs}", *parts]), setting, indent=4)
        return
    for mark, answer in (("before: ", was), ("after: ", now)):
        yield from hanging(f"{mark:<8}", _answer(answer), setting, indent=4)
    if parts:
        yield from hanging(" " * 8, ", ".join(parts), setting, indent=4)


def _answer(answer: "Told | PathTold | None") -> str:
    if answer is None:
        return "not asked"
    if not answer.drills:
        return f"no answer: {answer.why}"
    sittings = getattr(answer, "sittings", 1)
    times = f", {sittings} sittings" if sittings > 1 else ""
    return f"cost {answer.cost:,}, {duration(answer.seconds)}{times}: {' > '.join(answer.ids)}"
