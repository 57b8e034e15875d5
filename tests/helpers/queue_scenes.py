"""The cup table in each of its states, with forty teams of the longest names and high numbers."""

from __future__ import annotations

from kiosk.procedures.cup_queue import CupQueue
from kiosk.procedures.pan_memory import PanMemory
from kiosk.procedures.procedure import Person
from kiosk.procedures.queue_steps import QueueState
from kiosk.rounds.contents import CupNote, CupTurn
from kiosk.rounds.cups import Pass
from kiosk.rounds.state import RoundState
from tests.helpers.pan import PLACED, feed, memory, press
from tests.helpers.queue_hands import CLEAN, off, on, pan_at, table
from tests.helpers.round_notes import opened, said, team
from tests.helpers.weighings import weighed

S = QueueState
NAMES = tuple(
    f"Hummingbirds {first}{second}" for first in "AB" for second in "ABCDEFGHIJKLMNOPQRST"
)
LOW, HIGH = 60, 99  # the numbers on their cups
UNDER_WAY = (press(Person.CHOOSE, CupTurn.SET_ASIDE), *on("119.0"), *off())

EVENTS: dict[QueueState, tuple[object, ...]] = {
    S.LIFTED: (*on("119.0"), off()[0]),
    S.DIRTY: (pan_at("0.3"),),
    S.WEIGHING: (PLACED,),
    S.ODD: on("8.0"),
    S.RECORDED: on("119.0"),
    S.CHOOSING: (press(Person.MORE),),
    S.MISHAP: (press(Person.MISHAP),),
}


def a_round(*, empties: bool) -> RoundState:
    """Forty teams in one sitting; their cups are out, if their empty masses are known."""
    numbers = range(LOW, HIGH + 1)
    teams = [team(name, cup=number) for name, number in zip(NAMES, numbers, strict=True)]
    state = said(opened(), *teams)
    for each in teams if empties else ():
        note = CupNote(team=each.team, turn=CupTurn.EMPTY)
        state = said(state, note, weighing=weighed("112.3"))
    return state


def in_queue(state: QueueState, pass_: Pass = Pass.FILLED) -> CupQueue:
    """The cup table in that state, with something to undo where that can be."""
    if state is S.ALL_DONE:
        return _all_done(pass_)
    pan = memory(PLACED) if state is S.CLEAR else PanMemory()
    empties = pass_ is Pass.FILLED and state is not S.NO_EMPTY
    procedure = table(a_round(empties=empties), pass_, pan)
    if state not in (S.CLEAR, S.NO_EMPTY):
        feed(procedure, CLEAN, *UNDER_WAY)
    events = on("400.0") if state is S.ODD and pass_ is Pass.EMPTY else EVENTS.get(state, ())
    feed(procedure, *events)  # type: ignore[arg-type]  # events of two kinds
    assert procedure.state is state
    return procedure


def _all_done(pass_: Pass) -> CupQueue:
    state = a_round(empties=pass_ is Pass.FILLED)
    for name in NAMES[1:]:
        turn = CupTurn.LATE if pass_ is Pass.FILLED else CupTurn.EMPTY
        mass = None if pass_ is Pass.FILLED else weighed("112.3")
        state = said(state, CupNote(team=name.lower(), turn=turn), weighing=mass)
    procedure = table(state, pass_)
    feed(procedure, CLEAN, *on("119.0"), *off())
    return procedure


def in_protest() -> CupQueue:
    """One cup is weighed once more."""
    procedure = in_queue(S.RECORDED)
    feed(procedure, *off())
    assert procedure.list.last is not None
    team_id = procedure.list.last.team.team
    again = table(procedure.list.round, again=team_id, protest="p")
    feed(again, CLEAN)
    return again


def among_ended() -> CupQueue:
    """All cups are done, many without a mass; another one is to come after all."""
    procedure = in_queue(S.ALL_DONE)
    feed(procedure, press(Person.MORE))
    return procedure


def early() -> CupQueue:
    """A cup was lifted before it was recorded."""
    procedure = in_queue(S.WEIGHING, Pass.EMPTY)
    feed(procedure, *off())
    return procedure
