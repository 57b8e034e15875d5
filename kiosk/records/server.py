"""Records on a PostgreSQL server, shared by the kiosks of one event."""

from __future__ import annotations

from sqlalchemy import (
    URL,
    Column,
    Connection,
    Engine,
    Integer,
    MetaData,
    Table,
    create_engine,
    func,
    inspect,
    make_url,
    select,
)
from sqlalchemy.exc import ArgumentError

from kiosk.records.errors import Problem, RecordsError, in_plain_words
from kiosk.records.guards import create_tables
from kiosk.records.migrations import migrate
from kiosk.records.models import SCHEMA_VERSION

SCHEMES = ("postgresql", "postgres")
CHANNEL = "gramstand"  # on which a kiosk hints that it wrote something
_LOCK = 0x47725374  # of those who make the tables: several kiosks may come first at once
# A screen waits for no cable: a server that does not answer is away within seconds. What a kiosk
# that was cut off still holds there, the server lets go of as soon.
_IMPATIENT = {
    "application_name": "gramstand",
    "connect_timeout": "3",
    "keepalives_idle": "4",
    "keepalives_interval": "2",
    "keepalives_count": "2",
    "tcp_user_timeout": "5000",
    "options": "-c lock_timeout=4s -c statement_timeout=15s"
    " -c idle_in_transaction_session_timeout=8s",
}
_VERSION = Table("gramstand_schema", MetaData(), Column("version", Integer, primary_key=True))


def open_server(where: str) -> tuple[Engine, str]:
    """An engine on the database ``where`` (postgresql://user@host/name), and its name to show.

    Makes the tables if there are none.

    Raises RecordsError if the address makes no sense, the driver is missing, the server does not
    answer, or the tables were made by a newer version.
    """
    url = server_url(where)
    try:
        engine = create_engine(url, pool_pre_ping=True)
    except ImportError as error:  # the driver, or the library below it
        raise RecordsError(Problem.NO_DRIVER) from error
    shown = shown_url(url)
    try:
        with in_plain_words(shown), engine.begin() as connection:
            _prepare(connection, shown)
    except BaseException:
        engine.dispose()
        raise
    return engine, shown


def server_url(where: str) -> URL:
    """The address of a server with our patience in it; what ``where`` says itself goes first.

    Raises RecordsError if it makes no sense.
    """
    try:
        url = make_url(where).set(drivername="postgresql+psycopg")
    except (ArgumentError, ValueError) as error:
        raise RecordsError(Problem.BAD_ADDRESS, where=f"{SCHEMES[0]}://...") from error
    return url.set(query=_IMPATIENT | dict(url.query))


def shown_url(url: URL) -> str:
    """The address as a person knows it, without a password."""
    said = {name: value for name, value in url.query.items() if name not in _IMPATIENT}
    plain = url.set(drivername=SCHEMES[0], query=said)
    return plain.render_as_string(hide_password=True)


def _prepare(connection: Connection, shown: str) -> None:
    connection.execute(select(func.pg_advisory_xact_lock(_LOCK)))
    if not inspect(connection).has_table(_VERSION.name):
        create_tables(connection)
        _VERSION.create(connection)
        connection.execute(_VERSION.insert().values(version=SCHEMA_VERSION))
        return
    version = connection.scalar(select(func.max(_VERSION.c.version)))
    if version is None or version > SCHEMA_VERSION:
        raise RecordsError(Problem.NEWER, where=shown)
    if version < SCHEMA_VERSION:
        migrate(connection, version)
        connection.execute(_VERSION.update().values(version=SCHEMA_VERSION))
