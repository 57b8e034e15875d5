"""Printing: what the screen asks for is made and saved in the writer's thread."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from kiosk.procedures.fill_container import ContainerState, FillContainer
from kiosk.records.errors import Problem, RecordsError
from kiosk.settings import Paper
from kiosk.texts import say

if TYPE_CHECKING:
    from kiosk.records.store import Store  # brings SQLAlchemy along, which only the writer may
    from kiosk.ui.desk import Desk

Lines = tuple[str, ...]


def print_key(desk: Desk) -> None:
    """Save the papers of the key that was just kept; where they are is shown in its place."""
    procedure, facts = desk.procedure, desk.facts
    if not isinstance(procedure, FillContainer) or procedure.state is not ContainerState.SAVED:
        return  # a finger that was late
    if desk.failure is not None or not desk.settled_for_showing:
        return

    def done(lines: Lines) -> None:
        facts.printed = lines

    desk.notebook.look_up(
        papers_of(procedure.kept.id, simulated=facts.simulated, paper=facts.settings.paper), done
    )


def papers_of(key_id: str, *, simulated: bool, paper: Paper) -> Callable[[Store], Lines]:
    """A question to the store that saves the papers of a key: where they are, or why not."""

    def save(store: Store) -> Lines:
        from kiosk.reports.key_papers import save_key_papers  # brings reportlab along: not earlier
        from kiosk.reports.saving import PaperError, papers_folder

        found = [key for key in store.keys(simulated) if key.made.key_id == key_id]
        if not found:
            raise RecordsError(Problem.NO_KEY)
        try:
            saved = save_key_papers(found[0], papers_folder(), paper)
        except PaperError as error:
            return (str(error),)
        names = "\n".join(file.name for file in saved)
        return say("paper.saved", folder=saved[0].parent), names

    return save
