"""How heavy a drill of an answer is: the share that its entry names, or the kilograms that `drillpath load` says."""

import json
import re

import pytest
from click.testing import CliRunner

from kb.ask.chain import chain
from kb.ask.question import ChainQuestion
from kb.ask.shelf import Shelf
from kb.bests import Best, reckoned
from kb.commands.group import drillpath
from kb.discs import iron_of
from kb.show.heavy import AFRAID, EMPTY, LIGHT_TOP, LOWERED, gently, in_kilograms, lightly, no_more_than, shares
from kb.terms import FaultId, ItemId, LiftId, Load, Stage


def entries(shelves: dict[LiftId, Shelf], load: Load | None = None):
    """A chain for a bar that crashes, in the full kit."""
    shelf = shelves[LiftId("clean")]
    return chain(shelf, ChainQuestion(FaultId("clean-bar-crashes"), shelf.kits["full"], load=load)).routes[0].entries


def test_work_at_a_bar_names_its_share_and_a_check_the_least_of_it(shelves: dict[LiftId, Shelf]) -> None:
    """As in the entry; what is done without a bar has none."""
    for entry in entries(shelves):
        low, high = entry.drill.load_from.percent if entry.drill.load_from else (0, 0)
        work = f"then {low} to {high} % of the best clean"
        wanted = work if entry.work else f"{low} % of the best clean or so"
        assert shares(entry) == (wanted if entry.load is Load.LIGHT and high else "")
    stick = entries(shelves)[0]._replace(load=Load.STICK)
    assert shares(stick) == ""


@pytest.mark.parametrize(("best", "bar"), [(80.0, "men"), (62.0, "women"), (41.0, "training")])
def test_kilograms_are_those_of_the_command_that_says_them(shelves: dict[LiftId, Shelf], best: float, bar: str) -> None:
    """`drillpath load` for the same drill, best and bar: its least at a light bar, its most at working weight."""
    heavy = in_kilograms({"clean": Best(best)}, iron_of(bar))
    told = 0
    for entry in entries(shelves, Load.WORKING):
        at = "working" if entry.load is Load.WORKING else "light"
        asked = ["load", entry.drill.id, "--best", f"clean={best}", "--bar", bar, "--load", at, "--json"]
        found = json.loads(CliRunner().invoke(drillpath, asked).stdout)
        if found["load"] is not None and "bar" in {each.using for each in entry.gear}:
            assert f"{found['load']['kg']:g} kg" in heavy(entry)
            told += 1
    assert told


def test_without_that_best_it_is_the_share(shelves: dict[LiftId, Shelf]) -> None:
    """A best of another lift says nothing of this one; a bar that is too heavy is said to be."""
    for entry in entries(shelves):
        assert in_kilograms({"snatch": Best(50)}, iron_of("men"))(entry) == shares(entry)
        if entry.drill.stage is not Stage.WHOLE:
            assert "take a lighter bar" in in_kilograms({"clean": Best(25)}, iron_of("men"))(entry)


def test_a_bar_alone_or_a_floor_for_no_drops_has_no_share(shelves: dict[LiftId, Shelf]) -> None:
    """With no discs it stays empty; where nothing may be dropped it is what one lowers by hand, whatever the best."""
    shelf = shelves[LiftId("clean")]
    for have, limit in ((("bar", "headroom"), EMPTY), (("bar", "discs", "headroom"), LOWERED)):
        found = chain(shelf, ChainQuestion(FaultId("clean-bar-crashes"), frozenset(map(ItemId, have))))
        last = found.routes[0].entries[-1]
        assert shares(last) == in_kilograms({"clean": Best(80)}, iron_of("men"))(last) == limit


def test_who_is_afraid_goes_no_further_than_two_thirds_or_so(shelves: dict[LiftId, Shelf]) -> None:
    """Common practice, no source: of every catch, by share or in kilograms; another cause of the same fault goes on."""
    shelf, heavy = shelves[LiftId("snatch")], in_kilograms({"snatch": Best(100)}, iron_of("men"))
    asked = ChainQuestion(FaultId("catches-high"), shelf.kits["full"], cause="scared-to-go-under")
    found = chain(shelf, asked)
    last = found.routes[0].entries[-1]
    assert f"{AFRAID} %" in gently(shares, found.matter.cause)(last)
    assert f"up to {AFRAID} kg" in gently(heavy, found.matter.cause)(last)
    late = chain(shelf, asked._replace(cause="late-under")).matter.cause
    assert gently(heavy, late)(last) == heavy(last) != gently(heavy, found.matter.cause)(last)


def test_a_light_lift_ends_short_of_heavy(shelves: dict[LiftId, Shelf]) -> None:
    """Common practice, no source: at working load, and of what is no whole lift, all that its entry names is told."""
    shelf = shelves[LiftId("clean")]
    asked = ChainQuestion(FaultId("clean-bar-crashes"), shelf.kits["full"], load=Load.WORKING)
    entries = chain(shelf, asked).routes[0].entries
    assert [entry.load for entry in entries[-2:]] == [Load.LIGHT, Load.WORKING]
    assert f"{LIGHT_TOP} %" in lightly(shares)(entries[-2]) != shares(entries[-2])
    assert all(lightly(shares)(entry) == shares(entry) for entry in (*entries[:-2], entries[-1]))


def test_no_more_is_told_than_there_is(shelves: dict[LiftId, Shelf]) -> None:
    """In kilograms and beside a share; a bar with nothing on it has no limit to name."""
    limited = iron_of("women")._replace(most=30)
    for entry in entries(shelves, Load.WORKING):
        said = in_kilograms({"clean": Best(100)}, limited)(entry)
        assert all(float(each) <= 30 for each in re.findall(r"([0-9.]+) kg", said))
        beside = no_more_than(shares, 30)(entry)
        assert beside.endswith("30 kg at most") == (entry.load >= Load.LIGHT)


def test_a_bar_a_little_too_heavy_is_taken_and_a_lighter_one_if_it_is_there(shelves: dict[LiftId, Shelf]) -> None:
    """An empty bar up to a quarter more than suits: common practice, no source; past that it says so."""
    asked = ChainQuestion(FaultId("bar-behind-overhead"), shelves[LiftId("snatch")].kits["full"])
    first = next(
        entry
        for entry in chain(shelves[LiftId("snatch")], asked).routes[0].entries
        if entry.drill.load_from and entry.drill.load_from.percent == (30, 50)
    )
    assert "the empty bar, 15 kg" in in_kilograms({"snatch": Best(26)}, iron_of("women"))(first)
    assert "take a lighter bar" in in_kilograms({"snatch": Best(20)}, iron_of("women"))(first)
    assert "the training bar, 10 kg" in in_kilograms({"snatch": Best(26)}, iron_of("women"), iron_of("training"))(first)


def test_a_lift_of_which_no_best_is_known_is_reckoned_from_another(shelves: dict[LiftId, Shelf]) -> None:
    """The least that any of them says, and said to be about that; what is known stays."""
    known = reckoned({"front-squat": Best(100), "clean": Best(80), "push-press": Best(60)})
    assert known["clean"] == Best(80)
    assert known["jerk"].kg == pytest.approx(72)
    about = in_kilograms(reckoned({"front-squat": Best(100)}), iron_of("men"))
    assert any("about" in about(entry) for entry in entries(shelves))
    assert all("about" not in in_kilograms(known, iron_of("men"))(entry) for entry in entries(shelves))
