"""A spreadsheet goes out of a library and comes back into it: nothing lost, all or nothing, problems by cell."""

import csv
import io
import shutil
from pathlib import Path

import pytest
from broken_cases import SMALL
from click.testing import CliRunner

from kb.commands.group import drillpath as main
from kb.errors import BadInput
from kb.make.cells import value_of
from kb.make.files import Kind
from kb.make.front_matter import take_apart
from kb.make.library import load
from kb.make.spreadsheet import columns, spreadsheet
from kb.make.take_in import take_in
from kb.terms import DrillId

ROOT = Path(__file__).resolve().parents[2]
KINDS: list[Kind] = ["drill", "fault", "position", "equipment", "lift"]


@pytest.fixture
def root(tmp_path: Path) -> Path:
    """The small library, to write in."""
    shutil.copytree(SMALL / "drills", tmp_path / "drills")
    return tmp_path


def everything(root: Path) -> dict[str, bytes]:
    """Every file of a library and what it says."""
    return {str(file.relative_to(root)): file.read_bytes() for file in sorted(root.rglob("*.md"))}


def table(root: Path, kind: Kind) -> list[dict[str, str]]:
    """A kind's spreadsheet, as the standard library reads it."""
    return list(csv.DictReader(io.StringIO(spreadsheet(root, kind), newline="")))


def text(rows: list[dict[str, str]], separator: str = ",") -> str:
    """Rows as a spreadsheet program would save them."""
    out = io.StringIO(newline="")
    write = csv.DictWriter(out, list(rows[0]), delimiter=separator)
    write.writeheader()
    write.writerows(rows)
    return out.getvalue()


@pytest.mark.no_cover
@pytest.mark.parametrize("kind", KINDS)
def test_out_and_in_changes_nothing(kind: Kind) -> None:
    """The shipped library's own sheet has nothing to change in it, and its header is every field."""
    says = spreadsheet(ROOT, kind)
    assert tuple(says.splitlines()[0].split(",")) == columns(kind)
    assert take_in(ROOT, kind, "x.csv", says, write=False) == ([], [])


@pytest.mark.parametrize("kind", KINDS)
def test_the_sheet_says_all_that_the_front_matter_says(kind: Kind) -> None:
    """Read back cell by cell, each row of the shipped library is its entry's front matter, value for value."""
    for row in table(ROOT, kind):
        file = ROOT / "drills" / row["folder"] / f"{row['id']}.md"
        says = take_apart("", file.read_bytes()).value
        back = {field: value_of(field, cell) for field, cell in row.items() if cell and field not in ("id", "folder")}
        assert {field: value for field, (value, _) in back.items()} == says
        assert [wrong for _, wrong in back.values() if wrong] == []


def test_one_cell_changes_one_line(root: Path) -> None:
    """Of the entry only the changed field's line differs; every other file is as it was."""
    before = everything(root)
    rows = table(root, "drill")
    row = next(row for row in rows if row["id"] == "front-squat")
    row["set_up_s"] = "45"
    changed, problems = take_in(root, "drill", "x.csv", text(rows))
    assert (changed, problems) == (["drills/squat/front-squat.md"], [])
    after = everything(root)
    assert [name for name in before if before[name] != after[name]] == changed
    pairs = zip(before[changed[0]].splitlines(), after[changed[0]].splitlines(), strict=True)
    assert [(old, new) for old, new in pairs if old != new] == [(b"set_up_s: 30", b"set_up_s: 45")]


def test_a_field_comes_and_goes_in_its_place(root: Path) -> None:
    """An empty cell takes a field away; a filled one puts it where the form has it. Comments and body stay."""
    file = root / "drills" / "squat" / "front-squat.md"
    file.write_text(file.read_text("utf-8").replace("aid: free\n", "aid: free\n# why it is free\n"), "utf-8")
    rows = [row for row in table(root, "drill") if row["id"] == "front-squat"]
    rows[0]["load_from"], rows[0]["suits"] = "", "Lifters: tall or stiff, #1 of all"
    assert take_in(root, "drill", "x.csv", text(rows))[1] == []
    says = file.read_text("utf-8")
    assert "load_from" not in says
    assert "# why it is free\n" in says
    assert says.index("suits:") > says.index("cautions:")
    assert load(root).drills[DrillId("front-squat")].suits == rows[0]["suits"]


def test_rows_and_columns_left_out_stay(root: Path) -> None:
    """A sheet of one row and two columns changes that field of that entry alone; separators of other lands do too."""
    before = everything(root)
    says = text([{"id": "front-squat", "name": "Front squat, slow"}], ";")
    assert take_in(root, "drill", "x.csv", "\ufeff" + says)[0] == ["drills/squat/front-squat.md"]
    after = everything(root)
    assert sum(before[name] != after[name] for name in before) == 1


