"""`drillpath check [DIR]`: everything that is wrong in a library, at once."""

from pathlib import Path

import click

from kb.commands.asked import Asked, as_json_option, put_json
from kb.errors import Problem

__all__ = ["command"]


@click.command(name="check", short_help="Everything that is wrong in a library.")
@click.argument("folder", metavar="[DIR]", required=False, type=click.Path(file_okay=False, path_type=Path))
@as_json_option
@click.option(
    "--format",
    "form",
    type=click.Choice(["text", "lines", "github"]),
    help="`text` for a terminal, `lines` (one a problem) where it is piped, `github` for annotations.",
)
@click.option("--explain", metavar="CODE", help="What a problem's code means, instead.")
@click.option(
    "--report", "as_report", is_flag=True, help="How good it is, instead: coverage, gaps, what each drill is for."
)
@click.option("--every-kit", is_flag=True, help="With --report: judge drills with every kit; it takes minutes.")
@click.option("--reviewed", metavar="ID,ID", help="Note that entries were read through as they stand, instead.")
@click.option("--by", "who", metavar="WHO", default="", help="With --reviewed: who read them.")
@click.pass_context
def command(
    ctx: click.Context,
    folder: Path | None,
    as_json: bool,
    form: str | None,
    explain: str | None,
    as_report: bool,
    every_kit: bool,
    reviewed: str | None,
    who: str,
) -> None:
    """Everything that is wrong in a library, at once: exit 0 if nothing is, 1 with problems.

    DIR is a folder that holds drills/; the library in use if nothing is said.
    """
    from kb.check.table import check
    from kb.check.table import explain as explained
    from kb.make.library import load

    if explain is not None:
        click.echo(explained(explain), nl=False)
        return
    root = folder if folder is not None else Path(ctx.ensure_object(Asked).place.root)
    if reviewed is not None:
        _mark(root, reviewed, who)
        return
    if as_report:
        _report(root, as_json, every_kit=every_kit)
        return
    problems = check(load(root))
    if as_json:
        from kb.show.as_json import problems_json

        put_json(problems_json(problems))
    else:
        for line in _lines(problems, root, form):
            click.echo(line)
    ctx.exit(1 if problems else 0)


def _mark(root: Path, reviewed: str, who: str) -> None:
    from datetime import date

    from kb.check.report.reviewed import FILE, mark
    from kb.make.library import load

    named = [entry.strip() for entry in reviewed.split(",") if entry.strip()]
    marked = mark(load(root), named, who=who, on=date.today())
    many = len(marked)
    click.echo(f"{many} {'entry' if many == 1 else 'entries'} noted as read in {root / FILE}.")


def _report(root: Path, as_json: bool, *, every_kit: bool) -> None:
    from kb.check.report.report import report
    from kb.make.library import load

    found = report(load(root), every_kit=every_kit)
    if as_json:
        from kb.show.report_json import report_json

        put_json(report_json(found))
    else:
        from kb.show.report_text import report_text
        from kb.show.setting import setting_of

        click.echo("\n".join(report_text(found, setting_of())))


def _lines(problems: tuple[Problem, ...], root: Path, form: str | None) -> list[str]:
    from kb.show.problems_text import problems_brief, problems_github, problems_text
    from kb.show.setting import setting_of

    setting = setting_of()
    form = form or ("text" if setting.ink else "lines")
    if form == "github":
        return problems_github(problems, _from_here(root))
    if form == "lines":
        return problems_brief(problems)

    def line_of(problem: Problem) -> str:
        try:
            return (root / problem.file).read_text(encoding="utf-8").splitlines()[problem.line - 1]
        except (OSError, UnicodeDecodeError, IndexError):
            return ""

    return problems_text(problems, line_of, setting)


def _from_here(root: Path) -> str:
    """The way from the working directory to the library, as a prefix of its files."""
    here, there = Path.cwd(), root.resolve()
    if not there.is_relative_to(here) or there == here:
        return ""
    return f"{there.relative_to(here).as_posix()}/"
