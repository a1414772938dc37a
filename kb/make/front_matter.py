"""An entry's text taken apart: its front matter as plain values, the line of each, and its body.

The YAML is read as a stream of events, so that aliases, tags, depth and duplicate keys are refused
before anything is built from them, and every value's line is known. Only text, whole numbers, decimals
and `bridge: no` come out; what YAML 1.1 would quietly turn into something else is refused.
"""

import re
from dataclasses import dataclass, field
from typing import Any

import yaml

from kb.errors import Problem

__all__ = ["DEEPEST", "FrontMatter", "take_apart"]

DEEPEST = 20
"""Lists and maps inside one another; entries need five."""

_Loader: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
_BAD_CHARACTER = re.compile(
    "[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u2028\u2029\u202a-\u202e\u2066-\u2069\ud800-\udfff\ufeff\ufffe\uffff]"
)
_WHOLE = re.compile(r"-?(0|[1-9][0-9]{0,8})")
_DECIMAL = re.compile(r"-?(0|[1-9][0-9]{0,8})\.[0-9]{1,9}")
_RESOLVERS: dict[str | None, list[tuple[str, re.Pattern[str]]]] = yaml.SafeLoader.yaml_implicit_resolvers


@dataclass(slots=True)
class FrontMatter:
    """What an entry's text holds. `value` is None when the front matter can't be read at all.

    `lines` maps each dotted path to its line in the file; `refused` are the paths already reported.
    """

    value: dict[str, Any] | None = None
    lines: dict[str, int] = field(default_factory=lambda: {"": 1})
    body: str = ""
    body_line: int = 1
    refused: set[str] = field(default_factory=set)
    problems: list[Problem] = field(default_factory=list)


@dataclass(slots=True)
class _Open:
    """A list or map still being read. `path` is None inside what is already refused."""

    path: str | None
    values: dict[str, Any] | list[Any]
    key: str | None = None
    key_path: str | None = None


class _Stop(Exception):
    """The rest of the front matter can't be understood."""


@dataclass(slots=True)
class _Reading:
    """The state of one pass over the events; `first` is the file's line where the YAML begins."""

    file: str
    first: int
    found: FrontMatter
    stack: list[_Open] = field(default_factory=list)
    root: Any = None

    def say(self, line: int, code: str, message: str, help_: str = "") -> None:
        self.found.problems.append(Problem(file=self.file, line=line, code=code, message=message, help=help_))

    def line(self, event: Any) -> int:
        line: int = event.start_mark.line
        return line + self.first


def take_apart(file: str, data: bytes) -> FrontMatter:
    """Front matter, lines and body of an entry, with a problem for each thing that YAML or the encoding spoils."""
    found = FrontMatter()
    say = _Reading(file, 2, found).say
    text = _decoded(data, say)
    if text is None:
        return found
    lines = text.split("\n")
    if lines[0].rstrip() != "---":
        say(1, "no-front-matter", "An entry begins with front matter: the first line is `---`.")
        return found
    end = next((n for n, line in enumerate(lines[1:], 1) if line.rstrip() == "---"), None)
    if end is None:
        say(1, "no-front-matter", "The front matter is never closed by a second line `---`.")
        return found
    found.body, found.body_line = "\n".join(lines[end + 1 :]), end + 2
    _read_yaml(file, "\n".join(lines[1:end]) + "\n", found)
    return found


def _decoded(data: bytes, say: Any) -> str | None:
    try:
        text = data.decode("utf-8-sig").replace("\r\n", "\n").replace("\r", "\n")
    except UnicodeDecodeError as error:
        line = data[: error.start].count(b"\n") + 1
        say(line, "bad-encoding", "This isn't UTF-8 text.", "Save the file as UTF-8.")
        return None
    if bad := _BAD_CHARACTER.search(text):
        line = text.count("\n", 0, bad.start()) + 1
        say(line, "bad-character", f"The character U+{ord(bad[0]):04X} has no place in an entry.", "Delete it.")
        return None
    return text


def _read_yaml(file: str, text: str, found: FrontMatter) -> None:
    reading = _Reading(file, 2, found)
    try:
        for event in yaml.parse(text, Loader=_Loader):
            _take(reading, event)
    except yaml.MarkedYAMLError as error:
        mark = error.problem_mark or error.context_mark
        what = " ".join((error.problem or "it breaks off").split())
        hint = "Quote any text that holds `: ` or ` #`, or that begins with a sign." if "mapping" in what else ""
        reading.say((mark.line if mark else 0) + 2, "bad-yaml", f"The front matter isn't sound YAML: {what}.", hint)
    except (yaml.YAMLError, ValueError, OverflowError):
        reading.say(2, "bad-yaml", "The front matter isn't sound YAML.")
    except _Stop:
        pass
    else:
        if isinstance(reading.root, dict):
            found.value = reading.root
        else:
            reading.say(2, "bad-yaml", "The front matter must be a map: a field and its value on each line.")


