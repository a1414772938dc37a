"""A whole library loaded: assembled, kept, and the same however often it is read."""

import hashlib
import shutil
import subprocess
import sys
from pathlib import Path

import pytest
from broken_cases import SMALL, laid_over, sound

from kb.make import entries, kept, library
from kb.make.library import Library, Source, load
from kb.plain import to_plain


@pytest.fixture
def root(tmp_path: Path) -> Path:
    """The small library, to be changed."""
    shutil.copytree(SMALL, tmp_path / "library")
    return tmp_path / "library"


@pytest.fixture
def parses(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The files parsed from now on."""
    done: list[str] = []
    real = entries.parse

    def parse(entry: entries.EntryFile, data: bytes) -> library.Parsed:
        done.append(entry.file)
        return real(entry, data)

    monkeypatch.setattr(entries, "parse", parse)
    return done


def test_everything_is_there_in_order() -> None:
    """Records are by kind and in id order; each has its source."""
    small = sound()
    for records in (small.lifts, small.positions, small.faults, small.items, small.drills):
        assert list(records) == sorted(records)
        for id_, record in records.items():
            assert record.id == id_
            assert small.sources[id_].file.endswith(f"/{id_}.md")
    assert list(small.files) == sorted(small.files)
    assert len(small.sources) == len(small.files) == len(list(SMALL.rglob("*.md")))


def test_a_lift_of_parts_has_their_timeline() -> None:
    """`clean-and-jerk` goes through the clean's points, then the jerk's."""
    lifts = sound().lifts
    both = lifts["clean-and-jerk"]  # type: ignore[index]
    clean, jerk = lifts["clean"], lifts["jerk"]  # type: ignore[index]
    assert both.timeline == clean.timeline + jerk.timeline
    assert both.part_points == (clean.points, jerk.points)
    assert clean.part_points == (clean.points,)


def test_kits() -> None:
    """A kit is what names it; `full` is everything."""
    kits = sound().kits
    assert kits["full"] == frozenset(sound().items)
    assert "stick" in kits["hall"]


def test_content_hash_is_of_names_and_bytes(root: Path) -> None:
    """It changes with a byte and with a name, and is what it is said to be."""
    digest = hashlib.sha256()
    for file in sorted(str(path.relative_to(root)) for path in root.rglob("*.md")):
        digest.update(f"{file}\0{hashlib.sha256((root / file).read_bytes()).hexdigest()}\n".encode())
    first = load(root).content_hash
    assert first == digest.hexdigest() == sound().content_hash
    entry = root / "drills" / "squat" / "air-squat.md"
    entry.write_bytes(entry.read_bytes() + b"\n")
    second = load(root).content_hash
    entry.rename(entry.with_name("airy-squat.md"))
    assert len({first, second, load(root).content_hash}) == 3


def test_kept_is_as_good_as_parsed(tmp_path: Path, root: Path) -> None:
    """A second load from what was kept gives the same library, problems and lines included."""
    shutil.copytree(laid_over("prerequisites-round", tmp_path / "a"), root, dirs_exist_ok=True)
    shutil.copytree(laid_over("speed-fast", tmp_path / "b"), root, dirs_exist_ok=True)
    path = tmp_path / "kept" / "entries.json"
    fresh = load(root)
    first, second = load(root, parsed=path), load(root, parsed=path)
    assert fresh == first == second
    assert len(fresh.problems) == 2
    assert [to_plain(drill) for drill in second.drills.values()] == [to_plain(drill) for drill in fresh.drills.values()]


def test_only_what_changed_is_parsed(root: Path, tmp_path: Path, parses: list[str]) -> None:
    """Nothing the second time, one entry after one change; what is gone isn't kept."""
    path = tmp_path / "entries.json"
    load(root, parsed=path)
    parses.clear()
    load(root, parsed=path)
    assert parses == []
    entry = root / "drills" / "squat" / "air-squat.md"
    entry.write_bytes(entry.read_bytes() + b"\n")
    load(root, parsed=path)
    assert parses == ["drills/squat/air-squat.md"]
    size = path.stat().st_size
    shutil.rmtree(root / "drills" / "faults")
    load(root, parsed=path)
    assert path.stat().st_size < size


def test_a_folder_keeps_it_in_a_file_of_its_own(root: Path, tmp_path: Path, parses: list[str]) -> None:
    """`parsed` may be a folder that is there."""
    load(root, parsed=tmp_path)
    parses.clear()
    load(root, parsed=tmp_path)
    assert parses == []
    assert (tmp_path / "entries.json").is_file()


@pytest.mark.parametrize("damage", ["cut", "flipped", "empty", "binary", "folder", "version"])
def test_damaged_or_others_is_passed_over(
    damage: str, root: Path, tmp_path: Path, parses: list[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """What is kept is believed only whole and from this parser; then everything is parsed, and kept again."""
    path, whole = tmp_path / "entries.json", sound()  # read once by all tests: before what is counted
    load(root, parsed=path)
    data = path.read_bytes()
    if damage == "version":
        monkeypatch.setattr(kept, "_version", lambda: "another")
    elif damage == "folder":
        path.unlink()
        path.mkdir()
    else:
        changed = {
            "cut": data[:-100],
            "flipped": data.replace(b"stick", b"stuck", 1),
            "empty": b"",
            "binary": b"\xff\0",
        }
        path.write_bytes(changed[damage])
    parses.clear()
    assert load(root, parsed=path).drills == whole.drills
    assert len(parses) == len(whole.files)
    parses.clear()
    load(root, parsed=path)
    assert parses == []


def test_that_it_cant_be_kept_is_no_failure(root: Path, tmp_path: Path) -> None:
    """A file where a folder would have to be: the library is loaded all the same."""
    (tmp_path / "file").write_text("")
    assert load(root, parsed=tmp_path / "file" / "entries.json").problems == ()


def test_problems_are_sorted_and_told_once(tmp_path: Path) -> None:
    """By file, then line; a value that stands for several lifts is wrong once."""
    root = laid_over("position-unknown", tmp_path)
    extra = root / "drills" / "pull" / "extra-drill.md"
    text = extra.read_text().replace("lifts: [clean]", "lifts: [clean, clean-and-jerk]")
    extra.write_text(text.replace("count: 3, of: 3", "count: 9, of: 9"))
    (root / "drills" / "clean" / "x.md").write_text("")
    found = load(root).problems
    assert [(problem.file, problem.line, problem.code) for problem in found] == [
        ("drills/clean/x.md", 1, "no-front-matter"),
        ("drills/pull/extra-drill.md", 5, "unknown-position"),
        ("drills/pull/extra-drill.md", 11, "impossible-standard"),
    ]


def test_a_second_entry_of_an_id_is_left_out(tmp_path: Path) -> None:
    """The first file's is used, whatever their kinds; the other is only named as a problem."""
    found = load(laid_over("id-taken", tmp_path))
    assert "floor-pull" in found.positions
    assert "floor-pull" not in found.drills
    assert found.sources["floor-pull"].file == "drills/positions/floor-pull.md"


def test_an_empty_library_is_empty(tmp_path: Path) -> None:
    """No drills/ is a problem; an empty one isn't."""
    assert [problem.code for problem in load(tmp_path).problems] == ["no-library"]
    (tmp_path / "drills").mkdir()
    empty = load(tmp_path)
    assert (empty.problems, empty.files) == ((), ())
    assert empty.kits == {"full": frozenset()}


def test_a_part_above_without_a_line_is_the_first() -> None:
    """A source without lines at all still gives one."""
    assert Source(file="drills/pull/x.md", lines={}).line("a.b") == 1
    assert Library(root=Path()).kits == {"full": frozenset()}


def test_the_same_whatever_the_hash_seed(tmp_path: Path) -> None:
    """Records, problems and what is kept don't depend on the order of sets."""
    root = laid_over("prerequisites-round-any-of", tmp_path)
    code = (
        "import sys, pathlib; from kb.make.library import load; "
        "l = load(pathlib.Path(sys.argv[1]), parsed=pathlib.Path(sys.argv[2])); "
        "print(list(l.drills), l.problems, l.content_hash)"
    )
    outs, files = set(), set()
    for seed in ("0", "1", "2"):
        path = tmp_path / f"kept-{seed}.json"
        done = subprocess.run(
            [sys.executable, "-c", code, str(root), str(path)],
            capture_output=True,
            check=True,
            text=True,
            env={"PYTHONHASHSEED": seed, "PYTHONPATH": str(Path(library.__file__).parents[2])},
        )
        outs.add(done.stdout)
        files.add(path.read_bytes())
    assert len(outs) == len(files) == 1


def test_an_unchanged_library_imports_nothing_slow(tmp_path: Path) -> None:
    """Neither pydantic nor YAML nor Markdown nor networkx is needed to read what was kept."""
    path = tmp_path / "entries.json"
    load(SMALL, parsed=path)
    code = (
        "import sys, pathlib; from kb.make.library import load; load(pathlib.Path(sys.argv[1]), "
        "parsed=pathlib.Path(sys.argv[2])); print(*sorted({m.split('.')[0] for m in sys.modules}))"
    )
    done = subprocess.run(
        [sys.executable, "-c", code, str(SMALL), str(path)],
        capture_output=True,
        check=True,
        text=True,
        env={"PYTHONPATH": str(Path(library.__file__).parents[2])},
    )
    assert not {"pydantic", "yaml", "markdown_it", "networkx", "sqlite_utils", "difflib"} & set(done.stdout.split())
