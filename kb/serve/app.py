"""The server: our pages in front, Datasette over the same catalogue behind, read-only."""

from pathlib import Path
from typing import Any

from datasette import hookimpl
from datasette.app import Datasette
from datasette.plugins import pm

from kb.make.describe import metadata
from kb.serve.canned import FACETS, canned
from kb.serve.desk import WAITING, Desk
from kb.serve.front import Front, front
from kb.serve.tables import NAME, Tables
from kb.show.care import NO_REVIEW, USUAL

__all__ = ["served"]

TEMPLATES = Path(__file__).parent / "templates"
"""Our templates for Datasette's pages, under the same policy as our own."""


class _Words:
    """The plugin: what every page of ours says, for Datasette's templates."""

    __name__ = "drillpath"  # Datasette asks every plugin for it

    @hookimpl
    def extra_template_vars(self) -> dict[str, str]:
        """The cautions."""
        return {"USUAL": USUAL, "NO_REVIEW": NO_REVIEW}


_WORDS = _Words()


def served(catalogue: Path, *, sql: bool = False, prepare: bool = True, limit: int = WAITING) -> Front:
    """The ASGI application over a catalogue.

    `sql` lets visitors ask it in SQL and take it away; `prepare` sets all pages ahead once the server starts;
    `limit` is how many questions may wait.
    """
    from datasette import handle_exception  # late: it must not be imported before Datasette's plugins are

    if not pm.is_registered(_WORDS):
        pm.register(_WORDS)
    # where rich is installed, a question that makes no sense would be drawn on the terminal for two seconds
    handle_exception.rich = None
    desk = Desk(catalogue, limit=limit)
    datasette = Datasette(
        metadata=_described(),
        template_dir=str(TEMPLATES),
        settings={
            "default_allow_sql": sql,
            "allow_download": sql,
            "allow_csv_stream": False,
            "suggest_facets": False,
            "default_cache_ttl": 0,
            "default_page_size": 50,
            "truncate_cells_html": 120,
        },
    )
    datasette.remove_database("_memory")  # it adds one to an empty list
    return front(desk, Tables(desk, datasette, sql=sql), prepare=prepare)


def _described() -> dict[str, Any]:
    """The tables' descriptions and units, with what they are narrowed by, and the canned questions."""
    described = metadata()
    database = described["databases"].pop("catalogue")
    for name, columns in FACETS.items():
        database["tables"][name]["facets"] = columns
    return {**described, "databases": {NAME: {**database, "queries": canned()}}}
