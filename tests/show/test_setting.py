"""Lines on a terminal: never wider than there is room, hanging where they should."""

import io
import sys

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kb.show.setting import Setting, aside, hanging, packed, rows, setting_of, titled, wrapped

TEXTS = st.text(alphabet="abc de", max_size=120)


@given(TEXTS, st.integers(20, 100), st.integers(0, 6))
def test_no_line_is_wider_than_there_is_room(text: str, width: int, indent: int) -> None:
    """A paragraph of short words fits any width, its mark and indent included."""
    words = " ".join(word[:10] for word in text.split())
    for line in hanging("12. ", words, Setting(width), indent=indent):
        assert len(line) <= max(width, indent + 4 + 12)


def test_further_lines_hang_under_the_text() -> None:
    """The mark stands alone to the left."""
    assert hanging("1. ", "one two three four", Setting(14)) == ["1. one two", "   three four"]


def test_a_label_leaves_the_column_it_is_given() -> None:
    """Texts of several labels begin in one column; a longer label pushes its own text on."""
    assert hanging("Say", "it", Setting(40), hang=6) == ["Say   it"]
    assert hanging("Move on  ", "it", Setting(40), hang=6) == ["Move on  it"]


def test_a_no_break_space_holds_a_line_together() -> None:
    """It is a plain space when it is printed."""
    assert wrapped("aaaaaaaaaa 4\N{NO-BREAK SPACE}x\N{NO-BREAK SPACE}3", 12) == ["aaaaaaaaaa", "4 x 3"]


def test_two_texts_stand_at_either_end() -> None:
    """Under each other where the line is too short."""
    assert aside("Left", "right", Setting(20)) == ["Left           right"]
    assert aside("Left and more", "right and more", Setting(20)) == ["Left and more", "right and more"]


def test_what_stands_out_is_inked_where_ink_shows() -> None:
    """On a terminal; plain text stays plain."""
    assert Setting(ink=True).strong("a") == "\x1b[1ma\x1b[0m"
    assert Setting().strong("a") == "a"


def test_columns_are_as_wide_as_they_must_be() -> None:
    """The last one wraps under itself."""
    table = [("a", "one two three four five"), ("bbbb", "six")]
    assert rows(table, Setting(26)) == ["  a     one two three four", "        five", "  bbbb  six"]
    assert rows(table, Setting(24)) == ["  a", "    one two three four", "    five", "  bbbb", "    six"]
    assert rows([], Setting()) == []


def test_short_texts_are_packed_unbroken() -> None:
    """One that doesn't fit begins a line."""
    assert packed(["one two", "three", "four"], 12) == ["one two", "three   four"]
    assert packed([], 12) == []


def test_a_heading_needs_lines() -> None:
    """White space and a heading, or nothing at all."""
    assert titled("Title", ["a"], Setting()) == ["", "Title", "a"]
    assert titled("Title", [], Setting()) == []


class Terminal(io.StringIO):
    """Standard output as a terminal of some encoding."""

    def __init__(self, encoding: str) -> None:
        super().__init__()
        self._encoding = encoding

    @property
    def encoding(self) -> str:  # type: ignore[override]
        """The terminal's encoding."""
        return self._encoding

    def isatty(self) -> bool:
        """It is one."""
        return True


@pytest.mark.parametrize(("encoding", "fine"), [("utf-8", True), ("UTF8", True), ("ascii", False), ("cp1252", False)])
def test_finer_characters_need_a_terminal_that_shows_them(
    monkeypatch: pytest.MonkeyPatch, encoding: str, fine: bool
) -> None:
    """UTF-8, however it is spelt."""
    monkeypatch.setattr(sys, "stdout", Terminal(encoding))
    monkeypatch.setenv("COLUMNS", "72")
    assert setting_of() == Setting(72, fine=fine, ink=True)


@pytest.mark.parametrize(("columns", "width"), [("10", 40), ("300", 100), ("60", 60), ("", 80)])
def test_a_pipe_gets_plain_text(monkeypatch: pytest.MonkeyPatch, columns: str, width: int) -> None:
    """80 columns unless COLUMNS says so, within what can be read."""
    monkeypatch.setattr(sys, "stdout", io.StringIO())
    monkeypatch.setenv("COLUMNS", columns)
    assert setting_of() == Setting(width)
