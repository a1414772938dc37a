"""What was said of a lifter beside the fault, and what is minded because of it: all common practice, no source."""

import json
import sqlite3
from pathlib import Path

import pytest
from click.testing import CliRunner

from kb.ask import read
from kb.ask.changed import CHANGED
from kb.ask.person import PERSON, minded
from kb.commands.group import drillpath
from kb.commands.said import SaidOf, said_of
from kb.errors import BadInput

SAYS = {
    "Past sixty": [
        "a retired chap of 67 started in the spring",
        "teaching a 65-year-old to power clean",
        "a woman in her late sixties",
        "One of my ladies, 62, came back",
        "she's 71 and keen",
        "74, can hold a stick overhead",
    ],
    "Won't split": ["she hates splitting", "do I make her split?", "he says splitting feels silly, she won't split"],
    "No deep squat": ["can't squat below parallel", "he can't get to depth", "no deep squat, physio's words"],
    "Alone": ["I train alone in the garage", "hi, I am self coached", "nobody to watch me"],
    "Others in the room": [
        "I've got six others in the room",
        "he's in a group of six",
        "can't stand with her all night",
    ],
    "Back after long": ["came back to lifting after 15 years off", "used to snatch 100"],
    "Words that were tried": [
        'I keep shouting "elbows up" and it does nothing',
        'Coach says "get behind the bar"',
        'was told to "keep it close"',
        "told him to punch",
    ],
    "Afraid": ["she's scared of the bar on her head", "he freezes at 60", "lost his nerve after a fall"],
    "Hears little": ["a deaf lifter, he lip reads"],
    "Sees little": ["46, blind in one eye", "he has poor eyesight"],
    "Short of sleep": ["she's on night shifts", "slept rubbish"],
    "Days before it counts": ["her first meet is tomorrow", "tomorrow is my first competition", "comp is in two days"],
    "Is it one": ["just wondering if I should bother", "is it a fault at all?", "do I leave it alone?"],
    "Better from a raised bar": ["on two blocks of plates he's much better", "might be he doesn't fit the floor"],
    "New on one side": ["since Christmas the right arm comes late", "his left elbow is late since Christmas"],
    "Only before people": ["fine in the gym, misses the opener at meets", "nervous on the platform"],
    "Grass, a slope": ["on rough grass in the park", "a strip of carpet"],
    "After a birth": ["7 months post-birth, cleared", "a new mum"],
    "A belly or a chest": ["61, big belly, 118 kg"],
    "Few words in common": ["English is not our first", "doesn't speak much English"],
    "Nothing may drop": [
        "school hall, no dropping allowed",
        "downstairs neighbours",
        "no jumping loud",
        "cannot drop here",
    ],
    "Is it the room?": [
        "my garage ceiling is low, here I barely dip; in the club it is straight and crisp",
        "the beam is 8 cm above the plates, outside nothing wrong with it",
    ],
    "Low ceiling": ["garage with a low ceiling", "the ceiling is 2.15"],
}
NOT = [
    "F, 33, bodyweight 63, snatch 62",
    "misses 60 of her best, 30 is fine",
    "She's 1.85 m and 24",
    "over 60 I forget and rip it",
    "two evenings of 75 minutes",
    "not stable in the split",
    "chin goes to the ceiling",
    "Coach says I'm tired",
    "I'm told I dip too deep",
    "she drops under it like a stone",
    "comes back from the hip",
]


@pytest.mark.parametrize(("minds", "said"), [(minds, said) for minds, texts in SAYS.items() for said in texts])
def test_it_is_heard(minds: str, said: str) -> None:
    """Each in the ways in which coaches and lifters say it."""
    assert any(each.startswith(minds) for each in minded(said))


@pytest.mark.parametrize("said", NOT)
def test_what_sounds_like_it_is_none(said: str) -> None:
    """Weights, heights and minutes are no ages; a bar drops, a chin goes to the ceiling."""
    assert minded(said) == ()


def test_each_says_something_of_its_own() -> None:
    """No row is there twice, and every row is met by the phrases above."""
    texts = [each.minds for each in PERSON]
    assert len(set(texts)) == len(texts) == len(SAYS) + len(CHANGED)  # these have a table of their own


