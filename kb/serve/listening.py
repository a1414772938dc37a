"""Where a server listens: a socket, opened before anything else so that what is wrong is said in one sentence."""

import errno
import socket

from kb.errors import BadInput, DrillpathError

__all__ = ["addresses", "listen"]

ANYWHERE = ("0.0.0.0", "::")  # noqa: S104  # only when it is asked for
WAITING = 128
"""Visitors that the system lets wait to be let in."""


def listen(host: str, port: int) -> socket.socket:
    """A socket that listens at a host's port.

    Raises BadInput for a host that isn't this machine's, DrillpathError for a port that is taken or not allowed.
    """
    try:
        family, kind, proto, _, address = socket.getaddrinfo(host, port, type=socket.SOCK_STREAM)[0]
    except (OSError, UnicodeError):
        raise BadInput(f"there is no host {host!r}; 127.0.0.1 is this machine alone, 0.0.0.0 the whole room") from None
    opened = socket.socket(family, kind, proto)
    try:
        opened.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        opened.bind(address)
        opened.listen(WAITING)
    except OSError as error:
        opened.close()
        raise _why(error, host, port) from error
    return opened


def _why(error: OSError, host: str, port: int) -> DrillpathError:
    if error.errno == errno.EADDRINUSE:
        return DrillpathError(f"port {port} is in use; name another with --port")
    if error.errno == errno.EADDRNOTAVAIL:
        return BadInput(f"{host} is no address of this machine; 127.0.0.1 is, or 0.0.0.0 for the whole room")
    if error.errno == errno.EACCES:
        return DrillpathError(f"this account may not use port {port}; name one above 1023 with --port")
    return DrillpathError(f"can't listen at {host}, port {port}: {error.strerror or error}")


def addresses(host: str, port: int) -> tuple[str, ...]:
    """The addresses at which a listening server is found: on this machine first, then by others in the room."""
    if host not in ANYWHERE:
        return (_address("localhost" if host == "127.0.0.1" else host, port),)
    others = _outward()
    return (_address("localhost", port), *((_address(others, port),) if others else ()))


def _address(host: str, port: int) -> str:
    return f"http://{f'[{host}]' if ':' in host else host}:{port}/"


def _outward() -> str | None:
    """The machine's address on its network, if it is on one; nothing is sent to find it."""
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as asking:
        try:
            asking.connect(("192.0.2.1", 9))  # an address set aside for examples (RFC 5737)
        except OSError:
            return None
        found = str(asking.getsockname()[0])
    return None if found.startswith(("127.", "0.")) else found
