"""The parts that a question, a build or a class waits for, each alone, beside a floor where there is a natural one.

Wanted on a quiet machine: see each. A test in the suite says that the answers are right; here is how soon.
"""

import json
from random import Random

import pytest
from bodies import shipped
from handmade import drill

from kb.ask import read
from kb.ask.chain import NoChain
from kb.ask.class_.build import matter_of as class_matter
from kb.ask.class_.own import own_of
from kb.ask.find import find
from kb.ask.matter import matter_of
from kb.ask.question import ChainQuestion
from kb.ask.session.sessions import fault_sessions
from kb.body.inverse import inverse
from kb.body.limits import OPEN
from kb.body.pose import forward
from kb.body.proportions import USUAL
from kb.check.near_duplicate import resemblance
from kb.dials import Dials
from kb.intake.class_file import DEMO, class_file
from kb.make.library import Library
from kb.make.steps import step_rows
from kb.show.figure.drawing import figure_svg
from kb.show.figure.write import Drawable, write_figures
from kb.terms import Catch, DrillId, Load, PositionId, Speed, Stage

PHRASE = "her backsde pops up befor the bar leavs the flor"
MANY_WORDS = " ".join(f"elbw{chr(97 + n % 26)} hipz{n}" for n in range(800))


@pytest.mark.benchmark(group="find")
def test_floor_reads_the_words_that_are_searched(benchmark, db) -> None:
    """The floor."""

    def words() -> list[object]:
        rows = db.execute("select phrases, words from said").fetchall()
        return [json.loads(part) for row in rows for part in row]

    assert benchmark(words)


@pytest.mark.benchmark(group="find")
def test_find_misspelt(benchmark, db) -> None:
    """Wanted: at most seven times the floor."""
    assert benchmark(find, db, PHRASE).faults


@pytest.mark.benchmark(group="find")
def test_find_eight_hundred_words_that_are_none(benchmark, db) -> None:
    """Wanted: below 100 ms (48 measured)."""
    assert benchmark(find, db, MANY_WORDS) is not None


@pytest.mark.benchmark(group="a body in every position, supple and stiff")
def test_floor_places_every_position(benchmark) -> None:
    """The floor: the same positions placed by their angles, nothing solved."""
    assert benchmark(lambda: [forward(USUAL, each) for each in shipped().values() for _ in range(2)])


@pytest.mark.benchmark(group="a body in every position, supple and stiff")
def test_inverse_of_every_position(benchmark) -> None:
    """Wanted: below 5 ms each (0.5 measured)."""
    limits = (OPEN, OPEN._replace(ankle=28, shoulder=185))
    assert benchmark(lambda: [inverse(USUAL, each, limit) for each in shipped().values() for limit in limits])


@pytest.mark.benchmark(group="sessions")
def test_a_sixth_of_all_sessions(benchmark, shelves) -> None:
    """Wanted: a median below 100 ms each (10 measured)."""
    asked = [
        (shelf, ChainQuestion(fault.id, shelf.kits["full"], fault.causes[0].id))
        for shelf in shelves.values()
        for fault in shelf.faults.values()
    ][::6]

    def every() -> int:
        done = 0
        for shelf, question in asked:
            try:
                done += len(fault_sessions(matter_of(shelf, question), 20))
            except NoChain:
                continue
        return done

    assert benchmark.pedantic(every, rounds=3, warmup_rounds=1)


@pytest.mark.benchmark(group="build")
def test_steps_between_two_hundred_places(benchmark) -> None:
    """As many as a large lift has, drawn at random. Wanted: below a second."""
    draw = Random(200)
    found: set[Dials] = set()
    while len(found) < 200:
        first = draw.randrange(6)
        ends = (first, draw.randrange(first, 6))
        scales = (draw.choice(list(scale)) for scale in (Speed, Load, Catch))
        found.add(Dials(draw.choice(list(Stage)[:5]), *ends, draw.choice([0, 4]), *scales, draw.random() < 0.2))
    assert benchmark.pedantic(step_rows, args=(sorted(found), ()), rounds=3)


@pytest.mark.benchmark(group="check")
def test_two_hundred_drills_compared(benchmark) -> None:
    """Texts of 200 words out of 500. Wanted: below a second."""
    rng = Random(1)
    words = [f"w{n}" for n in range(500)]
    texts = {DrillId(f"d{n}"): " ".join(rng.choices(words, k=200)) for n in range(200)}
    drills = {id_: drill(id_, sections={"Do": text}) for id_, text in texts.items()}
    benchmark.pedantic(resemblance, args=(drills,), rounds=3)


@pytest.mark.benchmark(group="figures")
def test_a_figure(benchmark, library: Library) -> None:
    """Wanted: below 1 ms (0.3 measured)."""
    assert benchmark(figure_svg, library.positions[PositionId("jerk-split")])


@pytest.mark.benchmark(group="figures")
def test_all_figures_written(benchmark, library: Library, tmp_path) -> None:
    """Wanted: two seconds; nothing changed, half a second."""
    of = Drawable(library.positions, library.faults, library.drills, library.lifts)
    assert benchmark.pedantic(write_figures, args=(of, tmp_path), rounds=1)


@pytest.mark.benchmark(group="figures")
def test_all_figures_unchanged(benchmark, library: Library, tmp_path) -> None:
    """Nothing is drawn again."""
    of = Drawable(library.positions, library.faults, library.drills, library.lifts)
    write_figures(of, tmp_path)
    assert benchmark.pedantic(write_figures, args=(of, tmp_path), rounds=3) == []


@pytest.mark.benchmark(group="class")
def test_the_demo_proved(benchmark, db) -> None:
    """By one worker, imports and what is not idle time apart. Wanted: a second."""
    from kb.solve.model import built
    from kb.solve.rotation import solver_of

    asked = class_file(DEMO, db)
    rotation = class_matter(asked, own_of(asked, lambda lift: read.shelf(db, lift))).rotation

    def proved() -> str:
        model = built(rotation)
        model.model.minimize(model.idle())
        solver = solver_of(10)
        return solver.status_name(solver.solve(model.model))

    assert benchmark.pedantic(proved, rounds=3) == "OPTIMAL"
