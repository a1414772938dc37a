"""Figures beside their floor: what each group of benchmarks took, and the ratio, in one table."""

from collections import defaultdict

import pytest


@pytest.hookimpl(trylast=True)
def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    """For each group with a benchmark named `floor`: medians, and each against the floor of the same run."""
    session = getattr(terminalreporter.config, "_benchmarksession", None)
    if session is None or not session.benchmarks:
        return
    groups: dict[str, dict[str, float]] = defaultdict(dict)
    for bench in session.benchmarks:
        if not bench.has_error and bench.stats.rounds:
            groups[bench.group or bench.name][bench.name.removeprefix("test_")] = bench.stats.median
    terminalreporter.write_sep("-", "medians against the floor")
    for group, medians in groups.items():
        floor = next((median for name, median in medians.items() if name.startswith("floor")), None)
        for name, median in sorted(medians.items(), key=lambda each: each[1]):
            ratio = f"{median / floor:6.2f} x" if floor else ""
            terminalreporter.write_line(f"{group:28} {name:44} {1000 * median:9.1f} ms {ratio}")
