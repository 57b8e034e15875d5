"""What the tests of several rooms share."""

from __future__ import annotations

import os
import sys
from collections.abc import Callable, Iterator
from itertools import count
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import pytest

from tests.helpers.command import Command

NEEDED = "GRAMSTAND_TESTS_NEED_POSTGRESQL"  # set where a missing server is a fault


@pytest.fixture
def gramstand(capsys: pytest.CaptureFixture[str]) -> Command:
    """The command line, in this process."""
    return Command(capsys)


# A PostgreSQL server -------------------------------------------------------------------------


@pytest.fixture(scope="session")
def postgres_installed() -> None:
    """Skips where no server can be started, or fails where there has to be one."""
    why: str | None = "PostgreSQL's tests are for systems with Unix sockets"
    if sys.platform != "win32":
        from tests.helpers.postgres import unavailable

        why = unavailable()
    if why is not None and os.environ.get(NEEDED):
        pytest.fail(why)
    if why is not None:
        pytest.skip(why)


@pytest.fixture(scope="session")
def _server(
    postgres_installed: None, tmp_path_factory: pytest.TempPathFactory, worker_id: str
) -> Iterator[Path]:
    from tests.helpers.shared_postgres import shared_server

    base = tmp_path_factory.getbasetemp()
    with shared_server(base if worker_id == "master" else base.parent) as folder:
        yield folder


@pytest.fixture(scope="session")
def new_database(_server: Path, worker_id: str) -> Callable[[], str]:
    """Makes a database without any table, and says where it is."""
    from tests.helpers.postgres import address, create

    numbers = count()

    def new() -> str:
        name = f"{worker_id}_{next(numbers)}"
        create(address(_server, "postgres"), name)
        return address(_server, name)

    return new


@pytest.fixture(scope="session")
def _database(new_database: Callable[[], str]) -> str:
    from tests.helpers.emptied import with_tables

    where = new_database()
    with_tables(where)
    return where


@pytest.fixture
def on_server(_database: str) -> str:
    """Where empty records are, on a server."""
    from tests.helpers.emptied import empty

    empty(_database)
    return _database


@pytest.fixture(scope="session")
def _own_server(postgres_installed: None) -> Iterator[Any]:
    from tests.helpers.postgres import Postgres

    with TemporaryDirectory(prefix="gramstand-") as folder:
        Path(folder).chmod(0o755)
        server = Postgres(Path(folder) / "server")
        yield server
        server.stop("immediate")


@pytest.fixture
def own_server(_own_server: Any) -> Any:
    """A running server of this process, which a test may stop and start (helpers.postgres)."""
    _own_server.start()
    return _own_server
