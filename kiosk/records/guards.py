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


def create_tables(connection: Connection) -> None:
    """All tables with their guards, in the transaction of that connection."""
    Base.metadata.create_all(connection)
    for statement in _guards(connection.dialect.name):
        connection.exec_driver_sql(statement)


def _guards(dialect: str) -> list[str]:
    if dialect == "sqlite":
        return [
            _SQLITE.format(table=table.name, verb=verb)
            for table in EVIDENCE
            for verb in ("UPDATE", "DELETE")
        ]
    return [_POSTGRESQL_FUNCTION, *(_POSTGRESQL.format(table=table.name) for table in EVIDENCE)]
