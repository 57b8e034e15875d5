"""Looking into records on a server from outside."""

from __future__ import annotations

import re
from pathlib import Path
from time import monotonic

import psycopg
from psycopg.rows import dict_row
from psycopg.sql import SQL, Identifier

# A constraint that went through a dump says the same with other casts.
_CASTS = re.compile(r"::(text|character varying)(\[\])?|[()\[\]]")
_SHAPE = """
SELECT table_name || '.' || column_name, data_type || ' ' || is_nullable || ' '
    || coalesce(character_maximum_length::text, '') || ' ' || coalesce(column_default, '')
FROM information_schema.columns WHERE table_schema = 'public'
UNION ALL SELECT conrelid::regclass || '.' || conname, pg_get_constraintdef(oid)
FROM pg_constraint WHERE connamespace = 'public'::regnamespace
UNION ALL SELECT indexname, indexdef FROM pg_indexes WHERE schemaname = 'public'
UNION ALL SELECT tgrelid::regclass || '.' || tgname, pg_get_triggerdef(oid)
FROM pg_trigger WHERE NOT tgisinternal
"""


def version_1(where: str) -> None:
    """Records on a server as the first version made them, with those of the file of version 1."""
    script = Path(__file__).parents[2] / "fixtures/records/version-1-postgresql.sql"
    with psycopg.connect(where) as connection:
        connection.execute(script.read_bytes())


def version(where: str) -> int:
    with psycopg.connect(where) as connection:
        (row,) = connection.execute("SELECT version FROM gramstand_schema").fetchall()
        return int(row[0])


def shape(where: str) -> set[tuple[str, str]]:
    """Every column, constraint, index and trigger as the server describes it."""
    with psycopg.connect(where) as connection:
        found = connection.execute(_SHAPE).fetchall()
    return {(name, _CASTS.sub("", described)) for name, described in found}


def content(where: str) -> dict[str, list[dict[str, object]]]:
    """The rows of every table, each cell by the name of its column."""
    with psycopg.connect(where, row_factory=dict_row) as connection:
        found = connection.execute("SELECT tablename FROM pg_tables WHERE schemaname = 'public'")
        names = [row["tablename"] for row in found]
        question = SQL("SELECT * FROM {} ORDER BY 1")
        return {
            name: connection.execute(question.format(Identifier(name))).fetchall() for name in names
        }


def somebody_waits(where: str, patience_s: float = 5.0) -> bool:
    """Whether somebody waits for a lock, asked until it is so."""
    question = """SELECT count(*) FROM pg_stat_activity
        WHERE datname = current_database() AND wait_event_type = 'Lock'"""
    until = monotonic() + patience_s
    with psycopg.connect(where, autocommit=True) as connection:
        while monotonic() < until:
            ((found,),) = connection.execute(question).fetchall()
            if found:
                return True
    return False
