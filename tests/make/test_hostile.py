"""Files that nobody should write: each gives one clear problem, in little time, and hurts nothing else."""

import os
import random
import time
from pathlib import Path

import pytest
from broken_cases import SMALL, laid_over
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from kb.errors import Problem
from kb.make import files
from kb.make.entries import parse
from kb.make.files import LARGEST, EntryFile
from kb.make.library import load

HEAD = "---\nname: Extra\n"
TAIL = "---\n## Do\nLift.\n"
ENTRY = EntryFile("drills/pull/extra.md", "drill", "extra")


@pytest.fixture
def root(tmp_path: Path) -> Path:
    """A library without an entry."""
    (tmp_path / "library" / "drills" / "pull").mkdir(parents=True)
    return tmp_path / "library"


def problem_of(data: bytes, root: Path) -> Problem:
    """The only problem of a library whose only entry holds `data`."""
    (root / "drills" / "pull" / "extra.md").write_bytes(data)
    began = time.perf_counter()
    (problem,) = load(root).problems
    assert time.perf_counter() - began < 10
    return problem


BOMB = "a: &a [x, x]\n" + "".join(
    f"{c}: &{c} [*{p}, *{p}, *{p}, *{p}]\n" for p, c in zip("abcdefgh", "bcdefghi", strict=True)
)


@pytest.mark.parametrize(
    ("data", "line", "code"),
    [
        (b"", 1, "no-front-matter"),
        (b"\n", 1, "no-front-matter"),
        (b"---", 1, "no-front-matter"),
        (b"\xef\xbb\xbf", 1, "no-front-matter"),
        (b"---\n---\n", 2, "bad-yaml"),
        (b"---\n# nothing\n---\n", 2, "bad-yaml"),
        (b"---\nname\n---\n", 2, "bad-yaml"),
        (b"---\n? [a]\n: b\n---\n", 2, "bad-yaml"),
        (b"---\n{a: b}: c\n---\n", 2, "bad-yaml"),
        (b"---\na: b\n\tc: d\n---\n", 3, "bad-yaml"),
        (b"---\n%TAG ! x\n---\n", 3, "bad-yaml"),
        (b"---\na: @b\n---\n", 2, "bad-yaml"),
        (b'---\na: "\\UFFFFFFFF"\n---\n', 2, "bad-yaml"),
        (b"---\na: b\n...\na: c\n---\n", 3, "bad-yaml"),
        ((HEAD + BOMB + TAIL).encode(), 3, "yaml-alias"),
        ((HEAD + "a: *b\n" + TAIL).encode(), 3, "yaml-alias"),
        ((HEAD + "a: &a [*a]\n" + TAIL).encode(), 3, "yaml-alias"),
        ((HEAD + "a: " + "[" * 30 + "]" * 30 + "\n" + TAIL).encode(), 3, "too-deep"),
        # so deep that the YAML reader itself gives up before the first list is known to be one
        ((HEAD + "a: " + "[" * 10_000 + "]" * 10_000 + "\n" + TAIL).encode(), 3, "bad-yaml"),
        ((HEAD + "a: " + "{a: " * 10_000 + "b" + "}" * 10_000 + "\n" + TAIL).encode(), 3, "too-deep"),
        ((HEAD + "a:\n" + "".join(" " * n + "-\n" for n in range(1, 500)) + TAIL).encode(), 23, "too-deep"),
        ((HEAD + "a: " + "- " * 10_000 + "\n" + TAIL).encode(), 3, "bad-yaml"),
        ((HEAD + TAIL).encode("utf-16"), 1, "bad-encoding"),
        (HEAD.encode() + b"a: caf\xe9\n" + TAIL.encode(), 3, "bad-encoding"),
        (HEAD.encode() + b"a: \xed\xa0\x80\n" + TAIL.encode(), 3, "bad-encoding"),
        ((HEAD + "a: x\0y\n" + TAIL).encode(), 3, "bad-character"),
        ((HEAD + TAIL + "a\x1b[31m\n").encode(), 6, "bad-character"),
        ((HEAD + TAIL + "a\u202eb\n").encode(), 6, "bad-character"),
        ((HEAD + TAIL + "a\u2028b\n").encode(), 6, "bad-character"),
        ((HEAD + TAIL + "a\ufeffb\n").encode(), 6, "bad-character"),
        ((HEAD + 'a: "\\0"\n' + TAIL).encode(), 3, "bad-character"),
        ((HEAD + 'a: "\\u202e"\n' + TAIL).encode(), 3, "bad-character"),
        ((HEAD + '"\\u2028": a\n' + TAIL).encode(), 3, "bad-character"),
        ((HEAD + TAIL + "x" * 5_000_000).encode(), 1, "too-big"),
        ((HEAD + TAIL).encode() + b"\n" * LARGEST, 1, "too-big"),
    ],
)
def test_hostile_text(data: bytes, line: int, code: str, root: Path) -> None:
    """One problem at its line, whatever is in the file."""
    found = problem_of(data, root)
    assert (found.file, found.line, found.code) == ("drills/pull/extra.md", line, code)


