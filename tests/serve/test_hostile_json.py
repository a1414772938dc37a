"""Harm in entries is data in every answer for programs and in every script: no markup, the right type, no guessing."""

import json
import re
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

import pytest
from hostile_library import HARM, hostile
from serving import Got, Visitor, visiting

from kb.ask import read
from kb.make import catalogue as made
from kb.serve.reading import Reading
from kb.show.page.pages import page_at
from kb.show.page.site import write_site

MARKUP = re.compile(r"[<>&\u2028\u2029]")
"""What ends the script that data stands in, or begins one."""

SCRIPTS = re.compile(r"</?script|<!--|<img|<svg", re.IGNORECASE)


@pytest.fixture(scope="module")
def harmful(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A catalogue in which every text means harm."""
    path = tmp_path_factory.mktemp("hostile-json") / "catalogue.db"
    made.write(hostile(), path)
    return path


@pytest.fixture(scope="module")
def visitor(harmful: Path) -> Iterator[Visitor]:
    """A visitor to its server."""
    with visiting(harmful) as found:
        yield found


def _sound(got: Got) -> str:
    """What is wrong with an answer for programs."""
    if got.headers["content-type"] != "application/json; charset=utf-8":
        return got.headers["content-type"]
    if (
        got.headers["x-content-type-options"] != "nosniff"
        or "default-src 'none'" not in got.headers["content-security-policy"]
    ):
        return "a browser may guess"
    return "markup" if MARKUP.search(got.text) else ""


def _holds(data: object) -> bool:
    return HARM in json.dumps(data, ensure_ascii=False).replace('\\"', '"')


@pytest.mark.no_cover
def test_every_served_answer_is_inert_and_whole(harmful: Path, visitor: Visitor) -> None:
    """The very data of the page, harm included, under its own type."""
    now, held = Reading(harmful), 0
    for path in now.paths():
        page = page_at(path, now.stock, now.answers)
        if page.data is None:
            continue
        got = visitor.get(f"/{path}.json")
        assert got.status == 200, path
        assert _sound(got) == "", path
        assert got.json == json.loads(json.dumps(page.data)), path
        held += _holds(got.json)
    assert held > 20


@pytest.mark.parametrize(
    "address",
    [
        "/find.json?q=bar+crashes",
        "/ask.json?fault=clean-bar-crashes&minutes=30",
        "/at-hand.json?have=broom",
        "/fault/%3C%2Fscript%3E%3Cscript%3Eharmed()%3C%2Fscript%3E.json",
        "/ask.json?fault=%3Cscript%3E",
    ],
)
def test_answers_to_questions_are_inert(address: str, visitor: Visitor) -> None:
    """Also where they are refused, and say back what was asked."""
    assert _sound(visitor.get(address)) == ""


def test_tables_say_what_they_are(visitor: Visitor) -> None:
    """Rows hold the harm as it is, under a type that no browser takes for a page."""
    for ending, kind in (("json", "application/json"), ("csv", "text/plain")):
        got = visitor.get(f"/catalogue/drill.{ending}")
        assert got.headers["content-type"].startswith(kind)
        assert got.headers["x-content-type-options"] == "nosniff"
        assert "harmed()" in got.text


def _scripts(visitor: Visitor) -> dict[str, str]:
    names = ("assets/index.js", "assets/chains.js", "assets/graph-clean.js", "sw.js", "manifest.webmanifest")
    return {name: visitor.get(f"/{name}").text for name in names}


def test_no_script_holds_what_would_end_it(visitor: Visitor) -> None:
    """Data in scripts could stand in a page; and the index holds the harm."""
    found = _scripts(visitor)
    for name, text in found.items():
        assert not SCRIPTS.search(text), name
    assert _holds(json.loads(found["assets/index.js"].partition("=")[2].rstrip(";\n")))


@pytest.mark.no_cover
def test_files_are_inert_too(harmful: Path, tmp_path: Path) -> None:
    """Of a folder nobody says what its files are."""
    with closing(read.open_catalogue(harmful)) as db:
        write_site(db, tmp_path / "pages")
    texts = {path: path.read_text("utf-8") for path in (tmp_path / "pages").rglob("*.json")}
    assert sum(_holds(json.loads(text)) for text in texts.values()) > 20
    assert [path for path, text in texts.items() if MARKUP.search(text)] == []


def test_harm_that_is_let_through_is_noticed(harmful: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The checks above can fail."""
    monkeypatch.setattr("kb.serve.answer.inert", json.dumps)
    monkeypatch.setattr("kb.show.page.index_script.inert", json.dumps)
    with visiting(harmful) as visitor:
        assert _sound(visitor.get("/drill/tall-clean.json")) == "markup"
        assert SCRIPTS.search(_scripts(visitor)["assets/index.js"])
    monkeypatch.setattr("kb.serve.answer.DATA", "text/html")
    with visiting(harmful) as visitor:
        assert _sound(visitor.get("/drill/tall-clean.json")) == "text/html"
