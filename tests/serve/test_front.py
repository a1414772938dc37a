"""What the server answers, to whom, and under which policy."""

import asyncio
import json
import logging
import re
from collections.abc import Iterator
from contextlib import closing
from html.parser import HTMLParser
from pathlib import Path
from typing import Any
from urllib.parse import quote

import pytest
from click.testing import CliRunner
from qr_read import qr_read
from serving import Visitor, small, visiting

from kb.ask import read
from kb.commands.group import drillpath
from kb.errors import DrillpathError
from kb.serve.app import served
from kb.serve.front import POLICY
from kb.show.page.address import form_at
from kb.show.page.pages import ALONE, page_at
from kb.show.page.prepared import prepare
from kb.show.page.render import html
from kb.show.page.stock import stock_of

PAGES = (
    "/",
    *(f"/{name}" for name in ALONE if name != "home"),
    "/library",
    "/fault/clean-bar-crashes",
    "/drill/tall-clean",
    "/position/clean-receive",
    "/lift/clean",
    "/equipment/broom",
    "/at-hand/full",
    "/graph/clean",
    "/find?q=bar+crashes",
    "/ask?fault=clean-bar-crashes&minutes=20",
    "/at-hand?have=broom&have=bar",
    "/catalogue",
    "/catalogue/drill",
    "/catalogue/drill/tall-clean",
    "/catalogue/ask_drills_for_fault?fault=clean-bar-crashes",
)
WRONG = {
    "/fault/clean-bar-crashs": 404,
    "/nothing": 404,
    "/home": 404,
    "/chain/clean-bar-crashes.no.such.kit": 404,
    "/assets/none.css": 404,
    "/assets/../app.py": 404,
    "/assets/keep.html": 404,
    "/at-hand?have=moon": 400,
    "/ask?fault=moon": 400,
    "/ask?fault=clean-bar-crashes&minutes=0": 400,
    "/ask?fault=clean-bar-crashes&minutes=%C2%B2": 400,
    "/find?q=" + "x" * 3000: 414,
    "/" + "x" * 900: 414,
    "/find?" + "&".join(f"a{n}=1" for n in range(100)): 400,
    "/catalogue/nothing": 404,
    "/catalogue?sql=select+1": 403,
    "/catalogue/drill?_where=1": 403,
    "/catalogue/drill?_facet=moon": 400,
    "/catalogue/drill?" + "_facet=stage&" * 6: 400,
    "/catalogue/ask_gear_for_drill?_facet=drill": 400,
    "/catalogue.db": 404,
}
CLOSED = [
    *(
        f"/-/{name}{ending}"
        for name in (
            "plugins",
            "settings",
            "databases",
            "actor",
            "logout",
            "permissions",
            "metadata",
            "versions",
            "threads",
            "config",
            "auth-token",
            "messages",
            "allow-debug",
            "patterns",
        )
        for ending in ("", ".json")
    ),
    "/-/static/table.js",
    "/_memory",
    "/_internal",
    "/:memory:",
    "/favicon.ico",
    "/catalogue/-/query",
    "/catalogue/drill.blob",
    "/catalogue/drill.jsono",
    "/catalogue/step_row/clean,0.blob?_blob_column=sizes",
]


@pytest.fixture(scope="module")
def visitor() -> Iterator[Visitor]:
    """A visitor to the small library's server."""
    with visiting(small()) as found:
        yield found


