"""What differs between two libraries: by hand, and laws over random changes of one."""

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

from broken_cases import SMALL
from hypothesis import given, settings
from hypothesis import strategies as st
from report_small import FAULT, SNATCH, a_drill, the_library

from kb.check.diff import touched as touching
from kb.check.diff.answers import Change, replies
from kb.check.diff.diff import Diff, diff
from kb.check.diff.edges import Edge, Edges, edges_between
from kb.check.diff.entries import Changed, Entries, Field
from kb.check.diff.touched import Touched, touched
from kb.errors import Problem
from kb.make.library import Library, load
from kb.terms import Catch, Dose, Drill, DrillId, Load, Speed

PIECE, SLOW = DrillId("piece"), DrillId("slow-piece")
ALL = ("full", "hall", "stick")


def _with(library: Library, *drills: Drill) -> Library:
    return replace(library, drills=dict(sorted({**library.drills, **{each.id: each for each in drills}}.items())))


def _without(library: Library, drill: str) -> Library:
    return replace(library, drills={id_: each for id_, each in library.drills.items() if id_ != drill})


def _chains(found: Diff) -> dict[tuple[str, tuple[str, ...]], Change]:
    return {(change.cause, change.kits): change for change in found.chains}


def test_a_drill_taken_away() -> None:
    """Without `piece` the hall's chain is from `slow-piece`, four notches dearer; the stick's is the same."""
    before = the_library()
    found = diff(before, _without(before, "piece"))
    assert found.entries == Entries((), (("drill", "piece"),), (), ())
    assert found.edges.added == ()
    assert set(found.edges.removed) == {
        Edge("piece", "addresses", (FAULT,), "swings"),
        Edge("piece", "needs", ("bar",)),
        Edge("slow-piece", "eases", ("piece",), "slower"),
    }
    assert found.kits == ALL
    assert found.asked == (2 * 3, 1 * 3)
    ((_, change),) = _chains(found).items()
    assert (change.lift, change.fault, change.cause, change.kits) == (SNATCH, FAULT, "swings", ("full", "hall"))
    assert (change.added, change.dropped, change.moved, change.reloaded) == (("slow-piece",), ("piece",), (), ())
    assert change.before is not None
    assert change.after is not None
    assert change.after.cost - change.before.cost == 300 * 4
    assert found.paths == ()


def test_a_drill_added_opens_and_is_seen_from_both_sides() -> None:
    """A drill for `no-idea` gives it a chain with each kit: before there was none, and why is said."""
    before = the_library()
    told = a_drill("told-how", "start", "hip", load=(Load.STICK, Load.LIGHT), faults=before.drills[PIECE].faults)
    after = _with(before, told._replace(faults=(told.faults[0]._replace(cause="no-idea"),)))
    found = diff(before, after)
    assert found.entries.added == (("drill", "told-how"),)
    opened = [change for change in found.chains if change.cause == "no-idea"]
    assert {kit for change in opened for kit in change.kits} == set(ALL)
    for change in opened:
        assert change.before is not None
        assert change.after is not None
        assert not change.before.drills
        assert change.before.why
        assert change.after.drills[0][0] == "told-how"
        assert change.added == ()


def test_a_field_and_a_section() -> None:
    """What is written in the entry differs: the dose's field, and the sections whose text isn't the same."""
    before = the_library()
    piece = before.drills[PIECE]._replace(sections={"Do": "Pull.", "Why": "It is close."})
    now = piece._replace(
        dose=Dose(rounds=3, reps=3, rest_s=30), sections={"Do": "Pull.", "Why": "It stays close.", "Say": "Close."}
    )
    found = diff(_with(before, piece), _with(before, now))
    (changed,) = found.entries.changed
    was = {"rounds": 2, "reps": 3, "rest_s": 30}
    assert changed == Changed("drill", "piece", "piece", (Field("dose", was, {**was, "rounds": 3}),), ("Say", "Why"))
    (change,) = found.chains
    assert change.kits == ("full", "hall")
    assert (change.added, change.dropped, change.moved, change.reloaded) == ((), (), (), ())
    assert change.before is not None
    assert change.after is not None
    # a round of three at two seconds each, and the rest before it
    assert change.after.seconds - change.before.seconds == change.after.cost - change.before.cost > 0


