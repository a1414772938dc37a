"""A file of answers to a placement's checks: a list of `{id, answer}`, as YAML or JSON, read strictly and written.

Read as a tree of nodes, so that every value's line is known, and so that `yes` stays the word that was written.
"""

from collections.abc import Collection, Iterable
from pathlib import Path
from typing import Any, NamedTuple

import yaml

from kb.ask.ability.placement import SAYS, Answer, Says
from kb.errors import BadInput
from kb.make.aside import put
from kb.terms import DrillId

__all__ = ["read_answers", "write_answers"]

MOST_BYTES = 100_000
"""More than any placement could give; what is larger is something else."""

FIELDS = ("id", "answer")
WANTED = "a list of answers, each as {id: front-squat, answer: yes}"

_Loader: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)


class _At(NamedTuple):
    """A place in a file: what goes wrong there is said with it."""

    file: str
    line: int

    def wrong(self, message: str, nearest: Iterable[str] = ()) -> BadInput:
        """What is wrong here, in a sentence."""
        return BadInput(f"{self.file}, line {self.line}: {message}", nearest=tuple(nearest))


def read_answers(path: Path, known: Collection[DrillId], lift: str) -> tuple[Answer, ...]:
    """The answers in a file, in their order.

    Raises BadInput, naming file, line and field, for whatever isn't a list of answers to checks in `known`, which
    are those of the lift called `lift`.
    """
    file = str(path)
    root = _composed(file, _text_of(path))
    if root is None or not isinstance(root, yaml.SequenceNode):
        line = root.start_mark.line + 1 if root is not None else 1
        raise _At(file, line).wrong(f"this must be {WANTED}")
    return tuple(_answer(file, node, known, lift) for node in root.value)


def write_answers(path: Path, answers: Iterable[Answer]) -> None:
    """Write answers to a file, whole or not at all; BadInput where that can't be done."""
    text = "".join(f"- {{id: {each.id}, answer: {each.answer}}}\n" for each in answers)
    try:
        put(path, text or "[]\n")
    except OSError as error:
        raise BadInput(f"the answers can't be saved in {path}: {_reason(error)}") from None


def _text_of(path: Path) -> str:
    try:
        with path.open("rb") as file:
            data = file.read(MOST_BYTES + 1)
    except (OSError, ValueError) as error:
        raise BadInput(f"{path} can't be read: {_reason(error)}") from None
    if len(data) > MOST_BYTES:
        raise BadInput(f"{path} is larger than {MOST_BYTES // 1000} kB, which no list of answers is")
    try:
        # JSON may be indented by tabs, which YAML refuses; no id and no answer holds one
        return data.decode("utf-8-sig").replace("\t", "  ")
    except UnicodeDecodeError as error:
        line = data[: error.start].count(b"\n") + 1
        raise _At(str(path), line).wrong("this isn't UTF-8 text") from None


def _reason(error: Exception) -> str:
    reason = getattr(error, "strerror", None) or str(error) or type(error).__name__
    return str(reason).lower()


def _composed(file: str, text: str) -> Any:
    """The tree of a text; None if there is nothing in it. Aliases, tags and depth are refused before it is built."""
    try:
        deep = 0
        for event in yaml.parse(text, Loader=_Loader):
            deep += isinstance(event, yaml.CollectionStartEvent) - isinstance(event, yaml.CollectionEndEvent)
            spoilt = isinstance(event, yaml.AliasEvent) or getattr(event, "anchor", None) or getattr(event, "tag", None)
            if deep > len(FIELDS) or spoilt:
                line = event.start_mark.line + 1 if event.start_mark else 1
                raise _At(file, line).wrong(f"this must be {WANTED}")
        return yaml.compose(text, Loader=_Loader)
    except yaml.MarkedYAMLError as error:
        mark = error.problem_mark or error.context_mark
        what = " ".join((error.problem or "it breaks off").split())
        raise _At(file, mark.line + 1 if mark else 1).wrong(f"this isn't sound YAML or JSON: {what}") from None
    except yaml.YAMLError:
        raise _At(file, 1).wrong("this isn't sound YAML or JSON") from None


def _answer(file: str, node: Any, known: Collection[DrillId], lift: str) -> Answer:
    here = _At(file, node.start_mark.line + 1)
    if not isinstance(node, yaml.MappingNode):
        raise here.wrong(f"this must be {WANTED}")
    said: dict[str, tuple[str, _At]] = {}
    for key, value in node.value:
        at = _At(file, key.start_mark.line + 1)
        if key.value not in FIELDS:
            raise at.wrong(f"`{_short(key.value)}` is no field of an answer", _near(key.value, FIELDS) or FIELDS)
        if key.value in said:
            raise at.wrong(f"`{key.value}` is given twice")
        if not isinstance(value, yaml.ScalarNode) or not value.value.strip():
            raise at.wrong(f"`{key.value}` must be a word")
        said[key.value] = value.value.strip(), at
    for field in FIELDS:
        if field not in said:
            raise here.wrong(f"`{field}` is missing")
    return Answer(_id(*said["id"], known, lift), _says(*said["answer"]))


def _id(text: str, at: _At, known: Collection[DrillId], lift: str) -> DrillId:
    for drill_id in known:
        if drill_id == text:
            return drill_id
    raise at.wrong(f"`id`: `{_short(text)}` is no check for the {lift}", _near(text, known) or sorted(known))


def _says(text: str, at: _At) -> Says:
    for says in SAYS:
        if says == text.lower():
            return says
    raise at.wrong(f"`answer` is yes, no or skip, not `{_short(text)}`")


def _near(text: str, words: Collection[str]) -> list[str]:
    from difflib import get_close_matches

    return get_close_matches(text, words, n=3, cutoff=0.5)


def _short(text: str) -> str:
    shown = "".join(char if char.isprintable() else "?" for char in text)
    return shown if len(shown) <= 40 else f"{shown[:37]}..."
