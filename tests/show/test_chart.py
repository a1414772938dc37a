"""The reach chart: bars where the drills are, a band where the fault is, all within the line."""

import pytest
from hypothesis import given, settings
from small_answers import small_chain, small_shelf
from strategies import questions
from worlds import shelf_of

from kb.ask.chain import NoChain, chain
from kb.ask.path import path
from kb.dials import Dials
from kb.show.bars import Bar, bands_of, path_bars, route_bars
from kb.show.chart import chart
from kb.show.setting import Setting
from kb.terms import Catch, Load, Speed, Stage

CLEAN, BOTH = small_shelf("clean").lift, small_shelf("clean-and-jerk").lift


def bar(
    first: int = 0,
    last: int = 5,
    *,
    name: str = "A drill",
    said: str = "",
    left_out: int = 0,
    speed: Speed = Speed.FULL,
    load: Load = Load.STICK,
    catch: Catch = Catch.FULL,
    helped: bool = False,
    work: bool = True,
    gateway: bool = False,
) -> Bar:
    """A bar of the clean."""
    dials = Dials(Stage.SEGMENT, first, last, left_out, speed, load, catch, helped)
    return Bar(name, 120, dials, said, work, gateway)


def drawn(one: Bar, *, fine: bool = False) -> str:
    """How a bar is drawn, without its name, at 80 columns."""
    lines = chart(CLEAN, [one], Setting(80, fine=fine))
    return lines[1].split("min", 1)[1].removeprefix(")").strip()


def test_a_chain_is_seen_as_the_lift_being_put_together() -> None:
    """Short bars near the fault, longer ones below, the last one the whole lift."""
    found = small_chain("clean-bar-crashes")
    lift = found.matter.shelf.lift
    bars = route_bars(found.routes[0], lift)
    assert chart(lift, bars, Setting(80), bands=bands_of(found.matter.worked, lift)) == [
        "                            start knee hip  ext. receive  stand",
        "             where it shows                 :::::::::::",
        " 1  Tall clean        5 min                 ::|=====]::",
        " 2  High-hang clean (2 min)             |-------------------]    from the hip",
        " 3  Clean             9 min   |=============================]    from the floor",
        "",
        "    (1 min) a check: one round",
    ]


@pytest.mark.parametrize(
    ("one", "plain", "fine"),
    [
        (bar(2, 4), "|----------------]", "├────────────────╣"),
        (bar(2, 4, speed=Speed.HELD), "|. . . . . . . . ]", "├┈┈┈┈┈┈┈┈┈┈┈┈┈┈┈┈╣"),
        (bar(2, 4, speed=Speed.SLOW), "|-- -- -- -- -- -]", "├╌╌╌╌╌╌╌╌╌╌╌╌╌╌╌╌╣"),
        (bar(2, 4, speed=Speed.PAUSED), "|--+--+--+--+--+-]", "├──┼──┼──┼──┼──┼─╣"),
        (bar(2, 4, load=Load.NONE), "|----------------]", "├────────────────╣"),
        (bar(2, 4, load=Load.LIGHT), "|================]", "├━━━━━━━━━━━━━━━━╣"),
        (bar(2, 4, load=Load.WORKING), "|################]", "├████████████████╣"),
        (bar(2, 4, load=Load.LIGHT, work=False), "|----------------]", "├────────────────╣"),
        (bar(2, 4, catch=Catch.NONE), "|-----------------", "├─────────────────"),
        (bar(2, 4, catch=Catch.STANDING), "|---------------->", "├────────────────╮"),
        (bar(2, 4, catch=Catch.POWER), "|----------------)", "├────────────────┤"),
        (bar(2, 4, helped=True), "^----------------]", "╥────────────────╣"),
        (bar(2, 4, left_out=1 << 3), "|------   -------]", "├──────   ───────╣"),
        (bar(4, 4), "|-]", "├─╣"),
    ],
)
def test_a_bar_says_its_dials_without_words(one: Bar, plain: str, fine: str) -> None:
    """Speed by the line, load by its weight, catch by the right-hand end, help by the left, a gap left out."""
    assert (drawn(one), drawn(one, fine=True)) == (plain, fine)