def test_a_drill_renamed() -> None:
    """The new one keeps the old id in `also`: one entry, no edge and no chain differs."""
    before = the_library()
    slow = before.drills[SLOW]
    renamed = slow._replace(id=DrillId("piece-slowly"), also=("slow-piece",))
    piece = before.drills[PIECE]
    easier = piece.regressions[0]._replace(drill=renamed.id)
    found = diff(before, _with(_without(before, "slow-piece"), renamed, piece._replace(regressions=(easier,))))
    assert found.entries == Entries((), (), (Changed("drill", "slow-piece", "piece-slowly", (), ()),), ())
    assert found.edges == Edges((), ())
    assert found.chains == found.paths == ()


def test_what_moves_and_what_is_reloaded() -> None:
    """In the stick's chain nothing can move; a heavier `piece` is done at another load."""
    before = the_library()
    piece = before.drills[PIECE]
    lighter = _with(before, piece._replace(load=(Load.STICK, Load.STICK)))
    found = diff(lighter, before)
    by_kit = {kit: change for change in found.chains for kit in change.kits}
    assert by_kit["hall"].reloaded == ("piece",)
    assert by_kit["hall"].added == by_kit["hall"].dropped == ()


def test_a_broken_library_isnt_asked() -> None:
    """What is written is compared all the same, and it is said which of the two can't be asked."""
    before = the_library()
    problem = Problem(file="drills/x.md", line=1, code="bad", message="No.", help="")
    broken = replace(_without(before, "piece"), problems=(problem,))
    found = diff(before, broken)
    assert found.entries.removed == (("drill", "piece"),)
    assert found.chains == ()
    assert found.unasked == "the second can't be asked: `drillpath check` says why"
    assert diff(broken, broken).unasked.startswith("the first and the second can't")


def test_the_same_bytes_are_asked_nothing() -> None:
    """A library beside a copy of it is compared at once."""
    library = the_library(content_hash="the-same")
    found = diff(library, replace(library, root=Path("elsewhere")))
    assert found.empty
    assert found.asked == (0, 0)


# -- laws ----------------------------------------------------------------------------------------


def _edits() -> dict[str, Callable[[Library], Library]]:
    def dose(drill: DrillId) -> Callable[[Library], Library]:
        return lambda library: (
            _with(library, library.drills[drill]._replace(dose=Dose(rounds=4, reps=2)))
            if drill in library.drills
            else library
        )

    def speed(library: Library) -> Library:
        return _with(library, library.drills[SLOW]._replace(speed=Speed.PAUSED)) if SLOW in library.drills else library

    def text(library: Library) -> Library:
        lift = library.drills[DrillId("full-snatch")]
        return _with(library, lift._replace(sections={"Do": "Once more."}, name="Snatch, whole"))

    def easier_rack(library: Library) -> Library:
        return _with(
            library, library.drills[DrillId("full-snatch")]._replace(prerequisites=((DrillId("stand-tall"),),))
        )

    def causes(library: Library) -> Library:
        fault = library.faults[FAULT]
        return replace(library, faults={FAULT: fault._replace(causes=fault.causes[:1])})

    return {
        "without piece": lambda library: _without(library, "piece"),
        "without slow": lambda library: _without(library, "slow-piece"),
        "more": lambda library: _with(library, a_drill("more", "hip", "receive", catch=Catch.POWER)),
        "dose of piece": dose(PIECE),
        "speed of slow": speed,
        "text": text,
        "prerequisite": easier_rack,
        "one cause": causes,
    }


EDITS = st.lists(st.sampled_from(sorted(_edits())), max_size=3)


