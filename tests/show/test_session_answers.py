"""A session in words, for programs and as a message."""

import json

import pytest

from kb.ask import read
from kb.ask.matter import matter_of
from kb.ask.question import ChainQuestion
from kb.ask.session.records import Session
from kb.ask.session.sessions import fault_sessions
from kb.commands.session_asked import with_texts
from kb.dials import Dials
from kb.loading import Loaded
from kb.show.pace import pace_text
from kb.show.session_json import sessions_json
from kb.show.session_message import message_text
from kb.show.session_text import Where, session_bars, session_text, sessions_text
from kb.show.session_words import clock, dose_words, if_not_words, standard_words, tempo_words, weight_words
from kb.show.setting import Setting
from kb.terms import Dose, DrillId, FaultId, LiftId, Load

PLAIN = Setting()
TIMES = "\N{NO-BREAK SPACE}x\N{NO-BREAK SPACE}"


def asked(
    db: read.sqlite3.Connection, lift: str, fault: str, minutes: int, kit: str = "hall", **more: object
) -> tuple[tuple[Session, ...], Where]:
    """The sessions for a fault as the command has them, and the room."""
    shelf = read.shelf(db, LiftId(lift))
    question = ChainQuestion(FaultId(fault), shelf.kits[kit])._replace(**more)  # type: ignore[arg-type]
    found = with_texts(db, fault_sessions(matter_of(shelf, question), minutes))
    return found, Where(kit, shelf.kits[kit], shelf.items, shelf.drills)


def test_the_answer_comes_first(db: read.sqlite3.Connection) -> None:
    """Title, reason, chart, sheet, then what was left out; cautions once, at the end."""
    found, where = asked(db, "clean", "clean-bar-crashes", 30)
    lines = sessions_text(found, 1, where, PLAIN)
    text = "\n".join(lines)
    order = ["The bar crashes", "Because: loses contact", "Warm-up", "Drills", "The lift", "Ends at ", "Left out"]
    places = [text.index(each) for each in [*order, "Stop on pain", "No qualified coach"]]
    assert places == sorted(places)
    assert max(map(len, lines)) <= 80
    assert text.count("Stop on pain") == 1
    assert text.count("how to miss") == 1


def test_each_block_says_all_that_is_needed(db: read.sqlite3.Connection) -> None:
    """When, how much, one cue, when to move on, what if not, what if early."""
    (session,), where = asked(db, "clean", "clean-bar-crashes", 30)
    text = "\n".join(session_text(session, where, Setting(width=100)))
    for block in session.blocks:
        assert f"{clock(block.start_s)}  {block.drill.name}" in text
        assert f'"{block.drill.cues[0]}"' in text
    assert text.count("Move on ") == len(session.blocks)
    chained = [block for block in session.blocks if block.part == "chain"]
    assert text.count("Early    go on to") == len(chained)
    assert "stay on it, 4 x 3" in text


def test_several_sessions_are_listed(db: read.sqlite3.Connection) -> None:
    """One in full, the others in a line each."""
    found, where = asked(db, "clean", "clean-bar-crashes", 5)
    assert len(found) > 1
    first, second = (sessions_text(found, which, where, PLAIN) for which in (1, 2))
    assert f"session 1 of {len(found)}" in " ".join(first[:3])
    assert f"session 2 of {len(found)}" in " ".join(second[:3])
    assert any("sessions in all" in line for line in first)


def test_an_earlier_fault_is_said(db: read.sqlite3.Connection) -> None:
    """Where the cause is another fault, the title says what is worked on."""
    found, where = asked(db, "jerk", "jerk-press-out", 45, cause="made-by-cut-drive")
    text = " ".join(" ".join(sessions_text(found, 1, where, PLAIN)).split())
    assert "So it works on what comes before it: " in text
    assert "go on to " in text
    assert "Ask someone qualified first" in text


def test_the_chart_has_the_drills_and_the_lift(db: read.sqlite3.Connection) -> None:
    """One bar each, a check drawn as one; preparation has no bar of its own but says what it opens."""
    (session,), _ = asked(db, "snatch", "heels-lift-in-catch", 30)
    bars = session_bars(session)
    shown = [block for block in session.blocks if block.part in ("chain", "lift")]
    assert [bar.name for bar in bars] == [block.drill.name for block in shown]
    assert bars[0].dials is None
    assert bars[0].said.startswith("opens ")
    assert [bar.work for bar in bars] == [block.work for block in shown]


