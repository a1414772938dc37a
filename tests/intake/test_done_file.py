"""What was done, as a file: good ones in every shape, bad ones refused in one sentence that names the place."""

import sqlite3
from datetime import date
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from kb.ask.plan.past import Done
from kb.errors import BadInput
from kb.intake.done_file import LARGEST, done_file
from kb.terms import DrillId, Load

SQUAT, HANG = DrillId("air-squat"), DrillId("hang-snatch")


def put(tmp_path: Path, text: str | bytes) -> Path:
    """A file with that text."""
    path = tmp_path / "done.csv"
    path.write_bytes(text if isinstance(text, bytes) else text.encode())
    return path


@pytest.mark.parametrize(
    "text",
    [
        "session,drill,met\n1,air-squat,yes\n3,Hang snatch,no\n",
        "met,drill,session\r\nYES,air-squat,1\r\n\r\nn,hang snatch,3\r\n",
        b"\xef\xbb\xbfSession, Drill ,Met\n 1 , air-squat , y \n,,\n3,hang-snatch,no",
        'session,drill,met,name\n1,air-squat,yes,"a name, with a comma"\n2,air-squat,,\n3,hang-snatch,No,\n',
    ],
)
def test_a_table_is_read_in_any_shape(tmp_path: Path, db: sqlite3.Connection, text: str | bytes) -> None:
    """Columns in any order, either end of line, a mark of bytes, blank rows, rows that aren't filled in yet."""
    assert done_file(put(tmp_path, text), db) == (Done(1, SQUAT, True), Done(3, HANG, False))


def test_dates_are_numbered_in_their_order(tmp_path: Path, db: sqlite3.Connection) -> None:
    """Whatever order the rows have; a load may be said."""
    rows = ("2026-03-12,hang-snatch,yes,light", "2026-03-02,air-squat,yes,", "2026-03-12,air-squat,no,none")
    text = "\n".join(("date,drill,met,load", *rows))
    assert done_file(put(tmp_path, text), db, before=date(2026, 3, 13)) == (
        Done(2, HANG, True, Load.LIGHT),
        Done(1, SQUAT, True),
        Done(2, SQUAT, False, Load.NONE),
    )


def test_nothing_done_yet_is_nothing(tmp_path: Path, db: sqlite3.Connection) -> None:
    """A header alone."""
    assert done_file(put(tmp_path, "session,drill,met\n"), db) == ()


HEAD = "session,drill,met\n"
BAD: list[tuple[str | bytes, str]] = [
    ("", "line 1: the header has no column drill"),
    ("session,met\n1,yes\n", "line 1: the header has no column drill"),
    ("session,drill\n", "line 1: the header has no column met"),
    ("drill,met\n", "line 1: the header has neither session nor date"),
    ("session,drill,met,notes\n", "line 1: there is no column 'notes'"),
    ("session,drill,met,drill\n", "line 1: the column drill is there twice"),
    (HEAD + "1,air-squat\n", "line 2: 2 values under 3 columns"),
    (HEAD + "1,air-squat,yes,\n", "line 2: 4 values under 3 columns"),
    (HEAD + "1,,yes\n", "line 2, drill: nothing says which drill"),
    (HEAD + "1,slow-liftoff,yes\n", "line 2, drill: there is no drill 'slow-liftoff'"),
    (HEAD + "1,air-squat,maybe\n", "line 2, met: 'maybe' is neither yes nor no"),
    (HEAD + "\n,air-squat,yes\n", "line 3, session: nothing says when"),
    (HEAD + "0,air-squat,yes\n", "line 2, session: '0' is no session's number"),
    (HEAD + "-1,air-squat,yes\n", "line 2, session: '-1'"),
    (HEAD + "1.5,air-squat,yes\n", "line 2, session: '1.5'"),
    (HEAD + "nan,air-squat,yes\n", "line 2, session: 'nan'"),
    (HEAD + "inf,air-squat,yes\n", "line 2, session: 'inf'"),
    (HEAD + "1000,air-squat,yes\n", "line 2, session: '1000'"),
    (HEAD + "9" * 5000 + ",air-squat,yes\n", "line 2, session: '999"),
    (HEAD + "²,air-squat,yes\n", "line 2, session: '²'"),
    ("date,drill,met\n,air-squat,yes\n", "line 2, date: nothing says when"),
    ("date,drill,met\n2026-02-30,air-squat,yes\n", "line 2, date: '2026-02-30' is no date"),
    ("date,drill,met\n2026-03-09,air-squat,yes\n", "line 2, date: 2026-03-09 is not before 2026-03-09"),
    ("session,date,drill,met\n1,,air-squat,yes\n,2026-03-01,air-squat,yes\n", "line 3: some rows have a session's"),
    (HEAD + "1,air-squat,yes\n1,air-squat,no\n", "line 3: air-squat is there already on line 2"),
    ("session,drill,met,load\n1,air-squat,yes,heavy\n", "line 2, load: 'heavy' is no load"),
    (HEAD + '1,"air-squat,yes\n', "broken table"),
    (HEAD + '1,"air"squat,yes\n', "line 2: broken table"),
    (HEAD.encode() + b"1,\xff\xfe,yes\n", "isn't plain text in UTF-8"),
    (b"\x00\x01\x02", "line 1: there is no column"),
    (b"x" * (LARGEST + 1), "is too large"),
]


@pytest.mark.parametrize(("text", "said"), BAD, ids=[said for _, said in BAD])
def test_a_bad_file_is_refused_at_its_place(
    tmp_path: Path, db: sqlite3.Connection, text: str | bytes, said: str
) -> None:
    """One sentence with the file's name, the line and the column."""
    path = put(tmp_path, text)
    with pytest.raises(BadInput) as refused:
        done_file(path, db, before=date(2026, 3, 9))
    assert said in str(refused.value)
    assert str(path) in str(refused.value)


def test_an_unknown_name_brings_the_nearest(tmp_path: Path, db: sqlite3.Connection) -> None:
    """Of a drill, of a column and of a load."""
    for text, near in (
        (HEAD + "1,slow-liftoff,yes\n", "slow-lift-off"),
        ("session,drils,met\n", "drill"),
        ("session,drill,met,load\n1,air-squat,yes,lite\n", "light"),
    ):
        with pytest.raises(BadInput) as refused:
            done_file(put(tmp_path, text), db)
        assert refused.value.nearest[0] == near


@pytest.mark.parametrize("name", ["missing.csv", ".", "nul\0.csv"])
def test_what_is_no_file_is_refused(tmp_path: Path, db: sqlite3.Connection, name: str) -> None:
    """Missing, a folder, a name that can't be."""
    with pytest.raises(BadInput, match="can't be read"):
        done_file(tmp_path / name, db)


@settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.text(st.sampled_from('sessiondrllmt,"\n\r;yno123-\x00é '), max_size=60), st.booleans())
def test_any_text_is_read_or_refused(tmp_path: Path, db: sqlite3.Connection, text: str, headed: bool) -> None:
    """Never anything but an answer or BadInput."""
    try:
        found = done_file(put(tmp_path, (HEAD if headed else "") + text), db)
    except BadInput:
        return
    assert all(each.session >= 1 for each in found)
