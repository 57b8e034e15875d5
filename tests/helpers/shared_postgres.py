"""One PostgreSQL for all processes of a test run: started by the first that needs it.

Whoever uses it holds a lock that is shared. A keeper of its own waits for that lock alone: it gets
it when the last user has ended, however that was, and then stops the server.
"""

from __future__ import annotations

import fcntl
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from tests.helpers.imports import ROOT
from tests.helpers.postgres import Postgres


@contextmanager
def shared_server(common: Path) -> Iterator[Path]:
    """The folder of the server, which runs at least until this is left.

    ``common`` is a folder that all processes of the test run know.
    """
    with (common / "postgres-users").open("a") as users, (common / "postgres").open("a+") as where:
        fcntl.flock(users, fcntl.LOCK_SH)
        fcntl.flock(where, fcntl.LOCK_EX)  # one at a time looks whether there is a server
        where.seek(0)
        folder = Path(where.read() or "none")
        if not folder.exists():
            folder = _started(Path(users.name))
            where.truncate(0)
            where.write(str(folder))
            where.flush()
        fcntl.flock(where, fcntl.LOCK_UN)
        yield folder


def _started(users: Path) -> Path:
    folder = Path(tempfile.mkdtemp(prefix="gramstand-"))
    folder.chmod(0o755)
    keeper = subprocess.Popen(
        [sys.executable, "-m", __name__, str(users), str(folder / "server")],
        cwd=ROOT, stdin=subprocess.DEVNULL, stdout=subprocess.PIPE, start_new_session=True,
    )  # fmt: skip
    assert keeper.stdout is not None
    with keeper.stdout:
        if keeper.stdout.readline() != b"ready\n":
            raise RuntimeError("PostgreSQL did not start: its own words stand above")
    keeper.returncode = 0  # it outlives this process, on purpose
    return folder / "server"


def _keep(users: Path, folder: Path) -> None:
    try:
        server = Postgres(folder)
        print("ready", flush=True)
        with users.open() as lock:
            fcntl.flock(lock, fcntl.LOCK_EX)
            server.stop("immediate")
    finally:
        shutil.rmtree(folder.parent, ignore_errors=True)


if __name__ == "__main__":
    _keep(Path(sys.argv[1]), Path(sys.argv[2]))