def test_preparation_has_no_bar() -> None:
    """It stands in its order with what it opens."""
    opens = Bar("Reach up", 100, None, "opens shoulder")
    lines = chart(CLEAN, [opens, bar()], Setting(80), bands=[(3, 4)])
    assert lines[2].split() == ["1", "Reach", "up", "2", "min", ":::::::::::::", "opens", "shoulder"]


def test_a_check_and_a_gateway_are_marked() -> None:
    """A check's minutes stand in brackets; a gateway has a mark by its number."""
    lines = chart(CLEAN, [bar(work=False), bar(gateway=True)], Setting(80))
    assert "(2 min)" in lines[1]
    assert lines[2].startswith(" 2* ")
    assert "(1 min) a check: one round   * every way to the lift passes here" in lines[-1]


def test_long_names_and_words_wrap_in_their_columns() -> None:
    """The band goes on behind them."""
    long = bar(3, 4, name="High-hang power clean, stop and sit", said="from the catch to standing")
    assert chart(CLEAN, [long], Setting(80), bands=[(3, 4)]) == [
        "                                 start knee hip ext. receive stand",
        "                  where it shows                :::::::::::",
        " 1  High-hang power        2 min                ::|-----]::         from the",
        "    clean, stop and sit                         :::::::::::         catch to",
        "                                                :::::::::::         standing",
    ]


def test_a_narrow_terminal_puts_each_bar_under_its_name() -> None:
    """The label of the band stands where there is room."""
    bars = [bar(3, 4, said="from the hip"), bar(0, 5, name="Clean")]
    assert chart(CLEAN, bars, Setting(48), bands=[(3, 4)])[:6] == [
        "  start   knee    hip   ext.    receive    stand",
        "         where it shows ::::::::::::::",
        " 1  A drill, 2 min: from the hip",
        "                        ::|--------]::",
        " 2  Clean, 2 min",
        "    |----------------------------------------]",
    ]
    assert "::::: where it shows" in chart(CLEAN, bars, Setting(48), bands=[(0, 1)])[1]
    assert "where it shows" not in chart(CLEAN, bars, Setting(40), bands=[(0, 5)])[1]


def test_a_lift_of_two_parts_is_drawn_under_its_names() -> None:
    """Eleven points need the whole line; the narrower, the shorter their names."""
    whole = [bar(0, 10, name="Clean and jerk")]
    assert chart(BOTH, whole, Setting(80))[0].split()[3:5] == ["ext.", "receive"]
    assert chart(BOTH, whole, Setting(60))[0].split()[4] == "rec."
    assert chart(BOTH, whole, Setting(56))[0].split()[0] == "sta."
    assert chart(BOTH, whole, Setting(40))[0].split()[0] == "st"
    assert max(len(line) for line in chart(BOTH, whole, Setting(40))) <= 40


def test_loads_and_depths_are_explained_where_they_tell_bars_apart() -> None:
    """A legend says nothing that needn't be said."""
    same = chart(CLEAN, [bar(), bar()], Setting(80))
    assert len(same) == 3
    bars = [bar(load=Load.NONE), bar(load=Load.LIGHT), bar(catch=Catch.NONE), bar(helped=True, left_out=2)]
    legend = "\n".join(chart(CLEAN, bars, Setting(80))[6:])
    for said in ("--- empty-handed or stick", "=== light", "] full depth", "^ helped", "a gap: left out"):
        assert said in legend


def test_a_path_is_drawn_the_same_way() -> None:
    """Preparation says what it opens, every other drill what changed."""
    shelf = small_shelf("clean")
    found = path(shelf, have=shelf.kits["full"])
    bars = path_bars(found, {found.entries[0].drill.id})
    assert bars[0].gateway
    assert not bars[-1].gateway
    assert [each.name for each in bars] == [entry.drill.name for entry in found.entries]


@settings(max_examples=60)
@given(questions(least=4, most=14))
def test_nothing_is_wider_than_the_line(asked: tuple) -> None:
    """Whatever the library: at any width, every drill is there and each line fits."""
    world, question = asked
    try:
        found = chain(shelf_of(world), question)
    except NoChain:
        return
    lift = found.matter.shelf.lift
    bars = route_bars(found.routes[0], lift)
    for width in (40, 60, 80, 100):
        lines = chart(lift, bars, Setting(width), bands=bands_of(found.matter.worked, lift))
        text = " ".join(" ".join(lines).split())
        assert all(len(line) <= width for line in lines)
        assert all(bar.name.split()[0] in text for bar in bars)
