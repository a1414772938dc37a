"""The group of all subcommands: one a file beside this one, imported when it is asked for."""

from importlib import import_module
from keyword import iskeyword
from typing import Any

import click

from kb import __version__
from kb.commands.asked import Asked, sentence
from kb.errors import BadInput, DrillpathError

__all__ = ["COMMANDS", "drillpath"]

COMMANDS = (
    "find",
    "show",
    "chain",
    "path",
    "plan",
    "place",
    "next",
    "session",
    "class",
    "swap",
    "load",
    "screen",
    "kits",
    "site",
    "serve",
    "check",
    "diff",
    "new",
    "export",
    "import",
    "schema",
    "build",
)
"""The subcommands, in the order in which help lists them: questions first, then what keeps the library."""

EPILOG = """\b
Completion of commands and names, for one shell (put the line in its start-up file):
  bash:  eval "$(_DRILLPATH_COMPLETE=bash_source drillpath)"
  zsh:   eval "$(_DRILLPATH_COMPLETE=zsh_source drillpath)"
  fish:  _DRILLPATH_COMPLETE=fish_source drillpath | source

Exit codes: 0 answered, 1 there is no answer (or something is broken), 2 the question can't be understood.
"""


class Refused(click.ClickException):
    """No answer, or something is broken, as click reports it: one sentence on standard error."""


class NotUnderstood(Refused):
    """A question that can't be understood."""

    exit_code = 2


class Late(click.Group):
    """A group whose subcommands are imported when they are asked for, so that a question starts quickly."""

    def list_commands(self, ctx: click.Context) -> list[str]:  # noqa: ARG002
        """Every subcommand, in the order of `COMMANDS`."""
        return list(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:  # noqa: ARG002
        """A subcommand, from its file."""
        if cmd_name not in COMMANDS:
            return None
        command: click.Command = import_module(f"kb.commands.{cmd_name}{'_' * iskeyword(cmd_name)}").command
        return command

    def invoke(self, ctx: click.Context) -> Any:
        """Run the subcommand; what it refuses becomes click's error."""
        try:
            return super().invoke(ctx)
        except DrillpathError as error:
            refusal = NotUnderstood if isinstance(error, BadInput) else Refused
            raise refusal(sentence(error)) from error


@click.group(
    cls=Late, epilog=EPILOG, context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 100}
)
@click.option(
    "--library",
    metavar="DIR",
    help="The library to ask: a folder that holds drills/. Else DRILLPATH_LIBRARY, else the one that came with this"
    " program.",
)
@click.version_option(__version__, prog_name="drillpath")
@click.pass_context
def drillpath(ctx: click.Context, library: str | None) -> None:
    """From a fault seen in a snatch, clean or jerk to an ordered chain of drills that ends in the full lift.

    \b
    drillpath find "bar hits me in the throat"      what a coach saw, in any words
    drillpath chain clean-bar-crashes --minutes 20  what to do about it, in order
    drillpath path snatch --kit home                from nothing to a lift
    """  # noqa: D301  # \b is click's mark for a paragraph that isn't to be filled
    ctx.obj = Asked(library)
