"""How easily entries read: Flesch's formula, and our count of syllables beside a dictionary's."""

import math
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kb.check.report.reading import reading_ease, readings
from kb.check.report.syllables import syllables
from kb.make.library import Library, load
from kb.terms import DrillId

DATA = Path(__file__).parents[2] / "data"


def _dictionary() -> dict[str, set[int]]:
    lines = (DATA / "syllables.tsv").read_text("utf-8").splitlines()
    rows = [line.split("\t") for line in lines if line and not line.startswith("#")]
    return {word: {int(each) for each in counts.split()} for word, counts in rows}


def test_syllables_beside_the_cmu_pronouncing_dictionary() -> None:
    """Of the words that entries use, all but one in fifty have as many syllables as the dictionary gives them."""
    known = _dictionary()
    assert len(known) > 800
    wrong = [word for word, counts in known.items() if syllables(word) not in counts]
    assert len(wrong) <= len(known) // 50, wrong


@pytest.mark.parametrize(
    ("word", "count"),
    [
        ("squat", 1),
        ("mid-foot", 2),
        ("lifter's", 2),
        ("isn't", 2),
        ("don't", 1),
        ("12", 2),
        ("", 1),
        ("hmm", 1),
        ("Knee", 1),
    ],
)
def test_syllables_of_what_no_dictionary_has(word: str, count: int) -> None:
    """Hyphens, possessives, numbers a digit at a time, and never none."""
    assert syllables(word) == count


def test_the_formula() -> None:
    """Flesch 1948, p. 229: 206.835 - .846 wl - 1.015 sl, of syllables a hundred words and words a sentence."""
    # thirteen words in two sentences; fifteen syllables: every word one, but `over` and `after`, two each
    text = "The cat ran over the wall. It came after me and then left."
    wl, sl = 100 * 15 / 13, 13 / 2
    ease, words, a_sentence, a_word = reading_ease(text)
    assert (words, a_sentence) == (13, 6.5)
    assert math.isclose(a_word, 15 / 13)
    assert math.isclose(ease, 206.835 - 0.846 * wl - 1.015 * sl)


def test_items_colons_and_marks_end_sentences() -> None:
    """An item of a list is a unit of thought; Markdown's marks are no words."""
    text = "1. Breathe in before you lower; be steady.\n2. Stand up:\n\n- *Bar*: Wait for the hip.\n- Floor: Push\n"
    # Breathe in before you lower / be steady / Stand up / Bar / Wait for the hip / Floor / Push
    _, words, a_sentence, _ = reading_ease(text)
    assert words == 16
    assert math.isclose(a_sentence, 16 / 7)


def test_no_words_read_with_ease() -> None:
    """There is nothing to stumble over."""
    assert reading_ease("  \n - ") == (100.0, 0, 0.0, 0.0)


@given(st.text(max_size=200))
def test_any_text_can_be_read(text: str) -> None:
    """Whatever is written, the measure is a number, and saying it twice as two paragraphs changes nothing."""
    once, twice = reading_ease(text), reading_ease(f"{text}\n\n{text}")
    assert math.isfinite(once[0])
    assert twice[1] == 2 * once[1]
    assert math.isclose(once[0], twice[0])


def test_every_entry_that_says_anything_hardest_first() -> None:
    """Sources are not read, and an entry without text isn't there."""
    library = load(DATA / "small")
    found = readings(library)
    assert list(found) == sorted(found)
    assert {each.id for each in found} <= set(library.sources)
    by_id = {each.id: each for each in found}
    drill = library.drills[DrillId("tall-clean")]
    said = {heading: text for heading, text in drill.sections.items() if heading != "Sources"}
    assert by_id["tall-clean"].words == reading_ease("\n\n".join(said.values()))[1]
    with_source = drill._replace(sections={**said, "Sources": "Incomprehensibilities, passim."})
    (alone,) = readings(Library(root=DATA, drills={drill.id: with_source}))
    assert alone == by_id["tall-clean"]
    assert readings(Library(root=DATA, drills={drill.id: drill._replace(sections={})})) == ()
