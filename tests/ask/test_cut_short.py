"""Minutes too few for a chain: what of it is done all the same."""

import json

import pytest
from click.testing import CliRunner
from small_answers import built, small_chain

from kb.ask.cut_short import cut_short
from kb.commands.group import drillpath
from kb.dose import sets, work_seconds


@pytest.mark.parametrize("seconds", range(60, 600, 30))
def test_it_is_the_first_work_in_as_many_rounds_as_fit(seconds: int) -> None:
    """Never over the time, never a round more than the entry has, and enough tries for the standard; else nothing."""
    found = small_chain("hips-rise-first")
    first = next(entry for entry in found.routes[0].entries if entry.work)
    short = cut_short(found, seconds)
    fits = [
        rounds
        for rounds in range(1, first.drill.dose.rounds + 1)
        if rounds * max(sets(first.drill.dose)[0], 1) * first.drill.dose.sides >= first.drill.standard.of
        and work_seconds(first.drill._replace(dose=first.drill.dose._replace(rounds=rounds))) <= seconds
    ]
    assert (short is None) is not bool(fits)
    if short is not None:
        assert (short.drill.id, short.drill.dose.rounds) == (first.drill.id, max(fits))
        assert short.seconds == work_seconds(short.drill) <= seconds


def test_the_command_says_it_and_what_is_for_another_day(monkeypatch: pytest.MonkeyPatch) -> None:
    """Beside the reason why there is no chain, which is still no answer; for programs too."""
    monkeypatch.setenv("DRILLPATH_LIBRARY", str(built()))
    monkeypatch.setenv("COLUMNS", "80")
    whole = small_chain("hips-rise-first").routes[0].entries
    typed = ["chain", "hips-rise-first", "--minutes", "6"]
    refused = CliRunner().invoke(drillpath, typed)
    assert refused.exit_code == 1
    assert "takes at least" in refused.stderr
    said = " ".join(refused.stdout.split())
    assert said.startswith("In 6 min, for who is warm: this alone")
    assert f"1 {whole[0].drill.name}" in said
    assert f"no minutes: {'; '.join(entry.drill.name for entry in whole[1:])}." in said
    answer = json.loads(CliRunner().invoke(drillpath, [*typed, "--json"]).stdout)
    assert answer["today"]["id"] == whole[0].drill.id
    assert answer["today"]["dose"]["rounds"] <= whole[0].drill.dose.rounds
