"""The cup table of a round, walked by touch on the simulated balance."""

from __future__ import annotations

from collections.abc import Sequence

from kiosk.procedures.cup_queue import CupQueue
from kiosk.procedures.queue_steps import QueueState
from kiosk.rounds.contents import Plan
from kiosk.rounds.cups import cup_of, net_mass
from tests.helpers.journey import Journey
from tests.helpers.round_notes import team

ROUND = "Autumn round"


def begin_round(journey: Journey, teams: Sequence[str]) -> None:
    """A round of these teams, with cups numbered from 1."""
    room = journey.desk.room
    room.begin(Plan(name=ROUND))
    room.say(*(team(name, cup=number) for number, name in enumerate(teams, 1)))
    journey.wait(0.1)  # until it is kept
    room.close()


def go_to(journey: Journey, pass_: str) -> None:
    """From home to the cup table."""
    for name in ("Run a round", ROUND, "Cups", pass_):
        journey.tap(name)
    if journey.desk.procedure is None:
        journey.tap("Weigh filled cups")  # although the clock was not started
    until_state(journey, QueueState.PUT_ON)


def queue_of(journey: Journey) -> CupQueue:
    """What runs at the table."""
    procedure = journey.desk.procedure
    assert isinstance(procedure, CupQueue)
    return procedure


def until_state(journey: Journey, state: QueueState) -> None:
    """Wait for that state of the table."""
    journey.until(lambda: queue_of(journey).state is state, str(state))


def weigh(journey: Journey, tile: str) -> None:
    """Put that cup of the bench on, wait until it is recorded, take it off again."""
    journey.tap_thing(tile)
    until_state(journey, QueueState.RECORDED)
    lift(journey)


def lift(journey: Journey) -> None:
    """Take what lies there off, and wait until the pan was seen empty."""
    journey.tap_thing("clear pan")
    resting = (QueueState.PUT_ON, QueueState.ALL_DONE)
    journey.until(lambda: queue_of(journey).state in resting, "the empty pan")


def tap_on_sheet(journey: Journey, *names: str) -> None:
    """Put the bench away, so that the whole sheet is to be seen, and tap these."""
    for name in (*(["Put away"] if journey.kiosk.controls.things_out else []), *names):
        journey.tap(name)


def stands(journey: Journey) -> dict[str, str]:
    """How the cups stand by now, by the labels of their teams."""
    state = journey.desk.room.state
    return {each.label: str(cup_of(state, each).stand) for each in state.teams}


def nets(journey: Journey) -> dict[str, float]:
    """What is in the cups that are in, in grams."""
    state = journey.desk.room.state
    found = {each.label: net_mass(state, each) for each in state.teams}
    return {label: float(net) for label, net in found.items() if net is not None}
