"""Every claim of a library with its source and who could check it, as a page of the documentation."""

from collections import Counter
from collections.abc import Sequence

from kb.check.bibliography import BIBLIOGRAPHY, COMMON
from kb.check.sourced import Claim, claims_of, records
from kb.make.library import Library
from kb.terms import Drill, Fault, Item, Lift, Position

__all__ = ["claims_page"]

_HEAD = """\
# What the library claims, and who could check it

Made from the section *Sources* of every entry by `build.py`; change it there. No qualified coach has reviewed the
library yet: the last column says whom to ask about each line. A claim marked `{common}` is a fact of the trade for
which no source is named; every other source is listed at the end.

"""


def claims_page(library: Library) -> str:
    """The page, as Markdown: how many claims of each source and checker, the claims by entry, and the references."""
    found = [
        (type(record), record.id, record.name, claim)
        for record in records(library)
        for claim in claims_of(record.sections.get("Sources", ""))
        if isinstance(claim, Claim)
    ]
    said = [claim for *_, claim in found]
    parts = [_HEAD.format(common=COMMON), _counted(said)]
    for kind, title in (
        (Lift, "Lifts"),
        (Position, "Positions"),
        (Fault, "Faults"),
        (Item, "Equipment"),
        (Drill, "Drills"),
    ):
        of_kind = [each for each in found if each[0] is kind]
        if of_kind:
            parts.append(
                f"\n## {title}\n\n| entry | claim | source | who could check it |\n| --- | --- | --- | --- |\n"
            )
            parts += [
                f"| `{id_}` | {_cell(claim.says)} | {claim.source} | {claim.checker} |\n"
                for _, id_, _, claim in of_kind
            ]
    used = sorted({claim.source for claim in said} & BIBLIOGRAPHY.keys(), key=str.casefold)
    if used:
        parts.append("\n## References\n\n")
        parts += [f"- **{key}**: {BIBLIOGRAPHY[key]}.\n" for key in used]
    return "".join(parts)


def _counted(claims: Sequence[Claim]) -> str:
    common = sum(claim.source == COMMON for claim in claims)
    who = Counter(claim.checker for claim in claims)
    asked = ", ".join(f"{checker} {count}" for checker, count in who.most_common())
    return (
        f"{len(claims)} claims: {len(claims) - common} with a source, {common} common practice."
        f" Who could check them: {asked or 'nobody'}.\n"
    )


def _cell(text: str) -> str:
    return " ".join(text.split()).replace("|", "\\|")
