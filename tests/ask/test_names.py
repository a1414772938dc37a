"""From what someone types to an entry's id: exactly, by another name, by a beginning, or what is nearest."""

import sqlite3

import pytest

from kb.ask.names import resolve, resolve_all, resolve_any
from kb.errors import BadInput


@pytest.fixture
def names() -> sqlite3.Connection:
    """A catalogue of nothing but names."""
    db = sqlite3.connect(":memory:")
    db.execute("create table name (key, kind, id, name, lift_list)")
    db.execute("create table lift_part (lift, part)")
    db.execute("insert into lift_part values ('clean-and-jerk', 'clean'), ('clean-and-jerk', 'jerk')")
    db.executemany(
        "insert into name values (?, ?, ?, ?, '')",
        [
            ("tall clean", "drill", "tall-clean", "Tall clean"),
            ("clean from the toes", "drill", "tall-clean", "clean from the toes"),
            ("tall snatch", "drill", "tall-snatch", "Tall snatch"),
            ("clean", "lift", "clean", "Clean"),
            ("clean", "drill", "full-clean", "Clean"),
            ("hips rise first", "fault", "hips-rise-first", "Hips rise first"),
            ("bum up", "fault", "hips-rise-first", "bum up"),
            ("press out", "fault", "jerk-press-out", "press-out"),
            ("press out", "fault", "snatch-press-out", "press-out"),
        ],
    )
    return db


@pytest.mark.parametrize("text", ["tall-clean", "Tall clean", " TALL   clean ", "tall_clean", "Táll cleân"])
def test_an_id_or_name_is_itself(names: sqlite3.Connection, text: str) -> None:
    """Case, accents, spaces and punctuation don't count."""
    assert resolve(names, "drill", text) == "tall-clean"


def test_another_name_does_as_well(names: sqlite3.Connection) -> None:
    """A name is a name."""
    assert resolve(names, "fault", "Bum up!") == "hips-rise-first"


def test_an_unambiguous_beginning_is_enough(names: sqlite3.Connection) -> None:
    """Even inside a word, and where several names of the same entry begin so."""
    assert resolve(names, "drill", "tall cl") == "tall-clean"
    assert resolve(names, "fault", "hips") == "hips-rise-first"


def test_an_exact_name_beats_a_beginning(names: sqlite3.Connection) -> None:
    """`clean` is a drill, though another drill's name begins with it."""
    assert resolve(names, "drill", "clean") == "full-clean"


def test_an_ambiguous_beginning_names_what_it_could_be(names: sqlite3.Connection) -> None:
    """In order, for someone to choose."""
    with pytest.raises(BadInput, match="could mean several") as raised:
        resolve(names, "drill", "tall")
    assert raised.value.nearest == ("tall-clean", "tall-snatch")


def test_a_name_that_two_share_names_both(names: sqlite3.Connection) -> None:
    """No guess between them."""
    with pytest.raises(BadInput, match="could mean several") as raised:
        resolve(names, "fault", "press-out")
    assert raised.value.nearest == ("jerk-press-out", "snatch-press-out")


def test_an_id_beats_a_name_of_another_kind(names: sqlite3.Connection) -> None:
    """`clean` is the id of a lift and the name of a drill."""
    assert resolve_any(names, "Clean") == ("lift", "clean")
    assert resolve_any(names, "clean", kind="drill") == ("drill", "full-clean")


def test_a_name_that_a_lift_shares_with_its_own_drill_is_the_lifts(names: sqlite3.Connection) -> None:
    """In another language too; a beginning that both share stays ambiguous."""
    names.execute("insert into name values ('epaule', 'lift', 'clean', 'epaule', '')")
    names.execute("insert into name values ('epaule', 'drill', 'full-clean', 'epaule', '')")
    assert resolve_any(names, "epaule") == ("lift", "clean")
    assert resolve_any(names, "epaule", kind="drill") == ("drill", "full-clean")
    with pytest.raises(BadInput, match="could mean several"):
        resolve_any(names, "epau")


