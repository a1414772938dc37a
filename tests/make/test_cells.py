"""A value of front matter goes into a cell and comes back as it was, whatever it is."""

import csv
import io

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kb.make.cells import cell_of, value_of

TEXT = st.text(
    st.characters(blacklist_categories=("Cs", "Cc", "Cf", "Zl", "Zp"), blacklist_characters="\ufeff\ufffe\uffff"),
    max_size=20,
)
NUMBER = st.integers(-99999, 99999) | st.decimals(-99, 99, places=2).map(float)
VALUE = st.recursive(
    TEXT | NUMBER,
    lambda inner: (
        st.lists(inner, max_size=3) | st.dictionaries(st.from_regex(r"[a-z_]{1,8}", fullmatch=True), inner, max_size=3)
    ),
    max_leaves=8,
)


@given(VALUE)
def test_a_value_comes_back_from_its_cell(value: object) -> None:
    """Text, numbers, lists and maps of them: nothing is lost and nothing becomes something else."""
    assert value_of("faults", cell_of(value)) == (value, [])


@given(VALUE)
def test_a_cell_is_no_sum(value: object) -> None:
    """No cell begins with what a spreadsheet program would work out, numbers aside."""
    cell = cell_of(value)
    assert isinstance(value, (int, float)) or not cell.startswith(("=", "+", "-", "@"))


@given(st.lists(st.lists(VALUE.map(cell_of), min_size=2, max_size=2), max_size=4))
def test_cells_stand_in_csv(table: list[list[str]]) -> None:
    """Commas, quotes and brackets within a cell don't spill over: RFC 4180, by the standard library's reader."""
    out = io.StringIO(newline="")
    csv.writer(out).writerows(table)
    assert list(csv.reader(io.StringIO(out.getvalue(), newline=""))) == table


@pytest.mark.parametrize(
    ("value", "cell"),
    [
        ("Overhead hold", "Overhead hold"),
        ("Bar close: always", "Bar close: always"),
        ("12", '"12"'),
        ("[wall]", '"[wall]"'),
        ("=1+1", '"=1+1"'),
        ("", '""'),
        (["stick", "a: b"], '[stick, "a: b"]'),
        (["no", "012"], '["no", "012"]'),
        ({"count": 4, "seen": "heels down"}, "{count: 4, seen: heels down}"),
        (False, "no"),
    ],
)
def test_what_a_cell_says(value: object, cell: str) -> None:
    """As one would write it on one line of an entry; quoted only where it would be read as something else."""
    assert cell_of(value) == cell


@pytest.mark.parametrize(
    ("field", "cell", "code"),
    [
        ("also", "[a, b", "bad-yaml"),
        ("dose", "{reps: 3, reps: 4}", "duplicate-key"),
        ("dose", "{rest_s: 1:30}", "yaml-surprise"),
        ("cautions", "[no]", "yaml-surprise"),
        ("bridge", "null", "empty-value"),
        ("also", "[&a x]", "yaml-alias"),
    ],
)
def test_a_cell_that_cannot_be_read(field: str, cell: str, code: str) -> None:
    """The same strictness as in an entry."""
    assert code in [problem.code for problem in value_of(field, cell)[1]]
