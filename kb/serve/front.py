"""The server's door: every question is bounded, every answer carries one policy, and only what is ours is seen."""

import asyncio
import logging
import re
from collections.abc import Awaitable, Callable
from typing import Any, NamedTuple

from kb.errors import DrillpathError
from kb.serve.address import Asked, Refusal, asked_of
from kb.serve.answer import Answer
from kb.serve.desk import Busy, Desk
from kb.serve.tables import Tables
from kb.serve.views import answer, refused

__all__ = ["POLICY", "Receive", "Scope", "Send", "front"]

POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self';"
    " manifest-src 'self'; worker-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'"
)
"""Nothing from elsewhere, nothing inline."""

ALWAYS = (
    (b"content-security-policy", POLICY.encode()),
    (b"x-content-type-options", b"nosniff"),
    (b"referrer-policy", b"no-referrer"),
)

_LOG = logging.getLogger(__name__)

Scope = dict[str, Any]
Receive = Callable[[], Awaitable[Scope]]
Send = Callable[[Scope], Awaitable[None]]


class Front(NamedTuple):
    """The ASGI application: our pages from the desk, the tables from Datasette."""

    desk: Desk
    tables: Tables
    prepare: bool

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer one scope."""
        if scope["type"] == "lifespan":
            await self._live(receive, send)
        elif scope["type"] == "http":
            found = await self._answer(scope)
            await _put(found, scope, send)
        else:
            await send({"type": "websocket.close"})

    async def _answer(self, scope: Scope) -> Answer:
        asked = Asked((), {}, as_data=scope["path"].endswith(".json"))
        try:
            asked = asked_of(scope)
            if asked.parts and asked.parts[0].partition(".")[0] == self.tables.name:
                return await self.tables.answer(scope, asked)
            return await answer(self.desk, asked, _host(scope))
        except Refusal as refusal:
            return refused(refusal, as_data=asked.as_data)
        except Busy:
            return refused(Refusal(503, "Try again in a moment."), as_data=asked.as_data)
        except asyncio.CancelledError:
            return refused(Refusal(503, "The server is stopping."), as_data=asked.as_data)
        except DrillpathError as trouble:
            return refused(Refusal(503, f"{trouble}."), as_data=asked.as_data)
        except Exception:
            # the one place where anything is caught: whoever runs the server sees it, a visitor a plain page
            _LOG.exception("%s", scope["path"])
            return refused(Refusal(500, "It has been noted where the server runs."), as_data=asked.as_data)

    async def _live(self, receive: Receive, send: Send) -> None:
        """Begin and end with the server."""
        while True:
            event = await receive()
            if event["type"] == "lifespan.startup":
                if self.prepare:
                    self.desk.prepare()
                await send({"type": "lifespan.startup.complete"})
            else:
                await self.desk.close()
                await send({"type": "lifespan.shutdown.complete"})
                return


def front(desk: Desk, tables: Tables, *, prepare: bool) -> Front:
    """The application; with `prepare`, all pages are set once it starts."""
    return Front(desk, tables, prepare)


async def _put(found: Answer, scope: Scope, send: Send) -> None:
    """Send an answer: whole, its head alone, or only that it is unchanged."""
    headers = dict(scope["headers"])
    known = [each.strip().removeprefix(b"W/") for each in headers.get(b"if-none-match", b"").split(b",")]
    unchanged = found.status == 200 and (found.mark in known)
    status, body = (304, b"") if unchanged else (found.status, found.body)
    kept = found.headers if not unchanged else tuple(h for h in found.headers if not h[0].startswith(b"content-"))
    await send({"type": "http.response.start", "status": status, "headers": [*kept, *ALWAYS]})
    await send({"type": "http.response.body", "body": b"" if scope["method"] == "HEAD" else body})


def _host(scope: Scope) -> str:
    """The address of the root, as the visitor has it."""
    said = dict(scope["headers"]).get(b"host", b"").decode("latin-1")
    if not re.fullmatch(r"[A-Za-z0-9.-]+(:\d{1,5})?|\[[0-9A-Fa-f:.]+\](:\d{1,5})?", said):
        name, port = scope.get("server") or ("localhost", 80)
        said = f"{name}:{port}"
    return f"{scope.get('scheme', 'http')}://{said}"
