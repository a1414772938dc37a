"""An ASGI application asked one thing, its answer taken whole."""

from collections.abc import Awaitable, Callable
from typing import Any

__all__ = ["whole"]

App = Callable[..., Awaitable[None]]


async def whole(app: App, scope: dict[str, Any]) -> tuple[int, dict[bytes, bytes], bytes]:
    """The status, headers by their name in lower case, and body of the answer to a scope without a body."""
    status, headers, parts = 500, dict[bytes, bytes](), list[bytes]()

    async def receive() -> dict[str, Any]:
        return {"type": "http.request", "body": b"", "more_body": False}

    async def send(event: dict[str, Any]) -> None:
        nonlocal status
        if event["type"] == "http.response.start":
            status = event["status"]
            headers.update((key.lower(), value) for key, value in event["headers"])
        else:
            parts.append(event.get("body", b""))

    await app(scope, receive, send)
    return status, headers, b"".join(parts)
