"""A file of measurements: what is read, what is refused and where, and that what is written is read again."""

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from kb.body.tape import MEASURES, Tape
from kb.errors import BadInput
from kb.intake.screen_file import LARGEST, screen_file, screen_text


def _file(folder: Path, text: str | bytes) -> Path:
    path = folder / "lifter.yaml"
    path.write_bytes(text if isinstance(text, bytes) else text.encode())
    return path


@given(
    st.floats(100, 250).map(lambda x: round(x, 1)),
    st.dictionaries(st.sampled_from([name for name in MEASURES if name != "stature"]), st.none()),
    st.floats(0, 1),
)
@settings(max_examples=40, deadline=None)
def test_what_is_written_is_read_again(
    tmp_path_factory: pytest.TempPathFactory, stature: float, some: dict[str, None], at: float
) -> None:
    """Every measurement comes back, and what wasn't taken stays out."""
    values = {n: round(MEASURES[n].least + at * (MEASURES[n].most - MEASURES[n].least), 1) for n in some}
    path = _file(tmp_path_factory.mktemp("tape"), screen_text(Tape(stature)._replace(**values)))
    assert screen_file(path) == pytest.approx({"stature": stature, **values})


def test_remarks_and_a_byte_order_mark_are_no_trouble(tmp_path: Path) -> None:
    """As editors leave them."""
    path = _file(tmp_path, b"\xef\xbb\xbf# Tuesday\r\nstature: 171\r\nwall: -1.5 # left\r\n")
    assert screen_file(path) == {"stature": 171, "wall": -1.5}


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("stature: 175\nwal: 3\n", "lifter.yaml, line 2, wal: there is no such measurement"),
        ('stature: 175\nwall: "3"\n', "line 2, wall: it must be a number of centimetres"),
        ("stature: 175\n\nwall: [3]\n", "line 3, wall: it must be a number"),
        ("stature: 175\nwall: yes\n", "line 2: .*YAML reads"),
        ("stature: 175\nwall: .nan\n", "line 2: .*YAML reads"),
        ("stature: 175\nwall: 99\n", "line 2, wall: wall 99 cm can't be"),
        ("stature: 175\nstature: 176\n", "line 2: .*given twice"),
        ("stature:\n", "line 1: .*no value"),
        ("- 175\n", "line 1: the file must be a map"),
        ("", "line 1: the file must be a map"),
        ("stature: 175\nwall: *a\n", "line 2: .*alias"),
        ("stature: 175\nwall: {{{\n", "line 2: "),
        (b"\xff\xfe", "line 1: this isn't UTF-8"),
    ],
)
def test_a_broken_file_is_told_in_one_sentence(tmp_path: Path, text: str | bytes, message: str) -> None:
    """File, line and field."""
    with pytest.raises(BadInput, match=message) as refused:
        screen_file(_file(tmp_path, text))
    assert "\n" not in str(refused.value)


def test_an_unknown_name_is_told_the_nearest(tmp_path: Path) -> None:
    """Or all there are."""
    with pytest.raises(BadInput) as near:
        screen_file(_file(tmp_path, "statur: 175\n"))
    assert near.value.nearest == ("stature",)
    with pytest.raises(BadInput) as far:
        screen_file(_file(tmp_path, "xyzzy: 175\n"))
    assert set(far.value.nearest) == set(MEASURES)


def test_what_is_no_file_is_refused(tmp_path: Path) -> None:
    """A folder, nothing at all, and something enormous."""
    for path in (tmp_path, tmp_path / "none.yaml"):
        with pytest.raises(BadInput, match="can't be read"):
            screen_file(path)
    with pytest.raises(BadInput, match="too large"):
        screen_file(_file(tmp_path, b"#" * (LARGEST + 1)))