class Inline(HTMLParser):
    """Scripts, styles and handlers that stand in a page, which the policy would stop; and where it leads."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.found: list[str] = []
        self.links: list[str] = []
        self.text = ""
        self.feed(text)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        held = dict(attrs)
        self.links += [held[key] or "" for key in ("href", "src", "action") if key in held]
        if (
            tag == "style"
            or "style" in held
            or (tag == "script" and "src" not in held)
            or any(k[:2] == "on" for k in held)
        ):
            self.found.append(tag)

    def handle_data(self, data: str) -> None:
        self.text += data


@pytest.mark.parametrize("address", PAGES)
def test_every_kind_of_page_is_answered_under_the_policy(visitor: Visitor, address: str) -> None:
    """In one piece, nothing inline, nothing from elsewhere, no cookie."""
    got = visitor.get(address)
    read = Inline(got.text)
    assert got.status == 200
    assert got.headers["content-type"] == "text/html; charset=utf-8"
    assert got.headers["content-security-policy"] == POLICY
    assert "unsafe" not in POLICY
    assert got.headers["x-content-type-options"] == "nosniff"
    assert "set-cookie" not in got.headers
    assert int(got.headers["content-length"]) == len(got.body)
    assert read.found == []
    assert all(link.startswith(("/", "#", "?", "http://hall.test/")) for link in read.links)
    assert "Stop on pain, not on effort." in read.text


@pytest.mark.parametrize("address", PAGES)
def test_a_second_visit_costs_a_few_bytes(visitor: Visitor, address: str) -> None:
    """With the mark of the first the answer is that nothing has changed; with another it comes whole."""
    first = visitor.get(address)
    again = visitor.get(address, if_none_match=f'"other", W/{first.headers["etag"]}')
    assert (again.status, again.body) == (304, b"")
    assert again.headers["etag"] == first.headers["etag"]
    assert "content-length" not in again.headers
    assert visitor.get(address, if_none_match='"other"').status == 200


@pytest.mark.parametrize("address", [*PAGES, *WRONG])
def test_head_is_the_same_without_its_body(visitor: Visitor, address: str) -> None:
    """HEAD gives the status and headers of GET."""
    whole, head = visitor.get(address), visitor.get(address, "HEAD")
    assert (head.status, head.headers, head.body) == (whole.status, whole.headers, b"")


@pytest.mark.parametrize("method", ["POST", "PUT", "DELETE", "PATCH", "OPTIONS", "TRACE", "BREW", "get", ""])
@pytest.mark.parametrize("address", ["/", "/find?q=arms", "/catalogue/drill", "/catalogue.json", "/no"])
def test_nothing_but_reading(visitor: Visitor, method: str, address: str) -> None:
    """Any other method is refused, whatever it is called."""
    got = visitor.get(address, method)
    assert (got.status, got.headers["allow"]) == (405, "GET, HEAD")


@pytest.mark.parametrize(("address", "status"), WRONG.items())
def test_what_is_wrong_gets_a_plain_page_and_its_status(visitor: Visitor, address: str, status: int) -> None:
    """A page of ours, which says so and leads on, and is kept by nobody."""
    got = visitor.get(address)
    assert got.status == status
    assert got.headers["content-security-policy"] == POLICY
    assert got.headers["cache-control"] == "no-store"
    assert 'href="/find"' in got.text or 'action="/ask"' in got.text
    assert "Traceback" not in got.text


@pytest.mark.parametrize("address", CLOSED)
def test_what_is_not_ours_is_closed(visitor: Visitor, address: str) -> None:
    """Datasette's own addresses lead to our page that there is no such page."""
    got = visitor.get(address)
    assert got.status == 404
    assert "datasette" not in got.text.lower()


@pytest.mark.parametrize(
    ("address", "nearest"),
    [
        ("/fault/clean-bar-crashs", "/fault/clean-bar-crashes"),
        ("/drill/tall-claen", "/drill/tall-clean"),
        ("/lift/cleen", "/lift/clean"),
        ("/bar crashes on shoulders", "/fault/clean-bar-crashes"),
        ("/catalogue/faults", "/catalogue/fault"),
    ],
)
def test_the_nearest_is_named(visitor: Visitor, address: str, nearest: str) -> None:
    """A slip of the finger leads to what was meant."""
    got = visitor.get(address.replace(" ", "%20"))
    assert got.status == 404
    assert f'href="{nearest}"' in got.text


def test_a_sentence_names_the_nearest(visitor: Visitor) -> None:
    """Also in a query."""
    got = visitor.get("/ask?fault=clean-bar-crashes&kit=hal")
    assert got.status == 400
    assert "There is no kit &#39;hal&#39;. Did you mean" in got.text
    assert visitor.get("/ask?fault=" + "y" * 1500).text.count("y") < 1700


def test_what_is_said_back_is_inert(visitor: Visitor) -> None:
    """Markup in an address is text on the page."""
    for address in ("/%3Cscript%3E", "/find?q=%3Cscript%3E", "/ask?fault=%3Cscript%3E", "/at-hand?have=%3Cscript%3E"):
        assert "<script>" not in visitor.get(address).text


