"""What the subcommands share: the library asked, what is in the room, names, and how an answer goes out."""

import sqlite3
from collections.abc import Callable, Mapping
from typing import Any, NamedTuple, TypeVar

import click

from kb.ask import read
from kb.ask.names import resolve, resolve_all
from kb.ask.shelf import Shelf, ending_in
from kb.errors import BadInput, BrokenLibrary, DrillpathError
from kb.terms import DrillId, ItemId, LiftId
from kb.where import Place, catalogue_of, place_of

__all__ = [
    "Asked",
    "Room",
    "again",
    "as_json_option",
    "complete",
    "drills_named",
    "put_json",
    "room_of",
    "room_options",
    "say",
    "sentence",
    "shelf_to",
    "to_option",
    "words",
]

Command = TypeVar("Command", bound=Callable[..., Any])


class Asked(NamedTuple):
    """What the group's own options said."""

    library: str | None = None

    @property
    def place(self) -> Place:
        """Where the library in use is."""
        return place_of(self.library)

    def catalogue(self) -> sqlite3.Connection:
        """The catalogue of the library in use."""
        return catalogue_of(self.place, say)


class Room(NamedTuple):
    """What there is: a kit by its name, or exactly what was listed (then `kit` is None)."""

    kit: str | None
    have: frozenset[ItemId]


def say(line: str) -> None:
    """A line on standard error, beside the answer."""
    click.echo(line, err=True)


def words(texts: tuple[str, ...]) -> str:
    """What was typed, quoted or not, as one text."""
    return " ".join(texts)


def as_json_option(command: Command) -> Command:
    """Add `--json`."""
    return click.option("--json", "as_json", is_flag=True, help="The answer for programs.")(command)


def room_options(command: Command) -> Command:
    """Add `--kit` and `--have`."""
    have = click.option(
        "--have", metavar="A,B", help="Exactly what is there, space and people included, instead of a kit."
    )
    kit = click.option("--kit", metavar="KIT", help="A named kit (see `kits`); full if nothing is said.")
    return kit(have(command))


def room_of(db: sqlite3.Connection, kit: str | None, have: str | None) -> Room:
    """What `--kit` and `--have` say there is.

    Raises BadInput for both at once, and for a kit or an item that is unknown.
    """
    if have is not None:
        if kit is not None:
            raise BadInput("--have lists exactly what is there, so it can't stand with --kit")
        return Room(None, frozenset(ItemId(item) for item in resolve_all(db, "equipment", have.split(","))))
    kits = read.kits(db)
    kit = "full" if kit is None else kit
    if kit not in kits:
        raise BadInput(f"there is no kit {kit!r}", nearest=tuple(sorted(kits)))
    return Room(kit, kits[kit])


def drills_named(db: sqlite3.Connection, holds: str | None) -> frozenset[DrillId]:
    """The drills that `--holds` lists."""
    return frozenset(DrillId(drill) for drill in resolve_all(db, "drill", (holds or "").split(",")))


def to_option(command: Command) -> Command:
    """`--to DRILL`: a part of the lift to end in."""
    said = "End in a part of the lift: a drill such as hang-power-clean."
    return click.option("--to", metavar="DRILL", help=said, shell_complete=complete("drill"))(command)


def shelf_to(db: sqlite3.Connection, lift: LiftId, to: str | None) -> Shelf:
    """A lift's shelf; one that ends in the drill that `--to` names, if any."""
    shelf = read.shelf(db, lift)
    return ending_in(shelf, DrillId(resolve(db, "drill", to))) if to else shelf


def put_json(answer: Mapping[str, Any]) -> None:
    """An answer for programs, on one line."""
    from json import dumps

    click.echo(dumps(answer))


def again(
    ctx: click.Context, argument: str, *, to: str | None = None, without: tuple[str, ...] = (), **options: str
) -> str:
    """The command as it was typed, with another argument, more options and some left out: ready to paste.

    Where a command takes no argument, what is asked about is its `--fault`; `to` names such a command to ask instead.
    """
    from shlex import join

    parent = ctx.parent.params.get("library") if ctx.parent else None
    typed = ["drillpath", *(["--library", parent] if parent else []), to or ctx.info_name or ""]
    if to is None and any(isinstance(param, click.Argument) for param in ctx.command.params):
        typed.append(argument)
    else:
        typed += ["--fault", argument]
        without = (*without, "fault")
    for param in ctx.command.params:
        name = param.name or ""
        if not isinstance(param, click.Option) or name in options or name in without:
            continue
        if ctx.get_parameter_source(name) is click.core.ParameterSource.COMMANDLINE:
            values = ctx.params[name] if param.multiple else (ctx.params[name],)
            for value in values:
                said = ",".join(map(str, value)) if isinstance(value, tuple) else str(value)
                typed += [param.opts[0]] if param.is_flag else [param.opts[0], said]
    for name, value in options.items():
        typed += [f"--{name}", value]
    return join(typed)


def complete(kind: str) -> Callable[[click.Context, click.Parameter, str], list[str]]:
    """A completer for the ids of one kind: a table of the catalogue, or `*` for every entry."""

    def names(ctx: click.Context, _: click.Parameter, incomplete: str) -> list[str]:
        library = ctx.find_root().params.get("library")
        where = "" if kind == "*" else " and kind = ?"
        # a comma-separated list: what stands before the last comma is kept
        before, comma, last = incomplete.rpartition(",")
        values = [last + "%", *([] if kind == "*" else [kind])]
        try:
            db = Asked(library).catalogue()
        except Exception:  # a shell waiting for names is no place for an error
            return []
        rows = db.execute(f"select distinct id from name where id like ?{where} order by id", values)
        return [before + comma + row[0] for row in rows]

    return names


def sentence(error: DrillpathError) -> str:
    """What an error says, as one sentence with the nearest right values."""
    text = str(error)
    text = text[:1].upper() + text[1:]
    if not text.endswith((".", "?", "!")) and "\n" not in text:
        text += "."
    if isinstance(error, BrokenLibrary):
        text += " `drillpath check` lists them."
    nearest = error.nearest if isinstance(error, BadInput) else ()
    if not nearest:
        return text
    return f"{text} Did you mean {' or '.join(filter(None, (', '.join(nearest[:-1]), nearest[-1])))}?"
