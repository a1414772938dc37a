"""One entry parsed: its record, where each part of it stands, and all that is wrong with it by itself."""

from kb.errors import Problem
from kb.make.body_text import take_sections
from kb.make.files import EntryFile
from kb.make.front_matter import take_apart
from kb.make.library import Parsed, Record, Source
from kb.make.records import RECORDS

__all__ = ["parse"]


def parse(entry: EntryFile, data: bytes) -> Parsed:
    """Read one entry.

    Parameters
    ----------
    entry
        Its file, kind and id.
    data
        The file's bytes, at most `kb.make.files.LARGEST`.

    Returns
    -------
    Parsed
        Every problem of the entry by itself; what others must agree with is judged by the library's rules.
    """
    found = take_apart(entry.file, data)
    lines, problems = found.lines, found.problems
    sections: dict[str, str] = {}
    if found.body or found.value is not None:
        sections, headings, wrong = take_sections(entry.file, entry.kind, found.body, found.body_line)
        lines.update(headings)
        problems += wrong
    record = None
    if found.value is not None:
        record, wrong = _validated(entry, found.value, sections, lines, found.refused)
        problems += wrong
    return Parsed(record=record, source=Source(file=entry.file, lines=lines), problems=tuple(sorted(problems)))


def _validated(
    entry: EntryFile, value: object, sections: dict[str, str], lines: dict[str, int], refused: set[str]
) -> tuple[Record | None, list[Problem]]:
    # pydantic costs more to import than a library costs to read, and is needed only here
    from pydantic import ValidationError

    from kb.make.models import MODELS
    from kb.make.sentences import problems_of

    model = MODELS[entry.kind]
    try:
        said = model.model_validate(value)
    except ValidationError as error:
        return None, list(problems_of(error.errors(include_url=False), model, entry.file, lines, refused))
    return (None if refused else RECORDS[entry.kind](entry.id, said, sections)), []
