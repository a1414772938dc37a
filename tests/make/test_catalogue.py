"""The catalogue: each table's rows."""

import json
import sqlite3
from array import array
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path
from typing import Any

import pytest
from handmade import library

from kb import __version__, plain
from kb.dials import spans
from kb.make import describe
from kb.make.catalogue import write
from kb.make.steps import profiles, step_rows

TESTS = Path(__file__).parent.parent


@pytest.fixture(scope="module")
def db(tmp_path_factory: pytest.TempPathFactory) -> Iterator[sqlite3.Connection]:
    """The catalogue of the library made by hand."""
    path = tmp_path_factory.mktemp("catalogue") / "catalogue.db"
    write(library(), path)
    with closing(sqlite3.connect(path)) as connection:
        yield connection


ROWS: list[tuple[str, list[tuple[Any, ...]]]] = [
    ("select * from meta", [("content_hash", "of-the-handmade"), ("schema_version", "4"), ("version", __version__)]),
    ("select word from scale where dial = 'catch' order by n", [("none",), ("standing",), ("power",), ("full",)]),
    ("select id, name, also, drill from lift where id like '%and%'", [
        ("clean-and-jerk", "Clean and jerk", '["the C&J"]', "full-clean-and-jerk")]),
    ("select standard_count, standard_of, standard_seen from lift where id = 'clean'", [(3, 5, "bar over mid-foot")]),
    ("select * from lift_part", [("clean-and-jerk", 0, "clean"), ("clean-and-jerk", 1, "jerk")]),
    ("select * from lift_checkpoint", [("clean-and-jerk", 0, "tall-clean"), ("clean-and-jerk", 1, "full-jerk")]),
    ("select n, point, position, part from lift_point where lift = 'clean-and-jerk' and n in (0, 2, 3)", [
        (0, "start", "clean-start", "clean"), (2, "receive", "clean-receive", "clean"),
        (3, "rack", "jerk-rack", "jerk")]),
    ("select distinct part from lift_point where lift = 'jerk'", [("jerk",)]),
    ("select id, bar, contact from position where id = 'jerk-rack'", [("jerk-rack", "in the hands", "feet flat")]),
    ("select joint, degrees from position_angle where position = 'jerk-rack'", [("hip", 50.0), ("knee", 90.5)]),
    ("select id, view, speed, load, catch from fault", [
        ("bar-crashes", "side", "full", "none", "power"), ("hips-rise", "side", "held", "none", "none")]),
    ("select * from fault_lift", [("bar-crashes", "clean"), ("hips-rise", "clean")]),
    ("select * from fault_phase where fault = 'bar-crashes'", [("bar-crashes", 0, "hip", "receive")]),
    ("select * from look_alike", [("bar-crashes", "hips-rise")]),
    ("select id, n, kind, earlier, load from cause where fault = 'bar-crashes' order by n", [
        ("drops-away", 0, "understanding", None, "none"), ("made-by-hips", 1, "earlier", "hips-rise", "none"),
        ("weak", 2, "strength", None, "light")]),
    ("select * from made_earlier", [("bar-crashes", "made-by-hips", "hips-rise")]),
    ("select n, do, seconds, drill from tell", [
        (0, "Two tall cleans.", 20, "tall-clean"), (1, "Three with a bar.", 30, None)]),
    ("select n, cause, answer from tell_cause", [
        (0, "drops-away", "yes"), (1, "weak", "yes"), (1, "drops-away", "no")]),
    ("select * from kit", [("full",), ("hall",), ("stick",)]),
    ("select * from kit_item where kit != 'hall'", [("full", "bar"), ("full", "stick"), ("stick", "stick")]),
    ("select * from stand_in", [("bar", "stick", "weight", "paused", "stick", "full")]),
    ("select family, stage, speed, load_least, load_most, catch, bridge, not_for from drill where id = 'tall-clean'", [
        ("family", "segment", "full", "stick", "light", "full", 0, "Sore wrists.")]),
    # a change-over of 30 s and 15 s of set-up, then 3 rounds of 3 repetitions of 4 s
    ("select rounds, reps, tempo, hold_s, sides, rest_s, work_s, check_s from drill where id = 'tall-clean'", [
        (3, 3, "2-0-1-1", 0, 1, 0, 81, 57)]),
    ("select tempo, bridge, not_for from drill where id = 'rack-hold'", [(None, 1, None)]),
    ("select * from drill_lift where drill in ('tall-clean', 'reach-up')", [
        ("reach-up", "clean", None, None, None), ("reach-up", "jerk", None, None, None),
        ("tall-clean", "clean", None, "hip", "receive")]),
    ("select target_position from drill_lift where drill = 'rack-hold'", [("clean-receive",)]),
    ("select * from drill_leaves_out", [("tall-clean", "start")]),
    ("select * from drill_aid", [("rack-hold", 0, "hand"), ("rack-hold", 1, "bar")]),
    ("select * from drill_fault where drill = 'tall-clean'", [
        ("tall-clean", "bar-crashes", "drops-away"), ("tall-clean", "bar-crashes", None),
        ("tall-clean", "hips-rise", "lost-angle")]),
    ("select * from prerequisite where drill = 'rack-hold'", [
        ("rack-hold", 0, "reach-up"), ("rack-hold", 0, "wrist-rock")]),
    ("select * from part", [("full-clean-and-jerk", 0, "full-clean"), ("full-clean-and-jerk", 1, "full-jerk")]),
    ("select * from regression", [("rack-hold", 0, "wrist-rock", "no bar")]),
    ("select * from drill_equipment where drill = 'rack-hold'", [("rack-hold", 0, "stick")]),
    ("select * from drill_opens", [("wrist-rock", "wrist")]),
    ("select * from drill_for", [("wrist-rock", "clean-receive")]),
    ("select * from caution", [("wrist-rock", 0, "wrist")]),
    ("select drill from gateway where lift = 'clean'", [("rack-hold",), ("tall-clean",)]),
    ("select drill from gateway where lift = 'clean-and-jerk'", [
        ("full-clean",), ("full-jerk",), ("rack-hold",), ("tall-clean",)]),
    ("select drill, stage, n from layer where lift = 'jerk'", [("full-jerk", "whole", 0), ("reach-up", "prepare", 0)]),
    # the tall clean says it twice and is one drill; squat and tall clean make the other cause two
    ("select fault, cause, drills from thin_fault where lift = 'clean'", [
        ("bar-crashes", "drops-away", 1), ("hips-rise", "lost-angle", 1)]),
    ("select distinct lift from thin_fault", [("clean",)]),
    # two other names that differ by an accent are one key
    ("select key, name, lift_list from name where kind = 'fault' and id = 'bar-crashes'", [
        ("bar crashes", "bar-crashes", "clean"), ("crash cafe", "Crash cafe", "clean"),
        ("the bar crashes hard", 'The bar "crashes" <hard>', "clean")]),
    ("select key, lift_list from name where id = 'clean-and-jerk'", [
        ("clean and jerk", "clean-and-jerk"), ("the c j", "clean-and-jerk")]),
    ("select distinct lift_list from name where id = 'reach-up'", [("clean jerk",)]),
    ("select distinct lift_list from name where kind = 'equipment'", [("",)]),
    ("select phrases, words from said where id = 'bar-crashes'", [
        ('[["bar","crash","hard"],["caf","crash"],["bar","crash"]]',
         '[["bar","caf","crash","hard"],[],["bang","collarbon"],["bottom","fold","hip","ris","wait"]]')]),
    ("select text <> '' from said where id in ('bar-crashes', 'tall-clean') order by kind", [(1,), (0,)]),
    ("select kind, id from search where search match 'crash collarbone'", [("fault", "bar-crashes")]),
    ("select id from search where search match 'folded'", [("bar-crashes",)]),
    ("select id from search where search match 'weight'", [("bar",)]),
    # views
    ("select drill, cause, work_s from drills_for_fault where fault = 'bar-crashes' and kind = 'strength'", [
        ("tall-clean", "weak", 81), ("squat", "weak", 45)]),
    ("select drill, first from drills_by_stage where lift = 'jerk'", [("reach-up", None), ("full-jerk", "rack")]),
    ("select name, easier_name, eases from easier_versions", [("Rack hold", "Wrist rock", "no bar")]),
    ("select drill, any_of from what_comes_before where drill in ('rack-hold', 'full-clean-and-jerk')", [
        ("full-clean-and-jerk", "full-clean"), ("full-clean-and-jerk", "full-jerk"),
        ("rack-hold", "reach-up or wrist-rock")]),
    ("select item, or_using, at_most from gear_for_drill where drill in ('tall-clean', 'rack-hold')", [
        ("stick", None, None), ("bar", "stick", "stick")]),
    ("select place, fault from faults_by_phase where lift = 'clean'", [(0, "hips-rise"), (1, "bar-crashes")]),
    ("select cause, look, answer from causes_and_tells where kind = 'understanding'", [
        ("drops-away", "Softly met?", "yes"), ("drops-away", "Does it fold?", "no")]),
]  # fmt: skip


