"""Firefox driven over Marionette, its own remote protocol, with the standard library alone.

Automation sets ``security.fileuri.strict_origin_policy`` to false unless
``remote.prefs.recommended`` is false: pages opened from disk may then do what they may not do for a
reader. So the recommended preferences stay off and the strict policy is asserted at each start.
"""

import json
import os
import shutil
import socket
import subprocess
import tempfile
import time
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path
from typing import Any

NAMES = ("firefox-esr", "firefox")
# System access is asked for to read a preference back, nothing else.
FLAGS = ("--marionette", "--remote-allow-system-access", "--no-remote", "--headless")
START_SECONDS = 60
ANSWER_SECONDS = 120

PREFERENCES: Mapping[str, bool | int | str] = {
    "remote.prefs.recommended": False,
    "app.update.enabled": False,
    "browser.aboutwelcome.enabled": False,
    "browser.download.folderList": 2,
    "browser.download.useDownloadDir": True,
    "browser.shell.checkDefaultBrowser": False,
    "browser.startup.page": 0,
    "datareporting.policy.dataSubmissionEnabled": False,
    "extensions.update.enabled": False,
    "network.captive-portal-service.enabled": False,
    "network.connectivity-service.enabled": False,
    "services.settings.server": "data:,",
    "toolkit.telemetry.reportingpolicy.firstRun": False,
}

# WebDriver's wrapper gives the arguments as `arguments` and waits for a returned promise.
WRAPPER = "return (async (args) => {%s})(Array.from(arguments));"
READ_PREFERENCE = "return Services.prefs.getBoolPref(arguments[0]);"


def find(environ: Mapping[str, str] = os.environ) -> Path | None:
    """Return the Firefox to use: the one named in BASINSIDE_FIREFOX, else one on PATH."""
    named = environ.get("BASINSIDE_FIREFOX", "")
    if named:
        return Path(named) if Path(named).is_file() else None
    for name in NAMES:
        found = shutil.which(name, path=environ.get("PATH"))
        if found:
            return Path(found)
    return None


class MarionetteError(Exception):
    """Firefox answered a command with an error."""


class Firefox:
    """One running Firefox with one tab."""

    def __init__(self, connection: socket.socket, downloads: Path) -> None:
        self.downloads = downloads
        self._connection = connection
        self._heard = b""
        self._number = 0
        self._receive()  # the greeting
        self.command("WebDriver:NewSession", {"capabilities": {"alwaysMatch": {}}})
        self.command("WebDriver:SetTimeouts", {"script": 100_000, "pageLoad": 60_000})

    def _receive(self) -> Any:
        while b":" not in self._heard:
            self._heard += self._more()
        length, rest = self._heard.split(b":", 1)
        while len(rest) < int(length):
            rest += self._more()
        self._heard = rest[int(length) :]
        return json.loads(rest[: int(length)])

    def _more(self) -> bytes:
        piece = self._connection.recv(65536)
        if not piece:
            raise MarionetteError("Firefox closed the connection")
        return piece

    def command(self, name: str, parameters: dict[str, Any] | None = None) -> Any:
        """Send one Marionette command and return its answer."""
        self._number += 1
        message = json.dumps([0, self._number, name, parameters or {}]).encode()
        self._connection.sendall(b"%d:%s" % (len(message), message))
        _, _, error, answer = self._receive()
        if error:
            raise MarionetteError(f"{name}: {error['error']}: {error['message']}")
        return answer

    def go(self, url: str) -> None:
        """Open a page and wait until it is loaded."""
        self.command("WebDriver:Navigate", {"url": url})

    def run(self, body: str, *args: Any) -> Any:
        """Run the body of an async function of `args` in the page; its value must be JSON."""
        script = {"script": WRAPPER % body, "args": list(args), "sandbox": None}
        return self.command("WebDriver:ExecuteScript", script)["value"]

    def preference(self, name: str) -> bool:
        """Return a true-or-false preference as Firefox holds it now."""
        self.command("Marionette:SetContext", {"value": "chrome"})
        script = {"script": READ_PREFERENCE, "args": [name]}
        value = self.command("WebDriver:ExecuteScript", script)["value"]
        self.command("Marionette:SetContext", {"value": "content"})
        return bool(value)


def _free_port() -> int:
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return int(probe.getsockname()[1])


def _connected(port: int, process: "subprocess.Popen[bytes]") -> socket.socket:
    end = time.monotonic() + START_SECONDS
    while time.monotonic() < end and process.poll() is None:
        try:
            connection = socket.create_connection(("127.0.0.1", port), 1)
        except OSError:
            time.sleep(0.1)
        else:
            connection.settimeout(ANSWER_SECONDS)
            return connection
    raise MarionetteError(f"Firefox did not answer within {START_SECONDS} s")


@contextmanager
def launched(program: Path) -> Iterator[Firefox]:
    """Start a headless Firefox with a profile of its own and end it at the end."""
    with tempfile.TemporaryDirectory(prefix="firefox-", ignore_cleanup_errors=True) as folder:
        profile, port = Path(folder), _free_port()
        downloads = profile / "downloads"
        downloads.mkdir()
        preferences = {
            **PREFERENCES,
            "marionette.port": port,
            "browser.download.dir": str(downloads),
        }
        lines = [f"user_pref({json.dumps(k)}, {json.dumps(v)});\n" for k, v in preferences.items()]
        (profile / "user.js").write_text("".join(lines), encoding="utf-8")
        process = subprocess.Popen(
            [program, *FLAGS, "--profile", profile],
            env={**os.environ, "MOZ_HEADLESS": "1", "HOME": folder},
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
        )
        try:
            with _connected(port, process) as connection:
                firefox = Firefox(connection, downloads)
                strict = firefox.preference("security.fileuri.strict_origin_policy")
                assert strict, "Firefox runs with a lax policy for pages from disk"
                yield firefox
        finally:
            process.terminate()
            try:
                process.wait(15)
            except subprocess.TimeoutExpired:
                process.kill()
                process.wait()