def test_half_a_pair_written_out_is_refused(root: Path) -> None:
    """A lone surrogate by its escape: some YAML readers take it, none of ours does."""
    assert problem_of((HEAD + 'a: "\\ud800"\n' + TAIL).encode(), root).code in ("bad-character", "bad-yaml")


@pytest.mark.parametrize(
    "body",
    [
        "[" * 20_000,
        "![" * 10_000,
        "[](" * 7_000,
        "*a_" * 7_000,
        "[a][" * 5_000,
        "> " * 10_000,
        "".join(f"{'`' * n} " for n in range(200)),
        "\n".join(" " * n + "- a" for n in range(200)),
        "|".join("a" * 10_000),
        "&amp;" * 4_000,
        "\\" * 20_000,
    ],
)
def test_hostile_markdown_takes_little_time(body: str) -> None:
    """Ten times the largest entry, of what makes parsers slow."""
    began = time.perf_counter()
    parse(ENTRY, (HEAD + "---\n## Do\n" + body).encode())
    assert time.perf_counter() - began < 10


def test_nothing_is_lost_by_the_others(tmp_path: Path) -> None:
    """A library with a bad file is read as without it, and says so."""
    root = laid_over("id-in-capitals", tmp_path)
    (root / "drills/pull/extra.md").write_bytes(b"\xff")
    (root / "drills/pull/linked.md").symlink_to("extra.md")
    found = load(root)
    assert len(found.drills) == len(load(SMALL).drills)
    assert [problem.code for problem in found.problems] == ["bad-id", "bad-encoding", "symlink"]


def test_links_arent_followed(root: Path, tmp_path: Path) -> None:
    """Linked entries, folders, circles and links to nowhere are refused; other links are nobody's business."""
    outside = tmp_path / "outside"
    outside.mkdir()
    (outside / "real.md").write_text(HEAD + TAIL)
    drills = root / "drills"
    (drills / "pull" / "linked.md").symlink_to(outside / "real.md")
    (drills / "pull" / "lost.md").symlink_to("nowhere")
    (drills / "pull" / "round.md").symlink_to("round.md")
    (drills / "pull" / "ring").symlink_to("ring")
    (drills / "pull" / "up").symlink_to("..")
    (drills / "squat").symlink_to(outside)
    (drills / "top.md").symlink_to(outside / "real.md")
    (drills / "pull" / "notes.txt").symlink_to(outside / "real.md")
    found = load(root)
    assert [(problem.file, problem.code) for problem in found.problems] == [
        (f"drills/{name}", "symlink")
        for name in ("pull/linked.md", "pull/lost.md", "pull/round.md", "pull/up", "squat", "top.md")
    ]
    assert found.files == ()


def test_a_library_that_is_linked_as_a_whole_is_read(tmp_path: Path) -> None:
    """Only what lies inside drills/ mayn't be a link."""
    (tmp_path / "library").symlink_to(SMALL)
    assert load(tmp_path / "library").problems == ()


