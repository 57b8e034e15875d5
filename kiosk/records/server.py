"""Records on a PostgreSQL server, shared by the kiosks of one event."""

from __future__ import annotations

from sqlalchemy import (
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
_LOCK = 0x47725374  # of those who make the tables: several kiosks may come first at once
_VERSION = Table("gramstand_schema", MetaData(), Column("version", Integer, primary_key=True))


def open_server(where: str) -> tuple[Engine, str]:
    """An engine on the database ``where`` (postgresql://user@host/name), and its name to show.

    Makes the tables if there are none.

    Raises RecordsError if the address makes no sense, the driver is missing, the server does not
    answer, or the tables were made by a newer version.
    """
    try:
        url = make_url(where)
        engine = create_engine(url.set(drivername="postgresql+psycopg"), pool_pre_ping=True)
    except (ArgumentError, ValueError) as error:
        raise RecordsError(Problem.BAD_ADDRESS, where=f"{SCHEMES[0]}://...") from error
    except ModuleNotFoundError as error:
        raise RecordsError(Problem.NO_DRIVER) from error
    shown = url.render_as_string(hide_password=True)
    with in_plain_words(shown), engine.begin() as connection:
        _prepare(connection, shown)
    return engine, shown


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
