"""The cup table without a balance: a round whose cups are weighed by pan events written by hand."""

from __future__ import annotations

from dataclasses import replace

from drivers.reading import Reading
from kiosk.evidence import Source
from kiosk.procedures.cup_queue import CupQueue
from kiosk.procedures.pan_memory import PanMemory
from kiosk.procedures.procedure import Effect, PersonEvent
from kiosk.records.round_notes import RoundNote
from kiosk.rounds.contents import CupNote, CupTurn
from kiosk.rounds.cups import Pass
from kiosk.rounds.state import RoundState
from kiosk.weighing.pan_events import PanEvent, PanKind
from tests.helpers.pan import PLACED, REMOVED, STEP, feed, settled, shown, surroundings
from tests.helpers.round_notes import an_id, said, with_teams
from tests.helpers.weighings import weighed

TEAMS = ("Wren", "Heron", "Teal")
WORLD = replace(surroundings(), new_id=an_id)


def pan_at(grams: str) -> PanEvent:
    """The empty pan rests and shows so much."""
    reading: Reading = shown(grams)
    return PanEvent(
        kind=PanKind.PAN_EMPTY, at=1.0, reading=reading, readability=STEP, source=Source.SIMULATED
    )


CLEAN = pan_at("0.0")


def on(grams: str) -> tuple[PanEvent, ...]:
    """A cup is put on and rests."""
    return (PLACED, settled(grams))


def off(left: str = "0.0") -> tuple[PanEvent, ...]:
    """It is lifted, and the empty pan shows so much."""
    return (REMOVED, pan_at(left))


def weighed_empty(*grams: str, teams: tuple[str, ...] = TEAMS) -> RoundState:
    """A round in which the first cups were weighed empty."""
    state = with_teams(teams)
    for name, mass in zip(teams, grams, strict=False):
        note = CupNote(team=name.lower(), turn=CupTurn.EMPTY)
        state = said(state, note, weighing=weighed(mass))
    return state


def table(
    state: RoundState,
    pass_: Pass = Pass.FILLED,
    pan: PanMemory | None = None,
    *,
    again: str = "",
    protest: str = "",
) -> CupQueue:
    """The cup table of the first sitting, or of one team's cup in a protest."""
    procedure = CupQueue(
        WORLD,
        state=state,
        sitting=1,
        pass_=pass_,
        pan=pan or PanMemory(),
        again=again,
        protest=protest,
    )
    procedure.take_effects()
    return procedure


def handing_in(*events: PanEvent | PersonEvent) -> CupQueue:
    """Three cups are handed in, and these things happened."""
    procedure = table(weighed_empty("12.3", "14.0", "9.9"))
    feed(procedure, CLEAN, *events)
    return procedure


def notes(effects: list[Effect]) -> list[tuple[str, str, str]]:
    """What was noted: about whose cup, what, and the mass."""
    found = []
    for effect in effects:
        if isinstance(effect, RoundNote):
            content = CupNote.model_validate_json(effect.content)
            mass = str(effect.weighing.grams) if effect.weighing else ""
            found.append((content.team, str(content.turn), mass))
    return found


def turn_of(procedure: CupQueue) -> str:
    """Whose cup the table waits for."""
    current = procedure.list.current
    return current.team.team if current else ""
