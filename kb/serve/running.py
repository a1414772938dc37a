"""A server run on a socket until it is interrupted."""

import socket
import sys
from contextlib import suppress
from typing import Any

import uvicorn

from kb.serve.desk import Desk
from kb.serve.front import Front

__all__ = ["run"]

SWITCH_S = 0.0005
"""How long a thread that prepares pages may go on when an answer is ready to go out, s; Python's own is 0.005."""

LEAVING_S = 3
"""How long visitors have to take what they asked for, once it is stopped, s."""


class _Server(uvicorn.Server):
    """A server that tells its desk that it stops before it waits for who is still there."""

    def __init__(self, config: uvicorn.Config, desk: Desk) -> None:
        super().__init__(config)
        self._desk = desk

    async def shutdown(self, sockets: list[socket.socket] | None = None) -> None:
        """Stop."""
        self._desk.leave()
        await super().shutdown(sockets)


def run(app: Front, opened: socket.socket) -> None:
    """Serve on a listening socket; Ctrl-C ends it."""
    sys.setswitchinterval(SWITCH_S)
    application: Any = app  # uvicorn says what a scope is more narrowly than ASGI does
    config = uvicorn.Config(
        application, log_level="warning", access_log=False, server_header=False, timeout_graceful_shutdown=LEAVING_S
    )
    with suppress(KeyboardInterrupt):
        _Server(config, app.desk).run(sockets=[opened])