def test_a_chain_says_what_is_minded_and_stops_where_it_must(monkeypatch: pytest.MonkeyPatch) -> None:
    """Before the checks; with a care first where one is due; and nothing but the care where that is all."""
    monkeypatch.delenv("DRILLPATH_LIBRARY", raising=False)
    asked = ["chain", "jerk-press-out", "--kit", "hall", "--said"]
    found = CliRunner().invoke(drillpath, [*asked, "she's 71, hates splitting, cranky knee"])
    said = " ".join(found.stdout.split())
    places = [said.index(part) for part in ("A niggle:", "Past sixty:", "To tell the causes", "Until a check says")]
    assert places == sorted(places)
    stopped = CliRunner().invoke(drillpath, [*asked, "her shoulder hurts at night"])
    assert stopped.exit_code == 2
    assert "ask someone qualified first" in " ".join(stopped.stderr.split())
    assert stopped.stdout == ""


def test_who_is_said_to_be_cleared_has_the_care_and_then_the_chain(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    """What stopped it names the way; with it the care comes first; a child it never answers. So in a class, too."""
    monkeypatch.delenv("DRILLPATH_LIBRARY", raising=False)
    asked = ["chain", "jerk-press-out", "--kit", "hall", "--said", "slipped a disc in June, 40"]
    stopped = CliRunner().invoke(drillpath, [*asked[:-1], "herniated a disc in June"])
    assert "--cleared" in stopped.stderr
    said = " ".join(
        CliRunner().invoke(drillpath, [*asked[:-1], "herniated a disc in June", "--cleared"]).stdout.split()
    )
    assert said.index("Hurt or ill before;") < said.index("Until a check says another:")
    child = CliRunner().invoke(drillpath, [*asked[:-1], "my son, 14, a sore knee", "--cleared"])
    assert child.exit_code == 2
    assert "--cleared" not in child.stderr
    lifters = "  - {name: Ada, fault: jerk-press-out, said: herniated a disc in June%s}\n  - {name: Bo, holds: []}"
    for more, instead in (("", "Ada: not by this plan"), (", cleared: his physiotherapist", "Ada: hurt there once.")):
        file = tmp_path / "class.yaml"
        file.write_text(f"lift: jerk\nminutes: 45\nlifters:\n{lifters % more}\n", encoding="utf-8")
        assert instead in " ".join(CliRunner().invoke(drillpath, ["class", str(file)]).stdout.split())


def test_words_that_were_tried_are_said_by_no_drill(monkeypatch: pytest.MonkeyPatch) -> None:
    """Whoever said them, in quotation marks: another cue takes their place. Common practice, no source."""
    monkeypatch.delenv("DRILLPATH_LIBRARY", raising=False)
    asked = ["chain", "pull-stalls-at-knee", "--lift", "clean", "--kit", "hall", "--said"]

    def cues(words: str) -> list[str]:
        found = CliRunner().invoke(drillpath, [*asked, words]).stdout
        return [line.strip() for line in found.splitlines() if line.strip().startswith("Say ")]

    assert any("wait" in cue for cue in cues("he is in a hurry"))
    for told in (
        'my first coach always taught "wait, wait, wait, then explode"',
        'I keep telling him "wait"',
        'the club drummed "wait" into him',
    ):
        assert cues(told)
        assert not any("wait" in cue for cue in cues(told))
    assert cues('he says "wait" means nothing to him') == cues("he is in a hurry")


def test_where_no_chain_fits_what_was_said_of_the_lifter_is_minded_too(monkeypatch: pytest.MonkeyPatch) -> None:
    """In five minutes, in words and for programs."""
    monkeypatch.delenv("DRILLPATH_LIBRARY", raising=False)
    asked = ["chain", "jerk-press-out", "--kit", "hall", "--minutes", "5", "--said", "she's 71, a niggle in the elbow"]
    found = CliRunner().invoke(drillpath, asked)
    assert found.exit_code == 1
    assert found.stdout.index("A niggle:") < found.stdout.index("Past sixty:")
    told = json.loads(CliRunner().invoke(drillpath, [*asked, "--json"]).stdout)
    assert told["caution"].startswith("A niggle:")
    assert [each.partition(":")[0] for each in told["minds"]] == ["Past sixty"]


LOUD = {"snatch": "full-snatch", "clean": "full-clean", "jerk": "split-jerk"}
"""A part of each lift whose feet land."""


@pytest.mark.parametrize(
    ("fault", "lift"), [("soft-elbows", "snatch"), ("jerk-dips-forward", "jerk"), ("clean-slow-elbows", "clean")]
)
def test_a_quiet_chain_holds_nothing_that_bangs(
    monkeypatch: pytest.MonkeyPatch, db: sqlite3.Connection, fault: str, lift: str
) -> None:
    """No feet that land, and an end that is quiet, which is said; a part named that bangs is refused."""
    monkeypatch.delenv("DRILLPATH_LIBRARY", raising=False)
    asked = ["chain", fault, "--lift", lift, "--kit", "home", "--quiet"]
    found = json.loads(CliRunner().invoke(drillpath, [*asked, "--json"]).stdout)
    assert found["minds"][0].startswith("Quiet: it ends in the ")
    drills = read.drills(db)
    assert all(drills[entry["id"]].feet != "land" for route in found["routes"] for entry in route["drills"])
    assert CliRunner().invoke(drillpath, [*asked, "--to", LOUD[lift]]).exit_code == 2


def test_a_second_cause_that_was_found_comes_next_by_turns(monkeypatch: pytest.MonkeyPatch) -> None:
    """Before what is left if it is another; a cause that the fault hasn't got is refused."""
    monkeypatch.delenv("DRILLPATH_LIBRARY", raising=False)
    causes = json.loads(CliRunner().invoke(drillpath, ["show", "jerk-press-out", "--json"]).stdout)["causes"]
    first, second, third, *_ = [each["id"] for each in causes]
    asked = ["chain", "jerk-press-out", "--kit", "hall", "--cause", first, "--also-cause"]
    said = " ".join(CliRunner().invoke(drillpath, [*asked, second]).stdout.split())
    other = said.index(f"- {second.replace('-', ' ').capitalize()} (")
    assert (
        said.index("The other cause found")
        < other
        < said.index("by turns with those above")
        < said.index("If it is another cause")
    )
    assert said.index("If it is another cause") < said.index(f"- {third.replace('-', ' ').capitalize()} (")
    assert CliRunner().invoke(drillpath, [*asked, "tight-shoes"]).exit_code == 2


def test_words_that_helped_are_not_taken_to_have_failed() -> None:
    """Told in the same words, they stay in the drills; others that were quoted go all the same."""
    text = 'Told him "front foot first" and it was right; I keep telling him "elbows high"'
    assert said_of(text).tried > said_of(text, helped="front foot first").tried == {"elbow", "high"}
    one = 'told him "front foot first"'
    assert said_of(one).minds
    assert said_of(one, helped="front foot first") == SaidOf()
    with pytest.raises(BadInput, match="ask someone qualified first"):
        said_of(None, helped="a wider grip, since her wrist hurts")


@pytest.mark.parametrize(
    ("said", "begins"),
    [
        ("grown 11 cm this year", ["Has grown"]),
        ("cut 3 kg in the last week for the category", ["Weight was cut"]),
        ("new shoes with a higher heel three weeks ago", ["Other shoes"]),
        ("since I moved her from every day to three days", ["Something was changed"]),
        ("no new shoes, old ones", []),
        ("first on Monday it's crisp; on Friday we put squats in front and it's all misses", ["Is it the order?"]),
        ("we put squats in front on Friday; snatched first it's crisp", ["Is it the order?"]),
        ("my group squats 5x5 first and I snatch on pudding legs, on Saturday I snatch first", ["Is it the order?"]),
        ("I squat with the bar in front right down to a box, fine", []),
        ("decent at the club, at mine on thick foam he totters", ["Is it the floor"]),
        ("clean ones on the concrete, none on the foam", ["Is it the floor"]),
        ("we train on grass", ["Grass"]),
        ("a beginner, month two, empty bar", ["New to it"]),
        ("could be he is scared of it, or is she afraid for the neck?", []),
        ("she is afraid of it", ["Afraid"]),
        ("copies well when he watches, gets confused when i talk", ["Learns by seeing"]),
        ("falls forward, elbows low, everything really. what do i pick", ["Much at once"]),
        ("My father in law, 75, wishes to learn it", ["Past sixty"]),
        ("a gentleman of 71 years", ["Past sixty"]),
    ],
)
def test_what_changed_of_late_is_minded(said: str, begins: list[str]) -> None:
    """One thing is changed back before a fault is mended. Common practice, no source."""
    told = minded(said)
    assert len(told) == len(begins)
    assert all(text.startswith(each) for text, each in zip(told, begins, strict=True))
