"""A listener on loopback that notes whatever reaches it, for the tests that nothing leaves."""

import socketserver
import threading
from collections.abc import Iterator
from contextlib import contextmanager

LONGEST_REQUEST = 65536
ANSWER = b"HTTP/1.1 404 Not Found\r\nContent-Length: 0\r\nConnection: close\r\n\r\n"


class _Note(socketserver.BaseRequestHandler):
    def handle(self) -> None:
        self.request.settimeout(5)
        heard = b""
        try:
            while b"\r\n\r\n" not in heard and len(heard) < LONGEST_REQUEST:
                piece = self.request.recv(4096)
                if not piece:
                    break
                heard += piece
            self.request.sendall(ANSWER)
        except OSError:
            pass  # the other side went away: what was heard still counts
        first_line = heard.split(b"\r\n", 1)[0].decode("latin-1")
        self.server.heard.append(first_line)  # type: ignore[attr-defined]


class Listener(socketserver.ThreadingTCPServer):
    """Notes the first line of every request in `heard`; a connection that says nothing is ''."""

    daemon_threads = True

    def __init__(self) -> None:
        self.heard: list[str] = []
        super().__init__(("127.0.0.1", 0), _Note)

    @property
    def port(self) -> int:
        return int(self.server_address[1])


@contextmanager
def listening() -> Iterator[Listener]:
    """Listen on a free port of loopback until the end of the block."""
    with Listener() as listener:
        thread = threading.Thread(target=listener.serve_forever, args=(0.05,), daemon=True)
        thread.start()
        try:
            yield listener
        finally:
            listener.shutdown()
            thread.join()
