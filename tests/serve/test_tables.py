"""The tables beside the pages: described, narrowed, asked by name, and closed to all else unless it is opened."""

import sqlite3
from collections.abc import Iterator
from contextlib import closing

import pytest
from datasette.app import Datasette
from datasette.plugins import pm
from serving import Visitor, small, visiting

from kb.make.describe import tables
from kb.serve.canned import CANNED, FACETS
from kb.serve.front import POLICY

PARAMETERS = {"fault": "clean-bar-crashes", "cause": "", "drill": "high-hang-clean", "item": "bar", "lift": "clean"}
NUMBERS = "with recursive a(n) as (select 1 union all select n + 1 from a) select sum(n) from a"


@pytest.fixture(scope="module")
def visitor() -> Iterator[Visitor]:
    """A visitor to a server that is closed to SQL."""
    with visiting(small()) as found:
        yield found


@pytest.fixture(scope="module")
def owner() -> Iterator[Visitor]:
    """Who runs a server that is open to SQL."""
    with visiting(small(), sql=True) as found:
        yield found


def test_every_table_can_be_looked_at(visitor: Visitor) -> None:
    """Each that is described, with its description."""
    first, every = (visitor.get(f"/catalogue{more}").text for more in ("", "?_show_hidden=1"))
    for table in tables():
        got = visitor.get(f"/catalogue/{table.name}")
        assert got.status == 200, table.name
        assert f'href="/catalogue/{table.name}"' in every
        assert table.says.split(",")[0].split(";")[0].split('"')[0].split("'")[0] in got.text, table.name
    assert "step_row" not in first


def test_columns_say_what_they_are_and_in_which_unit(visitor: Visitor) -> None:
    """As tables.sql has it."""
    text = visitor.get("/catalogue/drill").text
    (drill,) = (table for table in tables() if table.name == "drill")
    with_units = [column for column in drill.columns if column.unit]
    assert with_units
    for column in with_units:
        assert f"<dt>{column.name}</dt><dd>{column.says} ({column.unit})" in text


@pytest.mark.parametrize(("table", "columns"), FACETS.items())
def test_a_table_is_narrowed_by_a_touch(visitor: Visitor, table: str, columns: list[str]) -> None:
    """The values of some columns are links, which lead to those rows alone."""
    text = visitor.get(f"/catalogue/{table}").text
    for column in columns:
        assert f"<summary>By {column}</summary>" in text
    link = text.partition(f"<summary>By {columns[0]}</summary>")[2].partition('<a href="')[2].partition('"')[0]
    got = visitor.get(link.replace("&amp;", "&").removeprefix("http://hall.test"))
    assert got.status == 200
    assert "where" in got.text


@pytest.mark.parametrize("name", CANNED)
def test_a_question_by_name(visitor: Visitor, name: str) -> None:
    """With what it is narrowed to it gives some of what it gives without, as the catalogue itself does."""
    sql = CANNED[name].sql
    fields = {key: value for key, value in PARAMETERS.items() if f":{key}" in sql}
    query = "&".join(f"{key}={value}" for key, value in fields.items())
    narrow, wide = (visitor.get(f"/catalogue/{name}.json{more}").json["rows"] for more in (f"?{query}", ""))
    with closing(sqlite3.connect(small())) as db:
        assert narrow == [list(row) for row in db.execute(sql, fields)]
    assert 0 < len(narrow) < len(wide) or name == "ask_easier_versions"
    page = visitor.get(f"/catalogue/{name}?{query}")
    assert CANNED[name].title in page.text
    for key, value in fields.items():
        assert f'name="{key}" value="{value}"' in page.text
    assert CANNED[name].title in visitor.get("/catalogue").text


def test_a_row_names_what_names_it(visitor: Visitor) -> None:
    """A drill's row leads to the rows of other tables."""
    text = visitor.get("/catalogue/drill/tall-clean").text
    assert "Named by" in text
    assert 'href="/catalogue/drill_lift?drill=tall-clean"' in text


