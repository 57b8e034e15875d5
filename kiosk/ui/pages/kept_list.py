"""The result list as it is, kept before something changes it."""

from __future__ import annotations

from kiosk.rounds.contents import Content, Stage
from kiosk.rounds.results import as_it_was
from kiosk.rounds.standing import results_now
from kiosk.ui.pages.room import Room

SHOWN = (Stage.RELEASED, Stage.FINAL)  # to everybody


def list_before(room: Room, division: str, why: str) -> tuple[Content, ...]:
    """The list as it is, to be kept with what changes it; nothing while nobody has seen one."""
    state = room.state
    if state.stage(division) not in SHOWN:
        return ()
    return (as_it_was(results_now(state, division, draws=0), why),)
