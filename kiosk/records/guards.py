"""The triggers by which the records defend themselves: no program can change a kept row."""

from __future__ import annotations

from sqlalchemy import Connection, Table

from kiosk.records.models import Base, Kept

EVIDENCE: tuple[Table, ...] = tuple(
    Base.metadata.tables[model.__tablename__]
    for model in Base.__subclasses__()
    if issubclass(model, Kept)
)

_SQLITE = """CREATE TRIGGER {table}_no_{verb} BEFORE {verb} ON {table}
BEGIN SELECT RAISE(ABORT, 'kept rows are never changed'); END"""
_POSTGRESQL_FUNCTION = """CREATE FUNCTION kept_rows_stay() RETURNS trigger LANGUAGE plpgsql
AS $$ BEGIN RAISE EXCEPTION 'kept rows are never changed'; END $$"""
_POSTGRESQL = """CREATE TRIGGER {table}_no_change BEFORE UPDATE OR DELETE ON {table}
FOR EACH ROW EXECUTE FUNCTION kept_rows_stay()"""


def create_tables(connection: Connection, *models: type[Base]) -> None:
    """All tables with their guards, or only those of ``models`` beside the ones that are there.

    In the transaction of that connection.
    """
    tables = [Base.metadata.tables[model.__tablename__] for model in models] or None
    Base.metadata.create_all(connection, tables)
    dialect = connection.dialect.name
    if tables is None and dialect != "sqlite":
        connection.exec_driver_sql(_POSTGRESQL_FUNCTION)
    for table in EVIDENCE:
        if tables is None or table in tables:
            for statement in _guards(table.name, dialect):
                connection.exec_driver_sql(statement)


def _guards(table: str, dialect: str) -> list[str]:
    if dialect == "sqlite":
        return [_SQLITE.format(table=table, verb=verb) for verb in ("UPDATE", "DELETE")]
    return [_POSTGRESQL.format(table=table)]