def _edited(names: list[str]) -> Library:
    library = the_library()
    for name in names:
        library = _edits()[name](library)
    # what eases a drill that is gone is no library
    kept = {
        id_: each._replace(regressions=tuple(r for r in each.regressions if r.drill in library.drills))
        for id_, each in library.drills.items()
    }
    return replace(library, drills=kept)


def _turned(change: Change) -> Change:
    return change._replace(before=change.after, after=change.before, added=change.dropped, dropped=change.added)


@settings(max_examples=12, deadline=None)
@given(EDITS, EDITS)
def test_the_other_way_round_is_the_mirror(first: list[str], second: list[str]) -> None:
    """What came one way went the other; before and after change places; what moved is the same."""
    a, b = _edited(first), _edited(second)
    there, back = diff(a, b), diff(b, a)
    assert back.entries.added == there.entries.removed
    assert back.entries.removed == there.entries.added
    turned = [
        each._replace(fields=tuple(Field(f.name, f.after, f.before) for f in each.fields))
        for each in there.entries.changed
    ]
    assert list(back.entries.changed) == turned
    assert back.edges == Edges(added=there.edges.removed, removed=there.edges.added)
    assert list(back.chains) == [_turned(change) for change in there.chains]
    assert list(back.paths) == [_turned(change) for change in there.paths]
    assert there.empty == (a == b)


@settings(max_examples=8, deadline=None)
@given(EDITS)
def test_nothing_differs_from_itself(names: list[str]) -> None:
    """Whatever was changed in both."""
    library = _edited(names)
    assert diff(library, _edited(names)).empty


@settings(max_examples=10, deadline=None)
@given(EDITS, EDITS)
def test_what_isnt_asked_is_answered_alike(first: list[str], second: list[str]) -> None:
    """Every question asked of both: those that differ are exactly those that the diff has."""
    a, b = _edited(first), _edited(second)
    everything = Touched(frozenset(a.lifts), frozenset(a.faults))
    answers = [
        {one.question: one._replace(question=one.question) for one in replies(each, ALL, everything).chains}
        for each in (a, b)
    ]
    differ = {
        (asked.cause, asked.kit)
        for asked in answers[0].keys() | answers[1].keys()
        if answers[0].get(asked) != answers[1].get(asked)
    }
    found = {(change.cause, kit) for change in diff(a, b).chains for kit in change.kits}
    # a chain's sizes of step may differ where its drills, cost and time don't
    assert found <= differ
    assert {one for one in differ if one not in found} <= _same_drills(answers, differ)


def _same_drills(answers: list[dict], differ: set[tuple[str, str]]) -> set[tuple[str, str]]:  # type: ignore[type-arg]
    by = [{(q.cause, q.kit): one for q, one in some.items()} for some in answers]
    return {
        key
        for key in differ
        if all(key in some for some in by)
        and (by[0][key].drills, by[0][key].cost) == (by[1][key].drills, by[1][key].cost)
    }


def test_words_alone_touch_nothing() -> None:
    """Names, text, standards and cautions change no choice; a dose does, and an earlier fault's causes do."""
    before = the_library()
    said = _edited(["text"])
    assert touched(before, said) == Touched(frozenset(), frozenset())
    assert touched(before, _edited(["dose of piece"])).lifts == {SNATCH}
    assert touched(before, _edited(["one cause"])) == Touched(frozenset(), frozenset({FAULT}))
    assert touching.asked_in_all(before) == 2


def test_every_sort_of_edge() -> None:
    """What the small library on disk says of its entries, each sort at least once."""
    library = load(SMALL)
    nothing = Library(root=SMALL)
    kinds = {edge.kind for edge in edges_between(nothing, library, {}).added}
    assert kinds >= {"builds-on", "eases", "addresses", "needs", "made-earlier-by", "told-by", "stands-in-for"}
    tall = library.drills[DrillId("tall-clean")]._replace(made_of=(DrillId("rack-hold"),))
    complex_ = replace(library, drills={**library.drills, tall.id: tall})
    assert edges_between(library, complex_, {}).added == (Edge("tall-clean", "is-made-of", ("rack-hold",)),)