def test_json_has_the_shape(db: read.sqlite3.Connection) -> None:
    """DESIGN section 6, the first session at the top and all of them beside it; it survives json."""
    found, _ = asked(db, "clean", "clean-bar-crashes", 5)
    first = found[0].blocks[0]._replace(loaded=Loaded(60, 20, (15.0, 5.0)))
    answer = json.loads(
        json.dumps(sessions_json((found[0]._replace(blocks=(first, *found[0].blocks[1:])), *found[1:])))
    )
    assert answer["version"] == 1
    assert {"minutes", "left_out", "blocks", "sessions", "n", "of", "spare_s"} <= set(answer)
    assert answer["blocks"] == answer["sessions"][0]["blocks"]
    assert len(answer["sessions"]) == answer["of"] == len(found)
    block = answer["blocks"][0]
    keys = "start_s seconds part drill rounds reps hold_s rest_s load cue standard if_not if_early"
    assert set(keys.split()) <= set(block)
    assert block["load"] == {"kg": 60, "bar_kg": 20, "discs_kg": [15.0, 5.0]}
    assert answer["blocks"][-1]["load"] is None
    assert set(block["drill"]) == {"id", "name"}
    assert {frozenset(each) for each in answer["left_out"]} <= {frozenset({"id", "why"})}
    linked = [each["if_early"] for each in answer["blocks"]]
    assert linked[0] == {"id": answer["blocks"][1]["drill"]["id"]}
    assert linked[-1] is None


def test_a_message_is_short(db: read.sqlite3.Connection) -> None:
    """A line a drill: what, how much, when to move on; the caution last; fit to send."""
    (session,), _ = asked(db, "clean", "clean-bar-crashes", 20)
    lines = message_text(session, PLAIN)
    assert len(lines) == len(session.blocks) + 2
    assert lines[0] == "The bar crashes onto the shoulders: 20 min"
    assert lines[-1].startswith("Stop on pain")
    assert sum(map(len, lines)) < 1600
    assert not any("\N{NO-BREAK SPACE}" in line for line in lines)
    several, _ = asked(db, "clean", "clean-bar-crashes", 5)
    assert message_text(several[1], PLAIN)[0].endswith(f"5 min, 2 of {len(several)}")


def test_the_pace_is_written_line_by_line(db: read.sqlite3.Connection) -> None:
    """A line where something is begun, each with its minute and second, in order."""
    (session,), _ = asked(db, "clean", "hips-rise-first", 20)
    lines = pace_text(session, PLAIN)
    assert lines[0] == "  0:00  Brisk step-through. Change over."
    stamps = [line.split()[0] for line in lines if line]
    seconds = [60 * int(stamp.split(":")[0]) + int(stamp.split(":")[1]) for stamp in stamps]
    assert seconds == sorted(seconds)
    assert any("Lower for three. Hold." in line for line in lines)


@pytest.mark.parametrize(
    ("dose", "said"),
    [
        (Dose(rounds=3, reps=5), f"3{TIMES}5"),
        (Dose(rounds=3, reps=5, tempo=(3, 0, 1, 0), rest_s=60), f"3{TIMES}5, down in 3, rest 60 s"),
        (Dose(reps=4, tempo=(2, 2, 2, 2)), f"1{TIMES}4, down in 2, hold 2 s, up in 2, stand 2 s"),
        (Dose(rounds=2, hold_s=20, sides=2, rest_s=10), f"2{TIMES}20 s, each side, rest 10 s"),
        (Dose(rounds=2, reps=3, hold_s=5), f"2{TIMES}3, then hold 5 s"),
        (Dose(good=30, reps=3, success=80), "30 good ones, 3 at a time (about 38 tries)"),
        (Dose(rounds=6, reps=1, every_s=75), f"6{TIMES}1, one every 1:15 min"),
        (Dose(rounds=6, reps=1, every_s=45), f"6{TIMES}1, one every 45 s"),
        (Dose(reps=6, tempo=(1, 0, 1, 0)), f"1{TIMES}6"),
    ],
)
def test_doses_in_words(db: read.sqlite3.Connection, dose: Dose, said: str) -> None:
    """As a coach says them."""
    slow = read.drills(db)[DrillId("slow-dip")]
    assert dose_words(slow, dose, PLAIN) == said


