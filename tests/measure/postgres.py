"""A PostgreSQL server of one's own, to be killed: in a folder, on a socket and a loopback port.

It won't run as root, so for root it runs as the user that Debian's package makes, or as nobody.
"""

from __future__ import annotations

import os
import pwd
import shutil
import signal
import socket
import subprocess
import time
from collections.abc import Sequence
from pathlib import Path

import psycopg

from trainer.school.address import Address

__all__ = ["ADMIN", "PASSWORD", "Cluster", "binaries"]

ADMIN = "administrator"
PASSWORD = "not-a-secret"  # of a server that lives for a minute
_STARTING_S = 30.0


def binaries() -> Path:
    """The folder of PostgreSQL's programs, the newest where there are several."""
    debian = sorted(
        Path("/usr/lib/postgresql").glob("*/bin/initdb"), key=lambda path: int(path.parts[-3])
    )
    found = debian[-1:] or [Path(name) for name in [shutil.which("initdb")] if name]
    if not found:
        raise SystemExit("PostgreSQL isn't installed (Debian: postgresql)")
    return found[0].parent


def _free_port() -> int:
    with socket.socket() as bound:
        bound.bind(("127.0.0.1", 0))
        return int(bound.getsockname()[1])


class Cluster:
    """A server whose files lie in a folder that is new."""

    def __init__(self, folder: Path) -> None:
        self.port = _free_port()
        self._bin = binaries()
        self._folder = folder
        self._data = folder / "data"
        self._user: str | None = None
        self._server: subprocess.Popen[bytes] | None = None
        folder.mkdir(parents=True)
        if os.geteuid() == 0:
            names = {entry.pw_name for entry in pwd.getpwall()}
            self._user = "postgres" if "postgres" in names else "nobody"
            shutil.chown(folder, self._user)
        (folder / "password").write_text(PASSWORD, encoding="utf-8")
        (folder / "password").chmod(0o644)
        self._run(
            "initdb", "-D", str(self._data), "-U", ADMIN, "-A", "scram-sha-256", "--pwfile",
            str(folder / "password"), "-E", "UTF8", "--locale=C", "--no-sync",
        )  # fmt: skip

    def _run(self, program: str, *arguments: str) -> None:
        done = subprocess.run(
            [str(self._bin / program), *arguments], capture_output=True, text=True, check=False,
            user=self._user, cwd=self._folder,
        )  # fmt: skip
        if done.returncode:
            raise SystemExit(f"{program}: {done.stdout}{done.stderr}")

    def start(self) -> None:
        """Start it and wait until it answers; what a kill left behind may have to end first."""
        command = [
            str(self._bin / "postgres"), "-D", str(self._data), "-k", str(self._folder),
            "-p", str(self.port), "-c", "listen_addresses=127.0.0.1", "-c", "max_connections=80",
        ]  # fmt: skip
        until = time.monotonic() + _STARTING_S
        while time.monotonic() < until:
            if self._server is None or self._server.poll() is not None:
                with (self._folder / "log").open("ab") as log:
                    self._server = subprocess.Popen(
                        command, stdout=log, stderr=log, user=self._user, cwd=self._folder
                    )
            try:
                self.connect("postgres").close()
            except psycopg.OperationalError:
                time.sleep(0.05)
            else:
                return
        raise SystemExit(f"no server: {(self._folder / 'log').read_text(encoding='utf-8')[-2000:]}")

    def kill(self) -> None:
        """Kill it at once, and every process of it: nothing is finished, nothing said."""
        assert self._server is not None
        children = Path(f"/proc/{self._server.pid}/task/{self._server.pid}/children")
        pids = [int(pid) for pid in children.read_text(encoding="ascii").split()]
        for pid in (self._server.pid, *pids):
            try:
                os.kill(pid, signal.SIGKILL)
            except ProcessLookupError:
                continue
        self._server.wait()

    def stop(self) -> None:
        """End it."""
        if self._server is not None and self._server.poll() is None:
            self._server.send_signal(signal.SIGINT)
            self._server.wait(30)

    def address(self, database: str, user: str = ADMIN, password: str = PASSWORD) -> Address:
        """Where one of its databases is."""
        return Address(f"postgresql://{user}@127.0.0.1:{self.port}/{database}", password)

    def connect(self, database: str, user: str = ADMIN) -> psycopg.Connection[tuple[object, ...]]:
        """Connect to it, each statement by itself."""
        return psycopg.connect(
            host="127.0.0.1", port=self.port, dbname=database, user=user, password=PASSWORD,
            autocommit=True,
        )  # fmt: skip

    def execute(self, database: str, statements: Sequence[str]) -> None:
        """Have an administrator run statements."""
        with self.connect(database) as connection:
            for statement in statements:
                connection.execute(statement.encode("utf-8"))
