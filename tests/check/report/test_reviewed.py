"""Which entries were read through as they stand, and what is said when that can't be kept or read."""

import shutil
from datetime import date
from pathlib import Path

import pytest
from broken_cases import SMALL

from kb.check.report.reviewed import FILE, mark, reviews, unreviewed
from kb.errors import BadInput, DrillpathError
from kb.make.library import Library, load

DAY = date(2026, 3, 31)


@pytest.fixture
def library(tmp_path: Path) -> Library:
    """The small library, on a disk of its own."""
    shutil.copytree(SMALL / "drills", tmp_path / "drills")
    return load(tmp_path)


def test_nothing_was_read_at_first(library: Library) -> None:
    """Every entry of every kind is to be read."""
    found = unreviewed(library)
    assert found.changed == ()
    assert found.never == tuple(sorted(library.sources))


def test_what_was_read_and_changed_since(library: Library) -> None:
    """An entry that was marked is read until a byte of it changes; marked again it is read again."""
    mark(library, ["tall-clean", "bar"], who="a reader", on=DAY)
    assert not {"tall-clean", "bar"} & set(unreviewed(library).never)
    assert unreviewed(library).changed == ()
    entry = library.root / library.sources["tall-clean"].file
    entry.write_text(entry.read_text("utf-8") + "\n", "utf-8")
    (changed,) = unreviewed(library).changed
    assert (changed.id, changed.on, changed.who) == ("tall-clean", "2026-03-31", "a reader")
    mark(library, ["tall-clean"], who="another", on=date(2026, 4, 1))
    assert unreviewed(library).changed == ()
    assert reviews(library.root)["tall-clean"].who == "another"
    assert reviews(library.root)["bar"].who == "a reader"


def test_the_file_is_sorted_and_no_problem_of_the_library(library: Library) -> None:
    """A line an entry in id order under a head; a library that holds it has no more problems than before."""
    mark(library, ["tall-clean", "bar", "tall-clean"], who="a reader", on=DAY)
    lines = (library.root / FILE).read_text("utf-8").splitlines()
    assert [line.split("\t")[0] for line in lines] == ["id", "bar", "tall-clean"]
    again = load(library.root)
    assert again.problems == ()
    assert again.content_hash == library.content_hash


def test_what_was_kept_of_an_entry_that_is_no_more_goes(library: Library) -> None:
    """With the next mark; until then it says nothing."""
    mark(library, ["bar"], who="a reader", on=DAY)
    file = library.root / FILE
    file.write_text(file.read_text("utf-8") + "gone\t0123456789abcdef\t2026-01-01\tsomeone\n", "utf-8")
    assert "gone" not in {*unreviewed(library).never, *(each.id for each in unreviewed(library).changed)}
    mark(library, ["stick"], who="a reader", on=DAY)
    assert set(reviews(library.root)) == {"bar", "stick"}


@pytest.mark.parametrize(
    "line", ["only-an-id", "a\tb\t2026-13-01\twho", "a\tb\t20260101\twho", "a\tb\t2026-01-01", "a\tb\tc\td\te"]
)
def test_a_broken_line_is_named(library: Library, line: str) -> None:
    """The file and the line, and what it should be."""
    (library.root / FILE).write_text(f"id\thash\tdate\twho\n{line}\n", "utf-8")
    with pytest.raises(BadInput, match=r"drills/reviewed\.tsv:2 must be"):
        reviews(library.root)


def test_a_file_that_cant_be_read(library: Library) -> None:
    """It isn't text."""
    (library.root / FILE).write_bytes(b"\xff\xfe\x00")
    with pytest.raises(BadInput, match=r"drills/reviewed\.tsv can't be read"):
        reviews(library.root)


def test_what_cant_be_marked(library: Library) -> None:
    """No entry, an entry that there isn't, and no one who read it; nothing is written then."""
    with pytest.raises(BadInput, match="there is no entry 'tall-clena'") as wrong:
        mark(library, ["bar", "tall-clena"], who="a reader", on=DAY)
    assert wrong.value.nearest[0] == "tall-clean"
    with pytest.raises(BadInput, match="name at least one"):
        mark(library, [], who="a reader", on=DAY)
    for who in ("", "  ", "a\treader", "a\nreader"):
        with pytest.raises(BadInput, match="say who read them"):
            mark(library, ["bar"], who=who, on=DAY)
    assert not (library.root / FILE).exists()


def test_where_it_cant_be_written(library: Library) -> None:
    """A folder stands in its place."""
    (library.root / FILE).mkdir()
    with pytest.raises((BadInput, DrillpathError), match=r"drills/reviewed\.tsv can't be"):
        mark(library, ["bar"], who="a reader", on=DAY)