def test_sorted_paged_and_empty(visitor: Visitor) -> None:
    """Headings sort; more rows are a link away; none is said."""
    assert 'aria-sort="ascending"' in visitor.get("/catalogue/drill?_sort=work_s").text
    assert 'aria-sort="descending"' in visitor.get("/catalogue/drill?_sort_desc=work_s").text
    assert "More rows" in visitor.get("/catalogue/name?_size=3").text
    assert "No rows." in visitor.get("/catalogue/drill?stage=moon").text
    assert "No rows." in visitor.get("/catalogue/ask_gear_for_drill?drill=moon").text


def test_csv_is_for_taking_along(visitor: Visitor) -> None:
    """As text; as a file where that is asked."""
    assert visitor.get("/catalogue/drill.csv").text.startswith("id,name,")
    got = visitor.get("/catalogue/drill.csv?_dl=1")
    assert "attachment" in got.headers["content-disposition"]
    assert visitor.get("/catalogue/drill.csv?_stream=1").status == 400


@pytest.mark.parametrize(
    "address",
    [
        "/catalogue?sql=select+1",
        "/catalogue.json?sql=select+1",
        "/catalogue.csv?sql=select+1",
        "/catalogue/drill?_where=1",
        "/catalogue/drill.json?_where=1",
        "/catalogue/drill?sql=select+1",
    ],
)
def test_sql_is_closed_to_visitors(visitor: Visitor, address: str) -> None:
    """Unless whoever runs the server says so."""
    assert visitor.get(address).status == 403
    assert "<textarea" not in visitor.get("/catalogue").text


def test_sql_is_open_where_it_is_said(owner: Visitor) -> None:
    """One question, which only reads, and not for long; the whole file too."""
    assert owner.get("/catalogue?sql=select+41%2B1+as+n").text.count("<td>42</td>") == 1
    assert owner.get("/catalogue/drill.json?_where=work_s>100").status == 200
    assert "<textarea" in owner.get("/catalogue").text
    assert owner.get("/catalogue.db").body == small().read_bytes()
    assert owner.get(f"/catalogue?sql={NUMBERS.replace(' ', '+').replace('+ 1', '%2B1')}").status == 400
    for bad in (
        "drop+table+drill",
        "insert+into+drill+values(1)",
        "pragma+journal_mode=wal",
        "select+1;select+2",
        "moon",
    ):
        got = owner.get(f"/catalogue?sql={bad}")
        assert got.status == 400 or "error" in got.text, bad
        assert got.headers["content-security-policy"] == POLICY


def test_the_file_is_never_written(owner: Visitor) -> None:
    """Opened as unchanging: no journal, no lock beside it."""
    before = small().read_bytes()
    owner.get("/catalogue/drill")
    assert small().read_bytes() == before
    assert [each.name for each in small().parent.glob("catalogue*")] == ["catalogue.db"]


def test_hostile_text_in_the_tables_is_inert(visitor: Visitor) -> None:
    """What is asked for is text on the page."""
    for address in (
        "/catalogue/drill?name=%3Cscript%3E",
        "/catalogue/drill?_search=%3Cscript%3E",
        "/catalogue/ask_drills_for_fault?fault=%22%3E%3Cscript%3E",
    ):
        assert "<script" not in visitor.get(address).text


def test_templates_lead_where_pages_do(visitor: Visitor) -> None:
    """The head of a table's page is that of our own."""
    pages, data = (visitor.get(each).text.partition("<nav")[2].partition("</nav>")[0] for each in ("/", "/catalogue"))
    assert pages.split() == data.split()


def test_other_datasettes_are_left_alone() -> None:
    """Our plugin is one, registered once, and only says words."""
    for _ in range(2):
        with visiting(small()):
            pass
    ours = [plugin for plugin in pm.get_plugins() if getattr(plugin, "__name__", "") == "drillpath"]
    assert len(ours) == 1
    assert Datasette().app()


def test_what_datasette_moves_is_moved(visitor: Visitor) -> None:
    """A filter that is sent as a form becomes an address that can be shared."""
    got = visitor.get("/catalogue/drill?_filter_column=stage&_filter_op=exact&_filter_value=join")
    assert got.status == 302
    assert got.headers["location"] == "/catalogue/drill?stage__exact=join"
    assert visitor.get(got.headers["location"]).status == 200
