"""Whatever is sent as an address: an answer with a status that says what it is, and never a fault of ours."""

import gc
import logging
from collections.abc import Iterator

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from serving import Visitor, small, visiting

from kb.serve.canned import CANNED
from kb.serve.front import POLICY

# where one facet can't be found Datasette forgets the others that it has begun; only a collector of garbage sees it
pytestmark = pytest.mark.filterwarnings("ignore:coroutine '.*(Facet|TableView).*' was never awaited:RuntimeWarning")

EXPECTED = {200, 301, 302, 304, 400, 403, 404, 405, 414}

WORDS = (
    "fault chain drill position lift equipment graph at-hand path plan session library faults find ask"
    " catalogue assets figures clean-bar-crashes tall-clean clean snatch full hall broom drill.json"
    " fault.csv sw.js sitemap.xml home - .. . ~ %00 %2F %2e%2e %5c %ff %c3%28 %0d%0a %u0041 % %%"
    " clean-bar-crashes.pulled-short.clean.full step_row search search_data clean.full"
    " clean.full.20.none 1,2,3 ~2F ~ sqlite_master name %22 %27--"
).split()
FIELDS = (
    "q fault lift kit have minutes load cause holds _sort _sort_desc _facet _facet_array _facet_date"
    " _facet_size _next _size _search _searchmode _col _nocol _nl _shape _labels _where sql"
    " _filter_column _filter_op _filter_value _json _trace _context _extra _format stage"
    " name__contains name__gt name__in name__arraycontains name__date work_s__exact _through"
    " _timelimit _ttl _stream _dl _show_hidden _hide_sql _header _nocount _nofacet _blob_column"
    " _next_url drill item"
).split()
VALUES = (
    "clean-bar-crashes tall-clean bar broom full hall 20 0 -1 1e9 99999999999999999999 NaN light"
    " working max on off id name stage zz %00 %ff%fe %22 ' ( * \" NEAR( [] {} null objects array"
    " object arrays arrayfirst 2026-01-01"
).split()

raw = st.text(alphabet=st.characters(max_codepoint=255, exclude_characters="?# "), max_size=12)
part = st.one_of(st.sampled_from(WORDS), raw)
paths = st.lists(part, max_size=4).map(lambda parts: "/" + "/".join(parts))
pair = st.tuples(st.one_of(st.sampled_from(FIELDS), raw), st.one_of(st.sampled_from(VALUES), raw))
queries = st.lists(pair, max_size=5).map(lambda pairs: "&".join(f"{name}={value}" for name, value in pairs))
methods = st.sampled_from(["GET", "GET", "GET", "HEAD", "POST", "OPTIONS", "BREW"])
tables = st.sampled_from(["drill", "fault", "search", "drills_for_fault", "meta", "step_row", *CANNED])


@pytest.fixture(autouse=True)
def collected() -> Iterator[None]:
    """What Datasette leaves behind is collected where it is expected."""
    yield
    gc.collect()


@pytest.fixture(scope="module", params=[False, True], ids=["closed", "sql"])
def visitor(request: pytest.FixtureRequest) -> Iterator[Visitor]:
    """A visitor to the small library's server, closed to SQL and open to it."""
    logging.getLogger("kb.serve.front").setLevel(logging.ERROR)
    with visiting(small(), sql=request.param) as found:
        yield found


def asked(visitor: Visitor, address: str, method: str = "GET") -> None:
    """One question, and what holds for every answer."""
    got = visitor.get(address, method)
    assert got.status in EXPECTED, (address, got.status, got.text[-300:])
    assert got.headers["content-security-policy"] == POLICY
    assert b"Traceback" not in got.body
    assert b"site-packages" not in got.body
    assert "set-cookie" not in got.headers
    assert not got.headers.get("location", "/").startswith("//")


def often(times: int) -> settings:
    return settings(max_examples=times, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])


@often(150)
@given(paths, queries, methods)
def test_any_address(visitor: Visitor, path: str, query: str, method: str) -> None:
    """Pieces that mean something among bytes that don't."""
    asked(visitor, f"{path}?{query}" if query else path, method)


@often(60)
@given(st.sampled_from(["/find", "/ask", "/at-hand", "/find.json", "/ask.json"]), queries, st.text(max_size=40))
def test_any_query(visitor: Visitor, path: str, query: str, words: str) -> None:
    """Any text in any field, of any script, repeated or not."""
    from urllib.parse import quote

    for field in ("q", "fault", "have"):
        asked(visitor, f"{path}?{query}&{field}={quote(words)}&{field}={quote(words[::-1])}")


@often(120)
@given(tables, st.sampled_from(["", ".json", ".csv", "/tall-clean", "/a,b"]), queries)
def test_any_question_to_a_table(visitor: Visitor, table: str, ending: str, query: str) -> None:
    """Datasette's own parameters, and others."""
    asked(visitor, f"/catalogue/{table}{ending}?{query}")


@pytest.mark.no_cover
@pytest.mark.parametrize(
    "address",
    [
        "/" + "a/" * 200,
        "/" + "%00" * 100,
        "/find?q=" + "%F0%9F%8F%8B" * 150,
        "/find?q=" + "a+" * 900,
        "/find?" + "q=a&" * 59,
        "/at-hand?" + "have=broom&" * 59,
        "/ask?fault=clean-bar-crashes&holds=" + "tall-clean," * 150,
        "/ask?fault=clean-bar-crashes&minutes=" + "9" * 1500,
        "/catalogue/drill?" + "_sort=id&" * 59,
        "/catalogue/drill?_facet=name&" + "_facet=id&" * 50,
        "/catalogue/drill?_next=" + "a," * 500,
        "/catalogue/drill?_size=max&_search=" + "x" * 500,
        "/catalogue?sql=" + "(" * 1500,
        "/catalogue?sql=with+recursive+a(n)+as+(select+1+union+all+select+n%2B1+from+a)+select+sum(n)+from+a",
        "/catalogue?sql=drop+table+drill",
        "/catalogue?sql=pragma+journal_mode=delete",
        "/catalogue?sql=attach+'/etc/passwd'+as+p",
        "/catalogue?sql=select+load_extension('x')",
    ],
)
def test_heavy_and_hostile_addresses(visitor: Visitor, address: str) -> None:
    """Bounded, whatever is asked; the server goes on."""
    asked(visitor, address)
    assert visitor.get("/drill/tall-clean").status == 200