@pytest.mark.parametrize(("question", "rows"), ROWS, ids=[question for question, _ in ROWS])
def test_rows(db: sqlite3.Connection, question: str, rows: list[tuple[Any, ...]]) -> None:
    """Each table and view holds what the entries say and what follows from them."""
    assert db.execute(question).fetchall() == rows


def test_every_table_is_asked_above() -> None:
    """No table or view goes untested; the steps have a test of their own."""
    asked = " ".join(question for question, _ in ROWS) + " profile step_row equipment "
    missing = [table.name for table in describe.tables() if f" {table.name} " not in f"{asked} "]
    assert missing == []


@pytest.mark.parametrize("table", ["lift", "position", "fault", "equipment", "drill"])
def test_entries_come_back_whole(db: sqlite3.Connection, table: str) -> None:
    """`entry` and `sections` together are the record, without loss."""
    made = library()
    kinds: dict[str, tuple[Any, Any]] = {
        "lift": (made.lifts, plain.lift_from),
        "position": (made.positions, plain.position_from),
        "fault": (made.faults, plain.fault_from),
        "equipment": (made.items, plain.item_from),
        "drill": (made.drills, plain.drill_from),
    }
    records, from_plain = kinds[table]
    rows = db.execute(f"select id, entry, sections from {table}").fetchall()
    found = {row[0]: from_plain({**json.loads(row[1]), "sections": json.loads(row[2])}) for row in rows}
    assert found == records