def test_the_lifts_own_speed_has_no_tempo(db: read.sqlite3.Connection) -> None:
    """There it is only how the minutes were reckoned; a stretch says how long each takes."""
    drills = read.drills(db)
    assert tempo_words(drills[DrillId("full-clean")], Dose(reps=2, tempo=(4, 3, 4, 4))) == ""
    assert tempo_words(drills[DrillId("wrist-rock")], Dose(reps=6, tempo=(2, 1, 2, 0))) == "about 5 s each"


def test_no_weight_before_the_form_without_one(db: read.sqlite3.Connection) -> None:
    """A drill that can be done unloaded, and hasn't been in the session, begins with one good try unloaded."""
    said = 0
    for lift, fault in (("clean", "clean-bar-crashes"), ("snatch", "early-arm-bend"), ("jerk", "jerk-press-out")):
        (session, *_), _where = asked(db, lift, fault, 30)
        unloaded: set[str] = set()
        for block in session.blocks:
            owed = block.load is Load.LIGHT and block.drill.load[0] < Load.LIGHT and block.drill.id not in unloaded
            assert block.unloaded_first is owed, block.drill.id
            said += owed
            if block.load < Load.LIGHT:
                unloaded.add(block.drill.id)
    assert said > 2


def test_weights_in_words(db: read.sqlite3.Connection) -> None:
    """The discs where they are known, else how heavy; nothing for preparation and empty hands."""
    (session,), _ = asked(db, "clean", "clean-bar-crashes", 30)
    lift = next(block for block in session.blocks if block.part == "lift")
    assert weight_words(lift) == "light bar, after one good try unloaded"
    lift = lift._replace(unloaded_first=False)
    assert weight_words(lift) == "light bar"
    assert weight_words(lift._replace(loaded=Loaded(52.5, 20, (15.0, 1.25)))) == "52.5 kg: 15 + 1.25 a side"
    assert weight_words(lift._replace(loaded=Loaded(20, 20, ()))) == "the bar alone, 20 kg"
    heavy = lift._replace(load=Load.WORKING)
    assert weight_words(heavy) == "build up to a load that leaves two good reps in hand"
    assert weight_words(heavy._replace(loaded=Loaded(60, 20, (20.0,)))) == "build up to 60 kg: 20 a side"
    assert weight_words(lift._replace(load=Load.STICK)) == "stick"
    assert weight_words(lift._replace(load=Load.NONE)) == ""
    assert weight_words(lift._replace(gear=())) == "light weight"
    assert weight_words(session.blocks[0]) == ""


def test_standards_fit_what_is_done(db: read.sqlite3.Connection) -> None:
    """Where fewer are done than the standard speaks of, all must be so; and the fault gone from each."""
    (session,), where = asked(db, "clean", "clean-bar-crashes", 30)
    block = next(each for each in session.blocks if each.drill.id == "tall-clean")
    assert block.gone == session.fault.gone
    seen = f"{block.drill.standard.seen}; and {block.gone}"
    assert standard_words(block) == f"5 of 6: {seen}"
    assert standard_words(block._replace(dose=block.dose._replace(rounds=1))) == f"all 3: {seen}"
    assert standard_words(block._replace(dose=Dose(reps=1))) == seen
    nothing = block._replace(if_not=None)
    assert if_not_words(nothing, where.drills, PLAIN) == "less weight, and slower"
    assert if_not_words(nothing._replace(load=Load.STICK), where.drills, PLAIN) == "slower, and fewer at a time"
    assert if_not_words(nothing._replace(part="warm-up"), where.drills, PLAIN) == ""
    check = nothing._replace(work=False, dose=block.dose._replace(rounds=1))
    assert if_not_words(check, where.drills, PLAIN).startswith("stay on it, 4")
    whole = nothing._replace(work=False, dose=block.drill.dose)
    assert if_not_words(whole, where.drills, PLAIN) == "less weight, and slower"
    assert isinstance(block.dials, Dials)
