"""The search in process over every shipped question, beside a constraint solver on the same instances.

Wanted: median under 10 ms and worst under 150 ms; the solver's median at least 20 times ours.
"""

import statistics
import time
from collections.abc import Iterator
from contextlib import suppress

import oracle
import pytest
from shipped import questions, worlds

from kb.ask.chain import NoChain, chain

KITS = ("stick", "hall")


def all_answers(shelves) -> list[float]:
    """Seconds for each question, in order."""
    took = []
    for shelf, question in questions(shelves, KITS):
        started = time.perf_counter()
        with suppress(NoChain):
            chain(shelf, question)
        took.append(time.perf_counter() - started)
    return took


@pytest.mark.benchmark(group="search, all shipped questions")
def test_all_shipped_questions(benchmark, shelves, capsys) -> None:
    """Every fault, cause and lift in two kits; median and worst of a question are printed."""
    took = benchmark.pedantic(all_answers, args=(shelves,), rounds=3, warmup_rounds=1)
    with capsys.disabled():
        median, worst = 1000 * statistics.median(took), 1000 * max(took)
        print(f"\n{len(took)} questions: median {median:.1f} ms, worst {worst:.1f} ms")


def a_sample(shelves) -> Iterator[tuple]:
    """Every ninth question: the solver takes seconds for some."""
    for n, (shelf, question) in enumerate(questions(shelves, ("hall",))):
        if n % 16 == 0:
            yield shelf, question


@pytest.mark.benchmark(group="search against a solver")
def test_against_the_solver(benchmark, shelves, library, capsys) -> None:
    """The same instances, ours and CP-SAT's, one worker each; every ratio is of one instance."""
    ratios, slowest = [], 0.0
    for shelf, question in a_sample(shelves):
        started = time.perf_counter()
        try:
            ours = chain(shelf, question).routes[0].cost
        except NoChain:
            continue
        between = time.perf_counter()
        theirs = oracle.best(worlds(library)[shelf.lift.id], question)
        ended = time.perf_counter()
        assert theirs is None or theirs[0] == ours
        ratios.append((ended - between) / (between - started))
        slowest = max(slowest, ended - between)
    benchmark.pedantic(lambda: None, rounds=1)
    with capsys.disabled():
        print(
            f"\n{len(ratios)} questions: the solver takes {statistics.median(ratios):.0f} times as long (median),"
            f" {min(ratios):.0f} to {max(ratios):.0f}; its slowest {slowest:.1f} s"
        )
