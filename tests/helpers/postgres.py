"""A PostgreSQL server of one's own, in a temporary folder, reached by a socket in it."""

from __future__ import annotations

import os
import pwd
import shutil
import subprocess
from functools import cache
from itertools import count
from pathlib import Path
from typing import Any

import psycopg
from psycopg.sql import SQL, Identifier

# Nothing here has to survive a power cut; a killed server loses nothing by it.
_OPTIONS = {
    "fsync": "off",
    "listen_addresses": "",
    "max_connections": "80",
    "shared_buffers": "16MB",
    "autovacuum": "off",
    "log_min_messages": "panic",
}


@cache
def programs() -> Path | None:
    """The folder with initdb and pg_ctl; Debian keeps them off the PATH."""
    on_path = shutil.which("initdb")
    if on_path is not None:
        return Path(on_path).resolve().parent
    found = Path("/usr/lib/postgresql").glob("*/bin/initdb")
    newest = max(found, key=lambda path: int(path.parts[-3]), default=None)
    return None if newest is None else newest.parent


@cache
def somebody_else() -> dict[str, Any]:
    """For a subprocess: PostgreSQL refuses to run as root, so somebody else runs it there."""
    if os.geteuid() != 0:
        return {}
    try:
        name = pwd.getpwnam("postgres")
    except KeyError:
        name = pwd.getpwnam("nobody")
    return {"user": name.pw_uid, "group": name.pw_gid, "extra_groups": []}


class Postgres:
    """A server in ``folder``, which is made; its one user is called kiosk."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self._numbers = count()
        self._running = False
        self._data = folder / "data"
        folder.mkdir()
        if "user" in somebody_else():
            os.chown(folder, somebody_else()["user"], somebody_else()["group"])
        self._run(
            "initdb", "--no-sync", "--auth=trust", "--encoding=UTF8", "--locale=C",
            "--username=kiosk", f"--pgdata={self._data}",
        )  # fmt: skip
        self.start()

    def address(self, database: str) -> str:
        """Where records are that lie in this database."""
        return address(self.folder, database)

    def fresh(self) -> str:
        """Where records may be: a new database."""
        name = f"fresh_{next(self._numbers)}"
        create(self.address("postgres"), name)
        return self.address(name)

    def start(self) -> None:
        """Start the server if it does not run, and wait until it answers."""
        if self._running:
            return
        options = {"unix_socket_directories": self.folder, **_OPTIONS}
        words = " ".join(f"-c {name}='{value}'" for name, value in options.items())
        log = self.folder / "log"
        self._run("pg_ctl", "start", "-w", "-s", "-D", self._data, "-l", log, "-o", words)
        self._running = True

    def stop(self, mode: str = "fast") -> None:
        """Stop the server if it runs; ``immediate`` is as if it had been killed."""
        if not self._running:
            return
        self._run("pg_ctl", "stop", "-w", "-s", "-m", mode, "-D", self._data)
        self._running = False

    def _run(self, program: str, *words: object) -> None:
        folder = programs()
        assert folder is not None, "see unavailable()"
        # To a file: the server inherits what the program writes to, and would keep a pipe open.
        told = self.folder / f"{program}.txt"
        with told.open("w") as output:
            done = subprocess.run(
                [folder / program, *map(str, words)],
                cwd=self.folder, stdin=subprocess.DEVNULL, stdout=output, stderr=output,
                env={"PATH": os.environ["PATH"], "LC_ALL": "C"}, timeout=60, check=False,
                **somebody_else(),
            )  # fmt: skip
        if done.returncode:
            raise RuntimeError(f"{program} failed: {told.read_text()}")


def address(folder: Path, database: str) -> str:
    """Where records are that lie in this database of the server in that folder."""
    return f"postgresql://kiosk@/{database}?host={folder}"


def create(server: str, name: str) -> None:
    """A database without any table, on the server whose database ``server`` is."""
    with psycopg.connect(server, autocommit=True) as connection:
        connection.execute(SQL("CREATE DATABASE {}").format(Identifier(name)))


def unavailable() -> str | None:
    """Why no server can be started here, None if one can."""
    if programs() is None:
        return "PostgreSQL is not installed (on Debian: apt-get install postgresql)"
    return None