@pytest.mark.parametrize(
    ("address", "key"),
    [
        ("/fault/clean-bar-crashes.json", "version"),
        ("/drill/tall-clean.json", "version"),
        ("/find.json?q=bar+crashes", "faults"),
        ("/ask.json?fault=clean-bar-crashes&minutes=30", "routes"),
        ("/at-hand.json", "kits"),
        ("/at-hand.json?have=broom&have=bar", "kits"),
        ("/at-hand/full.json", "kits"),
        ("/catalogue/drill.json", "rows"),
    ],
)
def test_the_same_for_programs(visitor: Visitor, address: str, key: str) -> None:
    """JSON stands beside every page that is an answer."""
    got = visitor.get(address)
    assert got.status == 200
    assert got.headers["content-type"] == "application/json; charset=utf-8"
    assert key in got.json


def test_pages_name_their_answer_for_programs(visitor: Visitor) -> None:
    """With the query that the page answers."""
    for page in (
        "/at-hand?have=broom&have=bar",
        "/find?q=bar+crashes",
        "/ask?fault=clean-bar-crashes&minutes=30",
        "/fault/clean-bar-crashes",
    ):
        links = Inline(visitor.get(page).text).links
        (link,) = {link for link in links if ".json" in link}
        assert visitor.get(link).status == 200


@pytest.mark.parametrize(
    ("address", "status"),
    [
        ("/fault/moon.json", 404),
        ("/faults.json", 404),
        ("/ask.json?fault=moon", 400),
        ("/ask.json", 404),
        ("/catalogue/moon.json", 404),
        ("/catalogue/drill.json?_sort=moon", 400),
        ("/find.json?q=" + "x" * 3000, 414),
    ],
)
def test_programs_are_refused_in_json(visitor: Visitor, address: str, status: int) -> None:
    """One sentence, and the nearest names."""
    got = visitor.get(address)
    assert got.status == status
    assert got.json["version"] == 1
    assert isinstance(got.json["error"], str)
    assert isinstance(got.json["nearest"], list)


def test_the_librarys_page_leads_to_the_tables(visitor: Visitor) -> None:
    """An address that answers; in a folder, which has none, it is the sentence itself."""
    links = Inline(visitor.get("/library").text).links
    assert "/catalogue" in links
    assert visitor.get("/catalogue").status == 200
    with closing(read.open_catalogue(small())) as db:
        stock = stock_of(db)
        page = page_at("library", stock, lambda fault: prepare(stock, fault))
    text = html(page, form_at("library"))
    assert "#tables" in Inline(text).links
    assert 'id="tables"' in text
    assert not any("catalogue" in link for link in Inline(text).links)


def test_several_values_of_a_field_are_one_list(visitor: Visitor) -> None:
    """Ticks come as one field many times, links as one field with commas."""
    ticked, listed = visitor.get("/at-hand?have=broom&have=bar"), visitor.get("/at-hand?have=broom,bar")
    assert ticked.body == listed.body


def test_a_slash_at_the_end_changes_nothing(visitor: Visitor) -> None:
    """An address typed with one slash too many is still understood."""
    assert visitor.get("/fault/clean-bar-crashes/").body == visitor.get("/fault/clean-bar-crashes").body


def test_the_sitemap_lists_every_page(visitor: Visitor) -> None:
    """Whole addresses, at the host that was asked; an unlikely host is not said back."""
    got = visitor.get("/sitemap.xml")
    found = re.findall("<loc>(.*?)</loc>", got.text)
    assert {"http://hall.test/", "http://hall.test/fault/clean-bar-crashes"} <= set(found)
    assert len(found) == len(set(found))
    assert all(visitor.get(each.removeprefix("http://hall.test")).status == 200 for each in found[::9])


def test_the_code_on_paper_leads_back(visitor: Visitor) -> None:
    """Read by an independent reader of ISO/IEC 18004 codes; and only pages of this server can be asked for."""
    got = visitor.get("/qr?to=/chain/a.b.clean.hall%3Fx%3D1")
    assert got.status == 200
    assert qr_read(got.text) == "http://hall.test/chain/a.b.clean.hall?x=1"
    for elsewhere in ("//other.test/", "http://other.test", "", "/" + "a" * 400, "/a b"):
        assert visitor.get(f"/qr?to={quote(elsewhere)}").status == 400


def test_a_host_that_is_none_is_not_said_back(visitor: Visitor) -> None:
    """Whatever a visitor claims."""

    async def claimed() -> str:
        events = []
        scope = {
            "type": "http",
            "method": "GET",
            "path": "/sitemap.xml",
            "query_string": b"",
            "headers": [(b"host", b'a"><b>')],
        }

        async def send(event: dict[str, Any]) -> None:
            events.append(event)

        await visitor.app({**scope, "server": None}, send, send)  # type: ignore[arg-type]
        return str(events[1]["body"])

    assert "http://localhost:80/fault/" in visitor.run(claimed())


