"""Printing: what the screen asks for is made and saved in the writer's thread."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from kiosk.procedures.fill_container import ContainerState, FillContainer
from kiosk.procedures.measure import Measure, MeasureState
from kiosk.procedures.measure_water import MeasureWater, WaterState
from kiosk.procedures.procedure import Procedure
from kiosk.records.errors import Problem, RecordsError
from kiosk.settings import Paper
from kiosk.texts import say

if TYPE_CHECKING:
    from kiosk.records.store import Store  # brings SQLAlchemy along, which only the writer may
    from kiosk.ui.desk import Desk

Lines = tuple[str, ...]
Save = Callable[["Store", Path, Paper], tuple[Path, ...]]


def print_key(desk: Desk) -> None:
    """Save the papers of the key that was just kept; where they are is shown in its place."""
    facts = desk.facts
    save = _papers(desk.procedure, simulated=facts.simulated)
    if save is None or desk.failure is not None or not desk.settled_for_showing:
        return  # a finger that was late

    def done(lines: Lines) -> None:
        facts.printed = lines

    desk.notebook.look_up(lambda store: _saved(store, save, facts.settings.paper), done)


def _papers(procedure: Procedure | None, *, simulated: bool) -> Save | None:
    """How to save the papers of what was just kept; None while nothing is."""
    match procedure:
        case MeasureWater(state=WaterState.SAVED, kept=water):
            return lambda store, folder, paper: _of_box(store, water.id, simulated, folder, paper)
        case FillContainer(state=ContainerState.SAVED, kept=draft):
            key_id = draft.id
            return lambda store, folder, paper: _of_jar(store, key_id, simulated, folder, paper)
        case Measure(state=MeasureState.SAVED, kept=draft):
            box_id = draft.id
            return lambda store, folder, paper: _of_box(store, box_id, simulated, folder, paper)
    return None


def _of_jar(
    store: Store, key_id: str, simulated: bool, folder: Path, paper: Paper
) -> tuple[Path, ...]:
    from kiosk.reports.key_papers import save_key_papers  # brings reportlab along: not earlier

    found = [key for key in store.keys(simulated) if key.draft.id == key_id]
    if not found:
        raise RecordsError(Problem.NO_KEY)
    return save_key_papers(found[0], folder, paper)


def _of_box(
    store: Store, key_id: str, simulated: bool, folder: Path, paper: Paper
) -> tuple[Path, ...]:
    from kiosk.reports.key_papers import save_volume_papers  # brings reportlab along: not earlier

    found = [key for key in store.volumes(simulated) if key.draft.id == key_id]
    if not found:
        raise RecordsError(Problem.NO_KEY)
    return save_volume_papers(found[0], folder, paper)


def _saved(store: Store, save: Save, paper: Paper) -> Lines:
    """Where the papers are, or why they are not."""
    from kiosk.reports.saving import PaperError, papers_folder

    try:
        files = save(store, papers_folder(), paper)
    except PaperError as error:
        return (str(error),)
    names = "\n".join(file.name for file in files)
    return say("paper.saved", folder=files[0].parent), names
