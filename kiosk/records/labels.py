"""Labels: a cup's number while it is out, a jar's letter or a box's number while its key counts.

The primary key of their table keeps two kiosks from giving one label twice.
"""

from __future__ import annotations

from typing import TypeVar

from sqlalchemy import select
from sqlalchemy.exc import IntegrityError
from sqlalchemy.orm import Session

from kiosk.records.errors import Problem, RecordsError
from kiosk.records.kinds import BOX, JAR
from kiosk.records.models import Kept, LabelTakenRow

_Row = TypeVar("_Row", bound=Kept)


def claim(session: Session, kind: str, simulated: bool, label: str, holder: str) -> None:
    """Take a label for ``holder``. RecordsError if another has it."""
    session.add(LabelTakenRow(kind=kind, simulated=simulated, label=label, holder=holder))
    try:
        session.flush()
    except IntegrityError as error:
        if kind == JAR:
            raise RecordsError(Problem.LETTER_TAKEN, letter=label) from error
        problem = Problem.BOX_TAKEN if kind == BOX else Problem.NUMBER_TAKEN
        raise RecordsError(problem, number=label) from error


def release(session: Session, holder: str) -> bool:
    """Whether there was a label to release."""
    row = session.scalar(select(LabelTakenRow).filter_by(holder=holder).with_for_update())
    if row is None:
        return False
    session.delete(row)
    session.flush()
    return True


def locked(session: Session, model: type[_Row], row_id: str, missing: Problem) -> _Row:
    """The row of that id, for which other kiosks wait from now on. RecordsError for none."""
    row = session.scalar(select(model).where(model.id == row_id).with_for_update(of=model))
    if row is None:
        raise RecordsError(missing)
    return row
