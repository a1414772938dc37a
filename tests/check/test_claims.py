"""The page of claims: every line of every *Sources*, none twice, each with whom to ask."""

import re
from pathlib import Path

import pytest

from kb.check.bibliography import BIBLIOGRAPHY, CHECKERS, COMMON
from kb.check.claims_page import claims_page
from kb.check.sourced import Claim, claims_of, records
from kb.make.library import Library
from kb.saying import ACTS_ON, cues_said

ROOT = Path(__file__).resolve().parents[2]


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("- A sentence. [common practice | coach]", [Claim("A sentence.", "common practice", "coach")]),
        (
            "- Over two\n  lines. [Winter 2009 | biomechanist]",
            [Claim("Over two lines.", "Winter 2009", "biomechanist")],
        ),
        ("- No source.", ["No source."]),
        ("- Half a source. [coach]", ["Half a source. [coach]"]),
        ("Not an item. [common practice | coach]", []),
        ("", []),
    ],
)
def test_what_is_a_claim(text: str, found: list[Claim | str]) -> None:
    """An item, its source and who could check it; what lacks one of them comes back as it was written."""
    assert list(claims_of(text)) == found


def test_the_page_has_every_claim_of_the_library(library: Library) -> None:
    """As many rows as claims, each under its entry; the counts at the top are the rows'."""
    claims = [(r.id, claim) for r in records(library) for claim in claims_of(r.sections.get("Sources", ""))]
    page = claims_page(library)
    rows = re.findall(r"^\| `([a-z0-9-]+)` \| (.+?) \| ([^|]+) \| ([a-z]+) \|$", page, re.MULTILINE)
    assert len(rows) == len(claims)
    assert {row[0] for row in rows} == {record.id for record in records(library)}
    assert {row[3] for row in rows} <= set(CHECKERS)
    assert {row[2] for row in rows} <= {COMMON, *BIBLIOGRAPHY}
    counted = re.search(r"(\d+) claims: (\d+) with a source, (\d+) common practice", page)
    assert counted is not None
    total, sourced, common = map(int, counted.groups())
    assert (total, common) == (len(rows), sum(row[2] == COMMON for row in rows))
    assert sourced == total - common


def test_every_source_used_is_listed_and_no_other(library: Library) -> None:
    """The references at the end are those of the rows above."""
    page = claims_page(library)
    rows, _, references = page.partition("## References")
    listed = set(re.findall(r"^- \*\*(.+?)\*\*:", references, re.MULTILINE))
    assert listed == {key for key in BIBLIOGRAPHY if f"| {key} |" in rows}


def test_references_can_be_found() -> None:
    """Each key is a surname and a year, and the reference has that year in it."""
    for key, reference in BIBLIOGRAPHY.items():
        year = key[-4:]
        assert year.isdigit()
        assert year in reference


def test_every_cue_of_the_library_says_what_it_acts_on(library: Library) -> None:
    """One of the four, and the cue as it is said is without it."""
    for drill in library.drills.values():
        said = list(cues_said(drill.sections["Say"]))
        assert {acts_on for acts_on, _ in said} <= set(ACTS_ON)
        assert drill.cues == tuple(cue for _, cue in said)
        assert not any(cue.startswith(ACTS_ON) and ":" in cue.split()[0] for cue in drill.cues)
