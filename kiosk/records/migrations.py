"""From the tables of an older version to those of the present one, in place; nothing is lost.

Each step runs in the transaction that opens the records: it is done as a whole or not at all.
"""

from __future__ import annotations

from collections.abc import Callable

from sqlalchemy import Connection
from sqlalchemy.schema import CreateColumn

from kiosk.records.guards import create_tables
from kiosk.records.models import (
    SCHEMA_VERSION,
    AnswerShownRow,
    BalanceCheckedRow,
    Base,
    CheckMassRow,
    GuessMadeRow,
    JarWeighedRow,
    KeyChangedRow,
    RoundNoteRow,
    SizeReadRow,
    SizeVoidedRow,
    VolumeDroppedRow,
    VolumeMadeRow,
    VolumeStartedRow,
    WaterVoidedRow,
    WaterWeighedRow,
)


def migrate(connection: Connection, version: int) -> None:
    """Bring tables of that version up to SCHEMA_VERSION, one version at a time."""
    for step in range(version, SCHEMA_VERSION):
        _STEPS[step](connection)


def _add_checks_of_the_balance(connection: Connection) -> None:
    create_tables(connection, CheckMassRow, BalanceCheckedRow)


def _add_guesses(connection: Connection) -> None:
    create_tables(connection, GuessMadeRow, AnswerShownRow)


def _add_volume_keys(connection: Connection) -> None:
    create_tables(
        connection, VolumeStartedRow, SizeReadRow, SizeVoidedRow, VolumeMadeRow, VolumeDroppedRow
    )


def _add_goals_and_lots(connection: Connection) -> None:
    _add_columns(connection, KeyChangedRow, "goal", "in_lots")


def _add_closed_jars(connection: Connection) -> None:
    create_tables(connection, JarWeighedRow)


def _add_rounds(connection: Connection) -> None:
    create_tables(connection, RoundNoteRow)


def _add_bits(connection: Connection) -> None:
    _add_columns(connection, KeyChangedRow, "bits")


def _add_volumes_by_water(connection: Connection) -> None:
    create_tables(connection, WaterWeighedRow, WaterVoidedRow)
    table, check = "volumes_started", "ck_volumes_started_shape"
    old = "CHECK (shape IN ('box', 'cylinder', 'tapered', 'tapered box'))"
    new = "CHECK (shape IN ('box', 'cylinder', 'tapered', 'tapered box', 'water'))"
    if connection.dialect.name == "sqlite":
        _rewrite(connection, table, old, new)
    else:
        connection.exec_driver_sql(
            f"ALTER TABLE {table} DROP CONSTRAINT {check}, ADD CONSTRAINT {check} {new}"
        )


def _rewrite(connection: Connection, table: str, old: str, new: str) -> None:
    """Change a constraint that allows more from now on; no row is touched.

    The way for changes that leave the content of a SQLite file as it is
    (https://www.sqlite.org/lang_altertable.html, section 7). A table that was made by an earlier
    step from today's models has the new words already.
    """
    version = connection.exec_driver_sql("PRAGMA schema_version").scalar_one()
    connection.exec_driver_sql("PRAGMA writable_schema = ON")
    connection.exec_driver_sql(
        "UPDATE sqlite_master SET sql = replace(sql, ?, ?) WHERE type = 'table' AND name = ?",
        (old, new, table),
    )
    connection.exec_driver_sql(f"PRAGMA schema_version = {version + 1}")
    connection.exec_driver_sql("PRAGMA writable_schema = OFF")


def _add_samples_added_to_others(connection: Connection) -> None:
    connection.exec_driver_sql(
        "ALTER TABLE key_masses ADD COLUMN tare_id VARCHAR(32) "
        "CONSTRAINT fk_key_masses_tare_id REFERENCES weighings (id)"
    )


def _add_columns(connection: Connection, model: type[Base], *names: str) -> None:
    """Columns that may be empty, at the end of a table that is there."""
    table = Base.metadata.tables[model.__tablename__]
    for name in names:
        made = CreateColumn(table.c[name]).compile(dialect=connection.dialect)
        connection.exec_driver_sql(f"ALTER TABLE {table.name} ADD COLUMN {made}")


_STEPS: dict[int, Callable[[Connection], None]] = {
    1: _add_checks_of_the_balance,
    2: _add_guesses,
    3: _add_volume_keys,
    4: _add_goals_and_lots,
    5: _add_closed_jars,
    6: _add_rounds,
    7: _add_bits,
    8: _add_volumes_by_water,
    9: _add_samples_added_to_others,
}