def test_the_worker_that_keeps_pages_is_asked_for_each_time(visitor: Visitor) -> None:
    """It says which pages there are; stylesheets may be kept a little."""
    assert visitor.get("/sw.js").headers["cache-control"] == "no-cache"
    assert visitor.get("/assets/style.css").headers["cache-control"] == "max-age=300"
    assert visitor.get("/assets/tables.css").status == 200
    assert visitor.get("/manifest.webmanifest").json["name"] == "drillpath"


def test_a_fault_of_ours_is_a_plain_page(
    visitor: Visitor, monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> None:
    """Whoever runs the server sees what broke, a visitor doesn't."""
    monkeypatch.setattr("kb.serve.views.find_page", lambda *_: 1 / 0)
    with caplog.at_level(logging.CRITICAL + 1, "kb.serve.front"):
        got = visitor.get("/find?q=arms")
    assert got.status == 500
    assert "ZeroDivisionError" not in got.text


def test_a_catalogue_that_cannot_be_read_is_said(tmp_path: Path) -> None:
    """503, and again when asked again."""
    (tmp_path / "catalogue.db").write_text("no catalogue")
    with visiting(tmp_path / "catalogue.db") as visitor:
        assert [visitor.get("/").status for _ in range(2)] == [503, 503]
        assert visitor.get("/fault/any.json").json["error"]
    with visiting(tmp_path / "none.db") as visitor:
        assert visitor.get("/").status == 503


def test_it_begins_and_ends_with_the_server(visitor: Visitor) -> None:
    """The server says when; a socket that would stay open is closed at once."""
    said: list[str] = []

    async def send(event: dict[str, Any]) -> None:
        said.append(event["type"])

    async def lived(*, prepare: bool) -> None:
        events = iter([{"type": "lifespan.startup"}, {"type": "lifespan.shutdown"}])

        async def receive() -> dict[str, Any]:
            await asyncio.sleep(0.01)
            return next(events)

        app = served(small(), prepare=prepare)
        await app({"type": "lifespan"}, receive, send)
        await app({"type": "websocket"}, receive, send)

    for ahead in (True, False):
        visitor.run(lived(prepare=ahead))
    assert said == 2 * ["lifespan.startup.complete", "lifespan.shutdown.complete", "websocket.close"]


def test_a_stopping_server_answers_no_more() -> None:
    """What needs every answer ends soon after."""
    with visiting(small()) as other:
        other.get("/")
        other.run(other.app.desk.reading()).closed = True
        with pytest.raises(DrillpathError, match="stopping"):
            other.run(other.app.desk.reading()).answers("clean-bar-crashes")  # type: ignore[arg-type]


def test_a_drill_is_marked_as_instructions(visitor: Visitor) -> None:
    """By attributes, as the policy forbids data that stands in a script: its name, and what to do."""
    text = visitor.get("/drill/tall-clean").text
    assert 'itemscope itemtype="https://schema.org/HowTo"' in text
    assert '<h1 itemprop="name">Tall clean</h1>' in text
    assert text.count('itemprop="step"') >= 1
    assert "itemscope" not in visitor.get("/fault/clean-bar-crashes").text


@pytest.mark.parametrize(
    ("address", "command"),
    [
        ("/find.json?q=bar+crashes", ["find", "bar crashes"]),
        ("/drill/tall-clean.json", ["show", "tall-clean"]),
        ("/fault/clean-bar-crashes.json", ["show", "clean-bar-crashes"]),
        ("/at-hand.json", ["kits"]),
        (
            "/ask.json?fault=clean-bar-crashes&minutes=30&kit=hall",
            ["chain", "clean-bar-crashes", "--minutes", "30", "--kit", "hall"],
        ),
    ],
)
def test_a_program_is_told_what_the_command_tells(visitor: Visitor, address: str, command: list[str]) -> None:
    """The same JSON as `--json`, key by key."""
    root = small().parents[1]
    said = CliRunner().invoke(drillpath, ["--library", str(root), *command, "--json"])
    assert said.exit_code == 0, said.output
    assert visitor.get(address).json == json.loads(said.stdout)
