"""Every page: it is set, says what it must, leads nowhere else, and holds nothing that a strict policy forbids."""

import json
import re
from collections.abc import Iterator
from html.parser import HTMLParser
from pathlib import Path, PurePosixPath

import pytest
from site_written import answers_of, site_of, with_ways

from kb.ask import read
from kb.intake.class_file import demo_class
from kb.make.library import Library
from kb.show.page.address import SERVED, file_of
from kb.show.page.pages import Answers, page_at, paths
from kb.show.page.render import html
from kb.show.page.shared import drawn, shared_file, shared_names
from kb.show.page.stock import Stock, stock_of


@pytest.fixture(scope="module")
def stock(db: read.sqlite3.Connection, site: Path) -> Stock:
    """The shipped library as pages see it."""
    return with_ways(stock_of(db, demo_class(db)), site)


@pytest.fixture(scope="module")
def site(library: Library, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Its pages, written as files once a run."""
    return site_of(library, tmp_path_factory)


@pytest.fixture(scope="module")
def answers(site: Path, stock: Stock) -> Answers:
    """Every fault's answers, those that the files were made from."""
    return answers_of(site, stock)


@pytest.fixture(scope="module", params=[5, pytest.param(1, marks=pytest.mark.exhaustive)])
def files(request: pytest.FixtureRequest, stock: Stock, answers: Answers, site: Path) -> dict[str, str]:
    """Every page as a file of a folder, by its path; of chains and sessions those of each fifth fault, or of all."""
    taken = set(list(stock.faults)[:: request.param])

    def is_taken(path: str) -> bool:
        kind, _, name = path.partition("/")
        return kind not in ("chain", "session") or name.partition(".")[0] in taken

    return {path: (site / file_of(path)).read_text("utf-8") for path in filter(is_taken, paths(stock, answers))}


@pytest.fixture(scope="module")
def reads(files: dict[str, str]) -> "dict[str, Read]":
    """What a browser would make of each."""
    return {path: Read(text) for path, text in files.items()}


class Read(HTMLParser):
    """What a browser would follow, run or style by, and the ids and the text there are."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.links: list[str] = []
        self.forbidden: list[str] = []
        self.ids: list[str] = []
        self.headings: list[int] = []
        self.unnamed: list[str] = []
        self.feed(text)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Take up one element."""
        held = dict(attrs)
        self.links += [value for key in ("href", "src", "action") if (value := held.get(key)) is not None]
        self.ids += [held["id"] or ""] if "id" in held else []
        self.headings += [int(tag[1])] if re.fullmatch("h[1-6]", tag) else []
        if tag == "img" and "alt" not in held:
            self.unnamed.append(str(held))
        scripted = tag == "script" and "src" not in held
        styled = tag == "style" or "style" in held
        handled = [key for key in held if key.startswith("on")]
        if scripted or styled or handled:
            self.forbidden.append(f"<{tag} {handled}>")


def resolved(path: str, link: str) -> str:
    """The file that a link of the page at `path` leads to."""
    parts: list[str] = []
    for part in (PurePosixPath(file_of(path)).parent / link.split("?")[0].split("#")[0]).parts:
        if part == "..":
            parts.pop()
        else:
            parts.append(part)
    return "/".join(parts)


def test_every_kind_of_page_is_there(files: dict[str, str]) -> None:
    """Home, faults, find, at hand, ask, lifts, drills, graph, library, and one for each entry and chain."""
    kinds = {path.partition("/")[0] for path in files}
    assert kinds == set(
        """home faults find at-hand ask lifts drills graph library class
        fault chain drill position lift path plan session equipment""".split()
    )


def test_nothing_is_missing_and_nothing_is_there_besides(site: Path, stock: Stock, answers: Answers) -> None:
    """Every page, every shared file, the answers for programs beside pages, and the worker that keeps them."""
    there = {path.relative_to(site).as_posix() for path in site.rglob("*") if path.is_file()}
    every = list(paths(stock, answers))
    data = {name for name in there if name.endswith(".json")}
    assert there - data == {file_of(path) for path in every} | set(shared_names(stock, drawn(stock))) | {"sw.js"}
    assert data < {f"{path}.json" for path in every}


@pytest.mark.no_cover
def test_every_link_leads_to_a_page_or_a_shared_file(reads: dict[str, Read], site: Path) -> None:
    """In a folder nothing is missing, and nothing leads to another origin."""
    there = {path.relative_to(site).as_posix() for path in site.rglob("*") if path.is_file()}
    for path, found in reads.items():
        for link in found.links:
            assert not re.match(r"[a-z]+:|//|/", link), (path, link)
            if not link.startswith("#"):
                assert resolved(path, link) in there, (path, link)


def test_nothing_stands_inline(reads: dict[str, Read]) -> None:
    """No script, style or handler in the markup: the policy forbids them."""
    for path, found in reads.items():
        assert found.forbidden == [], path


def test_markup_is_sound(files: dict[str, str], reads: dict[str, Read]) -> None:
    """One first heading, no level left out, no id twice, every picture has its words, the language is said."""
    for path, text in files.items():
        found = reads[path]
        assert found.headings.count(1) == 1, path
        assert all(b - a <= 1 for a, b in zip(found.headings, found.headings[1:], strict=False)), path
        assert len(found.ids) == len(set(found.ids)), (path, sorted(found.ids))
        assert found.unnamed == [], path
        assert '<html lang="en">' in text


def test_every_page_carries_the_cautions(files: dict[str, str]) -> None:
    """The usual line, and that no qualified coach has reviewed the library."""
    for path, text in files.items():
        assert "Stop on pain, not on effort." in text, path
        assert "No qualified coach has reviewed this library yet." in text, path


def _leveled(text: str) -> str:
    """A page with every address replaced by a mark, and the mark of its form."""
    text = re.sub(r'(href|src|action|data-up)="[^"]*"', r'\1="…"', text)
    return re.sub(r'data-static="\w+"', "", text)


@pytest.mark.no_cover
def test_served_and_in_a_folder_they_are_equal_but_for_addresses(
    files: dict[str, str], stock: Stock, answers: Answers, site: Path
) -> None:
    """Over all kinds: one set of templates, one renderer, and the same answer for programs beside them."""
    kinds: dict[str, int] = {}
    for path, text in files.items():
        kind = path.partition("/")[0]
        kinds[kind] = kinds.get(kind, 0) + 1
        if kinds[kind] > 12 or kind == "class":
            continue  # a class is planned anew each time: on a busy machine less is proved of it within its seconds
        page = page_at(path, stock, answers)
        assert _leveled(html(page, SERVED)) == _leveled(text)
        beside = site / f"{path}.json"
        assert beside.exists() == (page.data is not None), path
        if page.data is not None:
            assert json.loads(beside.read_text("utf-8")) == json.loads(json.dumps(page.data)), path


def test_pages_are_small(files: dict[str, str]) -> None:
    """At most 60 kB, charts included; chains at most 25 MB a thousand."""
    assert max(len(text.encode()) for text in files.values()) <= 60_000
    chains = [len(text.encode()) for path, text in files.items() if path.startswith("chain/")]
    assert sum(chains) / len(chains) <= 25_000


def test_a_chain_page_says_all_a_coach_needs(files: dict[str, str], stock: Stock, answers: Answers) -> None:
    """Each drill by name, in order, with its cue and its standard, and the chart's list for who hears the page."""
    for fault in list(stock.faults)[::10]:
        for name, asked in answers(fault).answers.items():
            text = files[f"chain/{name}"]
            if asked.found is None:
                assert "No chain with this gear" in text
                continue
            at = 0
            for entry in asked.found.routes[0].entries:
                at = text.index(f'drill/{entry.drill.id}.html">', at)
                assert entry.drill.standard.seen.split(",")[0].replace("'", "&#39;") in text
            assert '<ol class="heard">' in text


def test_a_question_has_one_page_however_it_is_reached(stock: Stock, answers: Answers) -> None:
    """Kits that lead to the same chain lead to the same page, and each page has one chain."""
    for fault in list(stock.faults)[::4]:
        prepared = answers(fault)
        assert set(prepared.names.values()) == set(prepared.answers)
        for (cause, lift, kit), name in prepared.names.items():
            asked = prepared.answers[name]
            assert (asked.cause, asked.lift.id) == (cause, lift)
            assert kit in asked.kits


def test_the_data_beside_a_page_is_the_answer_of_the_command(stock: Stock, answers: Answers) -> None:
    """The same shapes as `--json`: versioned, and plain JSON."""
    for path in ("fault/early-arm-bend", "drill/full-clean", "lift/jerk"):
        data = page_at(path, stock, answers).data
        assert data is not None
        assert json.loads(json.dumps(data))["version"] == 1


def _shared(stock: Stock, db: read.sqlite3.Connection, answers: Answers) -> Iterator[tuple[str, bytes]]:
    for name in shared_names(stock, {}):
        yield name, shared_file(name, db, stock, answers, {})


def test_shared_files_name_no_other_origin(stock: Stock, db: read.sqlite3.Connection, answers: Answers) -> None:
    """Our own scripts and styles fetch nothing from elsewhere."""
    for name, held in _shared(stock, db, answers):
        if "vis-network" not in name:
            found = set(re.findall(rb"https?://[^\s\"')]+", held)) - {b"http://www.w3.org/2000/svg"}
            assert not found, (name, found)


@pytest.mark.parametrize(
    "name", ["assets/../site.py", "assets/", "assets/.hidden", "figures/none.svg", "assets/graph-no.js"]
)
def test_no_other_file_is_shared(name: str, stock: Stock, db: read.sqlite3.Connection, answers: Answers) -> None:
    """Nothing outside the folder of shared files can be reached."""
    with pytest.raises(KeyError):
        shared_file(name, db, stock, answers, {})
