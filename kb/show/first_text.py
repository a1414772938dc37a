"""An answer that one of the things to look at first leads: what it is, what else it may be, the drills in short."""

from collections.abc import Sequence

from kb.ask.chain import Chain
from kb.ask.instead import Instead
from kb.show.care import asks_first
from kb.show.chain_said import only_heavy
from kb.show.chain_text import closing, looked_first, opening
from kb.show.helped_said import helped_said
from kb.show.instead_text import causes_text, too_text
from kb.show.over_weeks import over_weeks
from kb.show.setting import Setting, aside, titled, wrapped
from kb.show.tell_lines import tell_lines
from kb.show.telling import Telling
from kb.terms import Load

__all__ = ["first_text"]

WHOLE = "Each of them whole, drill by drill: the same question with `--cause` and its name."


def first_text(
    chain: Chain, kit: str | None, setting: Setting, *, others: Sequence[Instead], telling: Telling
) -> list[str]:
    """What leads, in lines; below it the checks, and what each cause calls for, in short, should it stay.

    No cause was named, so none is taken: the drills wait until the checks have found one. `kit` is None where the
    question listed what there is; `others` are what the chain's cause leaves.
    """
    matter = chain.matter
    where = setting.between.join([matter.shelf.lift.name.lower(), f"{kit} kit" if kit else "your gear"])
    lines = aside(matter.fault.name, where, setting)
    lines += opening(matter, setting, telling, named=False, because=False)
    lines += wrapped(helped_said(telling.helped), setting.width) if telling.helped else []
    if telling.weeks is not None:
        stages = over_weeks(telling.weeks, matter.fault.gone)
        lines += ["", *(line for text in stages for line in wrapped(text, setting.width))]
    lines += looked_first(matter.fault, setting, telling.first)
    lines += tell_lines(matter.fault, setting, shows_from=only_heavy(matter, telling))
    seen: set[str] = set()
    every = [Instead(matter.cause, chain), *others]
    told = causes_text(every, [], seen, setting, telling.weighs(matter.cause))
    lines += titled("If it stays, what each cause calls for", [*told, *wrapped(WHOLE, setting.width)], setting)
    for beside in telling.besides:
        if beside.about is not None and beside.chain is not None:
            lines += too_text(beside.about, beside.chain, [], seen, setting)
    chains = [chain, *(other.chain for other in others if other.chain)]
    entries = [entry.drill for each in chains for entry in (*each.routes[0].entries, *each.strengthen)]
    return [*lines, *closing(setting, ask_first=matter.load is Load.WORKING or asks_first(entries))]
