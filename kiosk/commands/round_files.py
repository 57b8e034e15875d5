"""A round on files: ``keys.csv`` with the seven keys, ``answers.csv`` with what teams answered."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path

from kiosk.commands.console import BadInputError
from kiosk.commands.strict_csv import Row, read_rows
from kiosk.estimating.standings import Answers, Key
from kiosk.settings import Task
from kiosk.texts import say
from kiosk.texts.typed import as_typed, typed_number

KEYS, ANSWERS = "keys.csv", "answers.csv"
KEY_COLUMNS = ("task", "actual", "half_width_percent")
ANSWER_COLUMNS = ("team", "task", "estimate")


def read_keys(folder: Path) -> dict[Task, Key]:
    """One key for each of the seven tasks; BadInputError, with file and line, otherwise."""
    keys: dict[Task, Key] = {}
    for row in read_rows(folder / KEYS, KEY_COLUMNS):
        task, actual, half_width = row.cells
        name = _task(row, task)
        if name in keys:
            raise row.wrong(say("round.key_twice", task=name))
        try:
            keys[name] = Key(
                actual=typed_number(actual, say("command.name.actual")),
                half_width_percent=typed_number(half_width, say("round.name.half_width")),
            )
        except ValueError as trouble:
            raise row.wrong(trouble) from trouble
    missing = [task for task in Task if task not in keys]
    if missing:
        raise BadInputError(say("round.no_key", file=folder / KEYS, tasks=", ".join(missing)))
    return keys


def read_answers(folder: Path) -> list[Answers]:
    """The teams in the order in which they come first; a blank estimate is no answer.

    BadInputError, with file and line, for a row that cannot be read or an answer given twice.
    """
    teams: dict[str, dict[Task, Decimal | None]] = {}
    for row in read_rows(folder / ANSWERS, ANSWER_COLUMNS):
        team, task, estimate = row.cells
        if not team:
            raise row.wrong(say("round.no_team"))
        name, given = _task(row, task), teams.setdefault(team, {})
        if name in given:
            raise row.wrong(say("round.answer_twice", team=as_typed(team), task=name))
        given[name] = _estimate(row, estimate) if estimate else None
    return [
        Answers(team=team, estimates={task: one for task, one in given.items() if one is not None})
        for team, given in teams.items()
    ]


def _task(row: Row, text: str) -> Task:
    try:
        return Task(text)
    except ValueError as error:
        known = ", ".join(Task)
        raise row.wrong(say("round.no_task", text=as_typed(text), tasks=known)) from error


def _estimate(row: Row, text: str) -> Decimal:
    try:
        estimate = typed_number(text, say("command.name.estimate"))
    except ValueError as trouble:
        raise row.wrong(trouble) from trouble
    if estimate < 0:
        raise row.wrong(say("score.estimate_negative"))
    return estimate