def test_odd_names(root: Path) -> None:
    """Names that can't be ids, can't be decoded or can't be printed are told so that they can be."""
    pull = root / "drills" / "pull"
    for name in (
        b"\xff.md",
        b"a\nb.md",
        b"a\x1b[31m.md",
        b".md",
        b".hidden.md",
        b"-a.md",
        b"a--b.md",
        "é.md".encode(),
        b"a b.md",
    ):
        (pull / os.fsdecode(name)).write_text("")
    (pull / "folder.md").mkdir()
    (pull / "folder.md" / "inside.md").write_text("")
    (pull / "more" / "deep").mkdir(parents=True)
    (pull / "more" / "deep" / "c.markdown").write_text("")
    (pull / "notes.txt").write_text("")
    (root / "drills" / "readme.md").mkdir()
    (root / "drills" / "pictures").mkdir()
    found = load(root)
    assert found.files == ()
    assert all(problem.file.isprintable() and problem.message.isprintable() for problem in found.problems)
    "".join(problem.file for problem in found.problems).encode()
    codes = [problem.code for problem in found.problems]
    assert (codes.count("bad-id"), codes.count("stray-file"), codes.count("unknown-folder"), len(codes)) == (
        9,
        2,
        1,
        12,
    )
    help_ = {problem.file: problem.help for problem in found.problems}
    assert help_["drills/pull/a b.md"] == "Rename it to `a-b.md`."
    assert help_["drills/pull/.md"] == ""


def test_pipes_arent_waited_for(root: Path) -> None:
    """A named pipe where an entry should be is refused at once."""
    os.mkfifo(root / "drills" / "pull" / "pipe.md")
    (problem,) = load(root).problems
    assert (problem.code, problem.message) == ("unreadable", "This isn't an ordinary file.")


def test_what_cant_be_opened_is_told(root: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A file or folder without permission: the reason is said, the rest is read."""
    (root / "drills" / "pull" / "extra.md").write_text("")
    (root / "drills" / "squat").mkdir()
    real_open, real_scan = os.open, os.scandir

    def no_open(path: Path, flags: int, *rest: int) -> int:
        if str(path).endswith("extra.md"):
            raise PermissionError(13, "Permission denied")
        return real_open(path, flags, *rest)

    def no_scan(path: str) -> object:
        if str(path).endswith("squat"):
            raise PermissionError(13, "Permission denied")
        return real_scan(path)

    monkeypatch.setattr(files.os, "open", no_open)
    monkeypatch.setattr(files.os, "scandir", no_scan)
    found = load(root)
    assert [(problem.file, problem.message) for problem in found.problems] == [
        ("drills/pull/extra.md", "This can't be read: permission denied."),
        ("drills/squat", "This folder can't be read: permission denied."),
    ]
    assert found.sources["extra"].lines == {"": 1}


def test_a_link_put_there_since_it_was_listed(root: Path) -> None:
    """Between listing and reading an entry became a link: it isn't followed."""
    path = root / "drills" / "pull" / "extra.md"
    path.symlink_to(SMALL / "drills" / "pull" / "start-hold.md")
    found = files.read(root, ENTRY)
    assert isinstance(found, Problem)
    assert found.code == "unreadable"


REAL = [path.read_bytes() for path in sorted(SMALL.rglob("*.md"))]
PIECES = (
    b"---\n",
    b"- ",
    b"[",
    b"]",
    b"{",
    b"}",
    b": ",
    b"&a ",
    b"*a",
    b"!!x ",
    b"\n",
    b'"',
    b"no",
    b"\xff",
    b"## Do\n",
    b"<b>",
)


@given(st.binary(max_size=300) | st.text(max_size=300).map(lambda text: text.encode("utf-8", "surrogatepass")))
@settings(max_examples=200, deadline=None)
def test_any_bytes_are_parsed_or_told(data: bytes) -> None:
    """Whatever the bytes, there is an answer, never an exception."""
    found = parse(ENTRY, data)
    assert (found.record is None) >= (not data)
    assert found.record is not None or found.problems


@given(st.randoms(use_true_random=False))
@settings(max_examples=200, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_any_damage_to_an_entry_is_parsed_or_told(rng: random.Random) -> None:
    """Real entries cut, doubled and spoilt here and there are parsed or told, at lines that are there."""
    data = rng.choice(REAL)
    for _ in range(rng.randint(1, 4)):
        place = rng.randrange(len(data) + 1)
        data = data[:place] + rng.choice(PIECES) + data[place + rng.choice((0, 0, 1, 5, 50)) :]
    for kind in ("drill", "fault"):
        found = parse(EntryFile("drills/x/extra.md", kind, "extra"), data)  # type: ignore[arg-type]
        assert found.record is not None or found.problems
        assert all(1 <= problem.line <= data.count(b"\n") + data.count(b"\r") + 2 for problem in found.problems)