def test_a_lift_says_which_of_several_is_meant(names: sqlite3.Connection) -> None:
    """By name and by beginning; where none of them serves it, it says nothing."""
    names.execute("insert into name values ('bar lands hard', 'fault', 'one', 'Bar lands hard', 'snatch')")
    names.execute("insert into name values ('bar lands hard', 'fault', 'other', 'Bar lands hard', 'clean jerk')")
    for text in ("bar lands hard", "bar la"):
        assert resolve(names, "fault", text, lift="snatch") == "one"
        assert resolve(names, "fault", text, lift="jerk") == "other"
        for lift in (None, "press"):
            with pytest.raises(BadInput, match="could mean several"):
                resolve(names, "fault", text, lift=lift)


def test_a_lift_of_parts_means_theirs_too(names: sqlite3.Connection) -> None:
    """A clean and jerk has the faults of both."""
    names.execute("insert into name values ('bar lands hard', 'fault', 'its', 'Bar lands hard', 'jerk')")
    names.execute("insert into name values ('bar lands hard', 'fault', 'none', 'Bar lands hard', 'press')")
    assert resolve(names, "fault", "bar lands hard", lift="clean-and-jerk") == "its"


def test_without_a_kind_all_kinds_count(names: sqlite3.Connection) -> None:
    """The kind is said with the id; a name of two kinds is ambiguous."""
    assert resolve_any(names, "hips rise first") == ("fault", "hips-rise-first")
    names.execute("insert into name values ('bum up', 'position', 'high-hips', 'bum up', '')")
    with pytest.raises(BadInput, match="could mean several") as raised:
        resolve_any(names, "bum up")
    assert raised.value.nearest == ("hips-rise-first", "high-hips")
    assert resolve_any(names, "bum up", kind="position") == ("position", "high-hips")


def test_an_unknown_name_brings_the_nearest(names: sqlite3.Connection) -> None:
    """Of that kind alone, each once."""
    with pytest.raises(BadInput, match="there is no drill 'tal clen'") as raised:
        resolve(names, "drill", "tal clen")
    assert raised.value.nearest[0] == "tall-clean"
    assert len(set(raised.value.nearest)) == len(raised.value.nearest) <= 3
    with pytest.raises(BadInput, match="there is no entry") as raised:
        resolve_any(names, "hips rises frist")
    assert raised.value.nearest == ("hips-rise-first",)


def test_nothing_near_brings_nothing(names: sqlite3.Connection) -> None:
    """An empty list rather than a wild guess."""
    with pytest.raises(BadInput) as raised:
        resolve(names, "fault", "zzzzqqqq")
    assert raised.value.nearest == ()


@pytest.mark.parametrize("text", ["", "   ", "--", "!?"])
def test_an_empty_name_is_nothing(names: sqlite3.Connection, text: str) -> None:
    """And no beginning of everything."""
    with pytest.raises(BadInput, match="empty name"):
        resolve(names, "drill", text)


@pytest.mark.parametrize(
    "text", ["'; drop table name; --", 'a" or 1=1', "%", "*", "\x00tall\x00", "x" * 10_000, "\ud800", "ひじ"]
)
def test_odd_text_is_a_bad_name_and_no_more(names: sqlite3.Connection, text: str) -> None:
    """It says so, and changes nothing."""
    with pytest.raises(BadInput):
        resolve(names, "drill", text)
    assert names.execute("select count(*) from name").fetchone() == (9,)


def test_several_names_come_in_order_and_once(names: sqlite3.Connection) -> None:
    """Empty ones are left out, as after a last comma."""
    assert resolve_all(names, "drill", ["Tall snatch", "tall-clean", "", "  ", "tall snatch"]) == (
        "tall-snatch",
        "tall-clean",
    )
    assert resolve_all(names, "drill", []) == ()


def test_every_name_of_the_shipped_library_means_its_entry_or_says_that_it_is_shared(db: sqlite3.Connection) -> None:
    """None leads elsewhere."""
    owners: dict[tuple[str, str], list[str]] = {}
    for kind, key, entry_id in db.execute("select distinct kind, key, id from name order by kind, key, id"):
        owners.setdefault((kind, key), []).append(entry_id)
    for (kind, key), ids in owners.items():
        own = [each for each in ids if each.replace("-", " ") == key]
        if len(ids) == 1 or own:
            assert resolve(db, kind, key) == (own or ids)[0]
        else:
            with pytest.raises(BadInput) as raised:
                resolve(db, kind, key)
            assert set(ids) <= set(raised.value.nearest)