def test_a_new_id_makes_a_new_entry(root: Path) -> None:
    """It goes to its folder with every heading to fill in; of a drill, `folder` must say which."""
    row = next(row for row in table(root, "drill") if row["id"] == "front-squat")
    row |= {"id": "slow-front-squat", "folder": "squat", "name": "Slower", "also": ""}
    assert take_in(root, "drill", "x.csv", text([row])) == (["drills/squat/slow-front-squat.md"], [])
    assert "## Why\n" in (root / "drills/squat/slow-front-squat.md").read_text("utf-8")
    row |= {"id": "slowest-front-squat", "folder": "", "name": "Slowest"}
    _, problems = take_in(root, "drill", "x.csv", text([row]))
    assert [(each.line, each.code) for each in problems] == [(2, "bad-cell")]


WRONG = [
    ({"dose": "{rounds: three}"}, "rounds"),
    ({"dose": "{rounds: 3"}, "dose"),
    ({"speed": "quick"}, "speed"),
    ({"reach": "[stand, receive]"}, "reach"),
    ({"prerequisites": "[no-such-drill]"}, "no-such-drill"),
    ({"id": "Front Squat"}, "id"),
    ({"folder": "faults"}, "folder"),
    ({"name": ""}, "name"),
]


@pytest.mark.parametrize(("cells", "named"), WRONG)
def test_a_wrong_cell_is_named_and_nothing_is_written(root: Path, cells: dict[str, str], named: str) -> None:
    """The row in the sheet and the field, in a sentence; another row's sound change isn't written either."""
    before = everything(root)
    rows = table(root, "drill")
    rows[0]["teach_s"] = "33"
    at = next(n for n, row in enumerate(rows) if row["id"] == "front-squat")
    rows[at] |= cells
    changed, problems = take_in(root, "drill", "sheet.csv", text(rows))
    assert changed == []
    assert problems[0].file == "sheet.csv"
    assert problems[0].line == at + 2
    assert named in problems[0].message
    assert everything(root) == before


@pytest.mark.parametrize(
    ("says", "part"),
    [
        ("", "no header row"),
        ("name,also\nx,y\n", "no header row"),
        ("id,nmae\nx,y\n", "nmae"),
        ("id,name,name\n", "second time"),
        ("id,name\nfront-squat,A\nfront-squat,B\n", "row 2 already"),
        ("id,name\nfront-squat,A,B\n", "3 cells"),
    ],
)
def test_a_sheet_that_cannot_be_read(root: Path, says: str, part: str) -> None:
    """Said in one sentence, with nothing changed."""
    changed, problems = take_in(root, "drill", "sheet.csv", says)
    assert changed == []
    assert part in problems[0].message


def test_a_broken_library_is_left_alone(root: Path) -> None:
    """What is wrong in it already is to be mended first."""
    file = root / "drills" / "squat" / "front-squat.md"
    rows = text(table(root, "drill"))
    file.write_text(file.read_text("utf-8").replace("speed: slow", "speed: quick"), "utf-8")
    with pytest.raises(BadInput, match="mend the library first"):
        take_in(root, "drill", "x.csv", rows)


def test_the_commands(root: Path, tmp_path: Path) -> None:
    """Out to a file, changed, looked at, and in; a wrong cell exits 1, a file that isn't text 2."""
    run, sheet = CliRunner(), tmp_path / "drills.csv"
    ask = ["--library", str(root)]
    assert "rows" in run.invoke(main, [*ask, "export", "drill", str(sheet)]).output
    assert run.invoke(main, [*ask, "export", "lift"]).stdout_bytes.decode() == spreadsheet(root, "lift")
    assert "nothing to change" in run.invoke(main, [*ask, "import", "drill", str(sheet)]).output
    sheet.write_text(sheet.read_text("utf-8").replace("Front squat", "Front squat slow"), "utf-8")
    before = everything(root)
    assert "would change" in run.invoke(main, [*ask, "import", "drill", str(sheet), "--dry-run"]).output
    assert everything(root) == before
    assert "2 changed" in run.invoke(main, [*ask, "import", "drill", str(sheet)]).output
    sheet.write_text("id,speed\nfront-squat,quick\n", "utf-8")
    wrong = run.invoke(main, [*ask, "import", "drill", str(sheet)])
    assert (wrong.exit_code, "nothing was written: 1 problem" in wrong.output) == (1, True)
    sheet.write_bytes(b"\xff\xfe\x00")
    assert run.invoke(main, [*ask, "import", "drill", str(sheet)]).exit_code == 2
    assert run.invoke(main, [*ask, "import", "drill", str(tmp_path / "none.csv")]).exit_code == 2
    assert run.invoke(main, ["--library", str(root), "import", "drill", str(tmp_path)]).exit_code == 2
