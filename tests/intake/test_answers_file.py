"""Files of answers: YAML and JSON read alike, whatever is wrong named with file, line and field, written whole."""

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from kb.ask.ability.placement import SAYS, Answer
from kb.commands.asked import sentence
from kb.errors import BadInput
from kb.intake.answers_file import MOST_BYTES, read_answers, write_answers
from kb.terms import DrillId

KNOWN = tuple(DrillId(each) for each in ("rack-hold", "front-squat", "full-clean"))
GOOD = (Answer(KNOWN[1], "yes"), Answer(KNOWN[0], "no"), Answer(KNOWN[1], "skip"))


def read(folder: Path, data: "str | bytes") -> tuple[Answer, ...]:
    """What a file of that content says."""
    path = folder / "answers.yaml"
    path.write_bytes(data if isinstance(data, bytes) else data.encode())
    return read_answers(path, KNOWN, "clean")


@pytest.mark.parametrize(
    "text",
    [
        "- {id: front-squat, answer: yes}\n- {id: rack-hold, answer: no}\n- {id: front-squat, answer: skip}\n",
        "- id: front-squat\n  answer: Yes\n- answer: 'no'\n  id: rack-hold\n# again\n- id: front-squat\n  answer: skip",
        '[{"id": "front-squat", "answer": "yes"},\n\t{"id": "rack-hold", "answer": "no"},\n'
        '\t{"answer": "skip", "id": "front-squat"}]',
        "\ufeff---\r\n- {id: front-squat, answer: yes}\r\n- {id: rack-hold, answer: no}\r\n"
        "- {id: front-squat, answer: skip}\r\n",
    ],
    ids=["flow", "block", "JSON with tabs", "as Windows writes it"],
)
def test_what_is_read(text: str, tmp_path: Path) -> None:
    """The same answers, however they are written."""
    assert read(tmp_path, text) == GOOD


def test_no_answers_yet(tmp_path: Path) -> None:
    """An empty list is one."""
    assert read(tmp_path, "[]") == ()


LIST = "this must be a list of answers, each as {id: front-squat, answer: yes}."


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", f"line 1: {LIST}"),
        ("# nothing\n", f"line 1: {LIST}"),
        ("answers: []\n", f"line 1: {LIST}"),
        ("\nyes\n", f"line 2: {LIST}"),
        ("- front-squat\n", f"line 1: {LIST}"),
        ("- {id: rack-hold, answer: yes}\n- [front-squat, yes]\n", f"line 2: {LIST}"),
        ("- {id: rack-hold, answer: yes}\n- &a {id: rack-hold, answer: yes}\n- *a\n", f"line 2: {LIST}"),
        ("- {id: rack-hold, answer: !!bool yes}\n", f"line 1: {LIST}"),
        ("- {id: rack-hold, answer: [yes]}\n", f"line 1: {LIST}"),
        ("[[[[[]]]]]", f"line 1: {LIST}"),
        ("[" * 5000, "line 1: this isn't sound YAML or JSON: exceeded maximum nesting depth."),
        ("- {id: rack-hold, answr: yes}", "line 1: `answr` is no field of an answer. Did you mean answer?"),
        ("- {id: rack-hold, 7: yes}", "line 1: `7` is no field of an answer. Did you mean id or answer?"),
        ("- id: rack-hold\n  id: rack-hold\n", "line 2: `id` is given twice."),
        ("- {id: rack-hold}\n", "line 1: `answer` is missing."),
        ("- {answer: yes}\n", "line 1: `id` is missing."),
        ("- id: rack-hold\n  answer:\n", "line 2: `answer` must be a word."),
        ('- {id: "", answer: yes}\n', "line 1: `id` must be a word."),
        ("- {id: rack-hold, answer: maybe}\n", "line 1: `answer` is yes, no or skip, not `maybe`."),
        ("- {id: rack-hold, answer: true}\n", "line 1: `answer` is yes, no or skip, not `true`."),
        (
            "- {id: front-squad, answer: yes}\n",
            "line 1: `id`: `front-squad` is no check for the clean. Did you mean front-squat?",
        ),
        (
            "- {id: xyz, answer: yes}\n",
            "line 1: `id`: `xyz` is no check for the clean. Did you mean front-squat, full-clean or rack-hold?",
        ),
        (
            f"- {{id: {'x' * 90}, answer: yes}}\n",
            f"line 1: `id`: `{'x' * 37}...` is no check for the clean."
            " Did you mean front-squat, full-clean or rack-hold?",
        ),
        ("- {id: rack-hold\n", "line 2: this isn't sound YAML or JSON: did not find expected ',' or '}'."),
        (
            "- {id: rack-hold, answer: yes}\n---\n[]\n",
            "line 2: this isn't sound YAML or JSON: but found another document.",
        ),
        ("- \x07\n", "line 1: this isn't sound YAML or JSON."),
        (b"- {id: rack-hold, answer: yes}\n- \xff\n", "line 2: this isn't UTF-8 text."),
    ],
)
def test_what_is_refused(text: "str | bytes", said: str, tmp_path: Path) -> None:
    """One sentence with file and line, and the field and the nearest right value where there is one."""
    with pytest.raises(BadInput) as refused:
        read(tmp_path, text)
    assert sentence(refused.value) == f"{tmp_path}/answers.yaml, {said}"


def test_what_cannot_be_read(tmp_path: Path) -> None:
    """A file that isn't there, a folder, a name that can't be, and a file too large."""
    for path, why in (
        (tmp_path / "gone.yaml", "can't be read: no such file or directory"),
        (tmp_path, "can't be read: is a directory"),
        (tmp_path / "a\0b", "can't be read: embedded null byte"),
    ):
        with pytest.raises(BadInput, match=why):
            read_answers(path, KNOWN, "clean")
    with pytest.raises(BadInput, match="is larger than 100 kB, which no list of answers is"):
        read(tmp_path, b"#" * (MOST_BYTES + 1))


def test_what_is_written_is_read(tmp_path: Path) -> None:
    """Answers come back as they were, none of them too, and the file can be read by others."""
    path = tmp_path / "kept" / "answers.yaml"
    for answers in ((), GOOD):
        write_answers(path, answers)
        assert read_answers(path, KNOWN, "clean") == answers
    assert path.read_text() == (
        "- {id: front-squat, answer: yes}\n- {id: rack-hold, answer: no}\n- {id: front-squat, answer: skip}\n"
    )
    assert [each.name for each in path.parent.iterdir()] == ["answers.yaml"]


def test_what_cannot_be_written(tmp_path: Path) -> None:
    """A folder in the file's place is named."""
    with pytest.raises(BadInput, match=r"the answers can't be saved in .*: is a directory"):
        write_answers(tmp_path, GOOD)


@settings(max_examples=150, deadline=None)
@given(st.text(alphabet=st.sampled_from("-{}[]:,'\"&*!|>%@ \n\tidanswer:yesno0\\")))
def test_whatever_is_handed_in(tmp_path_factory: pytest.TempPathFactory, text: str) -> None:
    """Answers or a sentence, never anything else."""
    found: tuple[Answer, ...] = ()
    said = "answers.yaml, line "
    try:
        found = read(tmp_path_factory.getbasetemp(), text)
    except BadInput as refused:
        said = str(refused)
    assert "answers.yaml, line " in said
    assert all(answer.id in KNOWN and answer.answer in SAYS for answer in found)
