"""The tables of all procedures, walked without running them."""

from __future__ import annotations

from enum import Enum

import pytest

from kiosk.procedures.balance_check import BalanceCheck, CheckState
from kiosk.procedures.check_jars import CheckJars, JarState
from kiosk.procedures.count_samples import CountSamples, SamplesState
from kiosk.procedures.cup_queue import CupQueue
from kiosk.procedures.fill_container import ContainerState, FillContainer
from kiosk.procedures.guess import Guess, GuessState
from kiosk.procedures.hand_in import HandIn, HandInState
from kiosk.procedures.measure import Measure, MeasureState
from kiosk.procedures.measure_water import MeasureWater, WaterState
from kiosk.procedures.procedure import Person, Procedure
from kiosk.procedures.queue_steps import QueueState
from kiosk.procedures.show_answer import ShowAnswer, ShowState
from kiosk.procedures.throw_away import ThrowAway, ThrowState
from kiosk.procedures.weigh_empty import WeighEmpty, WeighEmptyState
from kiosk.texts.catalogue import ENGLISH

# procedure, its states, the states in which it can begin
PROCEDURES = [
    (WeighEmpty, WeighEmptyState, {WeighEmptyState.PUT_ON, WeighEmptyState.CLEAR}),
    (HandIn, HandInState, {HandInState.CHOOSE, HandInState.CLEAR, HandInState.PUT_ON}),
    (CountSamples, SamplesState, {SamplesState.MATERIAL, SamplesState.RESUME}),
    (ThrowAway, ThrowState, {ThrowState.CHOOSE}),
    (FillContainer, ContainerState, {ContainerState.BACK_IN}),
    (Guess, GuessState, {GuessState.CHOOSE}),
    (ShowAnswer, ShowState, {ShowState.CHOOSE}),
    (Measure, MeasureState, {MeasureState.SHAPE, MeasureState.RESUME}),
    (MeasureWater, WaterState, {WaterState.CAUTION, WaterState.RESUME}),
    (CheckJars, JarState, {JarState.CHOOSE, JarState.CLEAR, JarState.PUT_ON}),
    (BalanceCheck, CheckState, {CheckState.KIT}),
    (CupQueue, QueueState, {QueueState.PUT_ON, QueueState.CLEAR}),
]
WAYS_OUT = {Person.HOME, Person.LEAVE}


def _reached(procedure: type[Procedure], starts: set[Enum]) -> set[Enum]:
    reached, new = set(starts), set(starts)
    while new:
        new = {
            target
            for state in new
            for rule in procedure.TABLE.get(state, {}).values()
            for target in rule.to
        } - reached
        reached |= new
    return reached


@pytest.mark.parametrize(("procedure", "states", "starts"), PROCEDURES)
def test_every_state_is_reachable(
    procedure: type[Procedure], states: type[Enum], starts: set[Enum]
) -> None:
    assert _reached(procedure, starts) == set(states)


@pytest.mark.parametrize(("procedure", "states", "starts"), PROCEDURES)
def test_every_state_leads_to_an_end(
    procedure: type[Procedure], states: type[Enum], starts: set[Enum]
) -> None:
    for state in states:
        assert _reached(procedure, {state}) & procedure.FINAL, state


@pytest.mark.parametrize(("procedure", "states", "starts"), PROCEDURES)
def test_every_state_has_an_instruction_that_the_catalogue_knows(
    procedure: type[Procedure], states: type[Enum], starts: set[Enum]
) -> None:
    for state in set(states) - procedure.FINAL:
        ask = procedure.ASKS[state]
        assert ask.title in ENGLISH
        assert ask.body is None or ask.body in ENGLISH


@pytest.mark.parametrize(("procedure", "states", "starts"), PROCEDURES)
def test_a_person_can_leave_every_state(
    procedure: type[Procedure], states: type[Enum], starts: set[Enum]
) -> None:
    for state in set(states) - procedure.FINAL:
        assert WAYS_OUT & procedure.TABLE[state].keys(), state


@pytest.mark.parametrize(("procedure", "states", "starts"), PROCEDURES)
def test_an_end_has_no_way_on(
    procedure: type[Procedure], states: type[Enum], starts: set[Enum]
) -> None:
    assert not procedure.FINAL & procedure.TABLE.keys()