def test_steps_are_stored_by_number(db: sqlite3.Connection) -> None:
    """`profile` and `step_row` hold what kb.make.steps works out, 16 bits little-endian."""
    made = library()
    for lift in made.lifts.values():
        found = profiles(lift, made.drills, made.items)
        sizes, least = step_rows(found, spans(lift))
        stored = db.execute(
            "select stage, first, last, left_out, speed, load, catch, helped from profile where lift = ? order by n",
            [lift.id],
        ).fetchall()
        assert stored == [tuple(map(int, dials)) for dials in found]
        rows = db.execute("select sizes, least from step_row where lift = ? order by n", [lift.id]).fetchall()
        assert [array("H", row[0]) for row in rows] == sizes
        assert [array("H", row[1]) for row in rows] == least


def test_the_file_is_sound(db: sqlite3.Connection) -> None:
    """Pages of 8192 bytes, no write-ahead log, nothing dangling, nothing broken, no free space."""
    assert db.execute("pragma page_size").fetchall() == [(8192,)]
    assert db.execute("pragma journal_mode").fetchall() == [("delete",)]
    assert db.execute("pragma foreign_key_check").fetchall() == []
    assert db.execute("pragma integrity_check").fetchall() == [("ok",)]
    assert db.execute("pragma freelist_count").fetchall() == [(0,)]


def test_every_column_is_described(db: sqlite3.Connection) -> None:
    """Tables, views and their comments agree with what SQLite made of them."""
    described = {table.name: table for table in describe.tables()}
    shadows = ("search_data", "search_idx", "search_content", "search_docsize", "search_config")
    made = {name for (name,) in db.execute("select name from sqlite_master where type in ('table', 'view')")}
    assert set(described) == made - set(shadows)
    for name, table in described.items():
        assert table.says.endswith(".")
        assert all(column.says for column in table.columns)
        if not table.view and name != "search":
            columns = [row[1] for row in db.execute(f"pragma table_info({name})")]
            assert [column.name for column in table.columns] == columns


def test_metadata_for_datasette() -> None:
    """Units on numbers alone (a text can't be multiplied by one), and the search's tables out of sight."""
    tables = describe.metadata()["databases"]["catalogue"]["tables"]
    assert tables["drill"]["units"]["work_s"] == "s"
    assert "tempo" not in tables["drill"]["units"]
    assert tables["drill"]["columns"]["tempo"] == "down-pause-up-pause (s)"
    assert tables["position_angle"]["units"] == {"degrees": "deg"}
    assert [name for name, table in tables.items() if table.get("hidden")] == ["profile", "step_row", "said"]
    assert tables["easier_versions"] == {"description": "What to give a lifter for whom a drill is too hard."}