def _take(reading: _Reading, event: Any) -> None:
    line = reading.line(event)
    # two events in three, and nothing of what follows until scalars is true of them
    if type(event) is yaml.ScalarEvent and event.anchor is None and event.tag is None:
        _take_scalar(reading, event, line)
        return
    if isinstance(event, yaml.AliasEvent):
        reading.say(line, "yaml-alias", f"`*{event.anchor}` is a YAML alias, which entries don't use.", "Write it out.")
        raise _Stop
    if isinstance(event, yaml.NodeEvent):
        if event.anchor is not None:
            message = f"`&{event.anchor}` is a YAML anchor, which entries don't use."
            reading.say(line, "yaml-alias", message, "Delete it, and write out what refers to it.")
            raise _Stop
        if (tag := getattr(event, "tag", None)) is not None:
            reading.say(
                line,
                "yaml-tag",
                f"`{tag.replace('tag:yaml.org,2002:', '!!')}` is a YAML tag, which entries don't use.",
                "Delete it.",
            )
    if isinstance(event, yaml.ScalarEvent):
        _take_scalar(reading, event, line)
    elif isinstance(event, (yaml.MappingStartEvent, yaml.SequenceStartEvent)):
        _open(reading, event, line)
    elif isinstance(event, (yaml.MappingEndEvent, yaml.SequenceEndEvent)):
        closed = reading.stack.pop()
        _attach(reading, closed.values)
    elif isinstance(event, yaml.DocumentEndEvent) and event.explicit:
        reading.say(line, "bad-yaml", "The front matter is ended by `...`, though it goes on to the next `---`.")
        raise _Stop


def _open(reading: _Reading, event: Any, line: int) -> None:
    if _awaits_key(reading):
        reading.say(line, "bad-yaml", "A field's name must be plain text, not a list or a map.")
        raise _Stop
    if len(reading.stack) >= DEEPEST:
        reading.say(line, "too-deep", f"Lists and maps are nested more than {DEEPEST} deep, which no entry needs.")
        raise _Stop
    path = _place(reading, line)
    reading.stack.append(_Open(path, {} if isinstance(event, yaml.MappingStartEvent) else []))


def _awaits_key(reading: _Reading) -> bool:
    top = reading.stack[-1] if reading.stack else None
    return top is not None and isinstance(top.values, dict) and top.key is None


def _place(reading: _Reading, line: int) -> str | None:
    """The dotted path of the value that begins here; an item of a list gets its line."""
    if not reading.stack:
        return ""
    top = reading.stack[-1]
    if isinstance(top.values, dict):
        return top.key_path
    if top.path is None:
        return None
    path = _joined(top.path, str(len(top.values)))
    reading.found.lines[path] = line
    return path


def _joined(path: str, part: str) -> str:
    return f"{path}.{part}" if path else part


def _attach(reading: _Reading, value: Any) -> None:
    if not reading.stack:
        reading.root = value
        return
    top = reading.stack[-1]
    if isinstance(top.values, list):
        top.values.append(value)
        return
    if top.key is not None:
        top.values.setdefault(top.key, value)
    top.key = top.key_path = None


def _take_scalar(reading: _Reading, event: Any, line: int) -> None:
    text: str = event.value
    # the file was searched whole: only the escapes of double quotes can still bring one in
    if event.style == '"' and (bad := _BAD_CHARACTER.search(text)):
        reading.say(line, "bad-character", f"The character U+{ord(bad[0]):04X} has no place in an entry.", "Delete it.")
        raise _Stop
    if not _awaits_key(reading):
        path = _place(reading, line)
        _attach(reading, _value(reading, text, event.style in (None, ""), path, line))
        return
    top = reading.stack[-1]
    top.key = text
    top.key_path = None if top.path is None else _joined(top.path, text)
    if text in top.values:
        reading.say(line, "duplicate-key", f"`{text}` is given twice.", "Keep one of them.")
        top.key_path = None
    elif top.key_path is not None:
        reading.found.lines[top.key_path] = line


def _value(reading: _Reading, text: str, plain: bool, path: str | None, line: int) -> Any:
    """A scalar as text, number or (for `bridge` alone) truth; anything YAML would bend is reported."""
    if not plain:
        return text
    if _WHOLE.fullmatch(text):
        return int(text)
    if _DECIMAL.fullmatch(text):
        return float(text)
    kind = _kind_of(text)
    if kind == "str":
        return text
    if kind == "bool" and path == "bridge":
        return text.lower() in ("yes", "true", "on")
    name = (path or "").rpartition(".")[2]
    where = f"An item of `{(path or '').split('.')[0]}`" if name.isdigit() else f"`{name}`"
    if kind == "null":
        reading.say(line, "empty-value", f"{where} has no value.", "Write one, or leave the line out.")
    else:
        help_ = f'Quote it ("{_short(text)}")' + (
            ", or write plain digits; times in seconds." if kind in ("int", "float") else "."
        )
        reading.say(line, "yaml-surprise", f"{where}: YAML reads `{_short(text)}` as {_read_as(text, kind)}.", help_)
    if path is not None:
        reading.found.refused.add(path)
    return text


def _read_as(text: str, kind: str) -> str:
    """What YAML makes of a scalar, for people."""
    if kind == "bool":
        return "true" if text.lower() in ("yes", "true", "on") else "false"
    if kind in ("int", "float") and len(text) < 20:
        return f"the number {yaml.safe_load(text)}"
    return {"int": "a number", "float": "a number", "timestamp": "a date"}.get(kind, "a mark of its own")


def _short(text: str) -> str:
    return text if len(text) <= 40 else f"{text[:37]}..."


def _kind_of(text: str) -> str:
    """What YAML 1.1 takes a plain scalar for: str, bool, int, float, null, timestamp, merge or value."""
    for tag, pattern in _RESOLVERS.get(text[:1], []) + _RESOLVERS.get(None, []):
        if pattern.match(text):
            return tag.rpartition(":")[2]
    return "str"
