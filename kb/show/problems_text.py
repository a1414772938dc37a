"""What is wrong in a library: one line each where it is piped, with its line and help on a terminal."""

from collections.abc import Callable, Sequence

from kb.errors import Problem
from kb.show.setting import Setting, hanging

__all__ = ["problems_brief", "problems_github", "problems_text"]


def problems_text(problems: Sequence[Problem], line_of: Callable[[Problem], str], setting: Setting) -> list[str]:
    """Each problem with its place, the line it is about and what to do; then how many there are.

    `line_of` gives the text of a problem's line, empty where it can't be read.
    """
    lines: list[str] = []
    for problem in problems:
        lines.append(setting.strong(f"{problem.file}:{problem.line}") + f"  {problem.code}")
        lines += hanging("  ", problem.message, setting)
        line = line_of(problem).strip()
        if line:
            lines.append(f"  | {line}"[: setting.width])
        lines += hanging("  help: ", problem.help, setting) if problem.help else []
        lines.append("")
    many = len(problems)
    files = len({problem.file for problem in problems})
    if not many:
        return ["No problems."]
    counts = f"{many} problem{'s' * (many > 1)} in {files} file{'s' * (files > 1)}"
    return [*lines, f"{counts}; `drillpath check --explain CODE` says more of one."]


def problems_brief(problems: Sequence[Problem]) -> list[str]:
    """One line a problem: file, line, code, message, help."""
    return [
        " ".join(
            part for part in (f"{problem.file}:{problem.line}: {problem.code}:", problem.message, problem.help) if part
        )
        for problem in problems
    ]


def problems_github(problems: Sequence[Problem], prefix: str = "") -> list[str]:
    """Annotations for GitHub's checks; `prefix` is the path from the repository to the library."""
    lines = []
    for problem in problems:
        message = f"{problem.message} {problem.help}".strip()
        for char, code in (("%", "%25"), ("\r", "%0D"), ("\n", "%0A")):
            message = message.replace(char, code)
        file = f"{prefix}{problem.file}".replace("%", "%25").replace(",", "%2C").replace(":", "%3A")
        lines.append(f"::error file={file},line={problem.line},title={problem.code}::{message}")
    return lines
