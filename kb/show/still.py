"""A fault that is still seen in what a lifter holds: whether to go on all the same."""

from typing import Any, NamedTuple

from kb.terms import Fault

__all__ = ["Still"]


class Still(NamedTuple):
    """The fault, and the command for its chain."""

    fault: Fault
    command: str

    @property
    def text(self) -> str:
        """Not yet, and when: eight of ten on two days. Common practice, no source."""
        return (
            f"Not yet: {self.fault.name} is still seen, and a longer lift only makes it harder to mend. That first, in"
            f" the part that is held. Go on when in eight of ten, on two days running: {self.fault.gone}. Meanwhile the"
            " new part may be shown without weight, so that nobody waits with nothing new."
        )

    def as_json(self) -> dict[str, Any]:
        """The same for programs."""
        return {"fault": self.fault.id, "said": self.text, "command": self.command}
