"""Presenters of guessing: which jar, the number, written down. No key is known here."""

from __future__ import annotations

from kiosk.procedures.guess import Guess, GuessState
from kiosk.procedures.procedure import Person
from kiosk.texts import say
from kiosk.texts.numbers import number
from kiosk.ui.presenters.cup_views import back_button, home_button
from kiosk.ui.presenters.surroundings import team_name
from kiosk.ui.presenters.views import (
    ButtonView,
    Choice,
    ChoicesView,
    GuessView,
    MessageView,
    SheetView,
    button,
)

STEPS = 2


def guess_view(procedure: Guess) -> SheetView:
    """The view of each state."""
    if procedure.state is GuessState.TYPE:
        return _typing(procedure)
    if procedure.state is GuessState.WRITTEN:
        return _written(procedure)
    return ChoicesView(
        screen="choices",
        title=say(f"guess.{procedure.kind}.{'choose' if procedure.containers else 'none'}"),
        corner=team_name(procedure.team),
        choices=tuple(
            Choice(
                text=say(f"guess.{procedure.kind}.name", letter=letter),
                value=letter,
                note=say("guess.done") if letter in procedure.done else "",
            )
            for letter in procedure.containers
        ),
        note=say(f"guess.{procedure.kind}.{'note' if procedure.containers else 'in_a_round'}"),
        home=back_button(),
    )


def _typing(procedure: Guess) -> GuessView:
    guess = procedure.guess
    ready = procedure.offers(Person.ENTER)
    limit = number(procedure.limit)
    return GuessView(
        title=say(f"guess.{procedure.kind}.title", letter=procedure.values()["letter"]),
        step=1,
        steps=STEPS,
        step_text=say("guess.step.1"),
        kind=procedure.kind,
        letter=str(procedure.values()["letter"]),
        label=say("guess.ours"),
        typed="" if guess is None else number(guess),
        unit=say(f"guess.{procedure.kind}.unit"),
        hint=say(f"guess.{procedure.kind}.too_many", limit=limit) if procedure.too_many else "",
        main=button(say("guess.enter"), Person.ENTER, sign="tick")
        if ready
        else button(say("guess.enter"), sign="off", state="off"),
        home=home_button(),
        beside_home=_another(procedure),
    )


def _written(procedure: Guess) -> MessageView:
    guess = procedure.guess
    assert guess is not None
    return MessageView(
        title=say("guess.written.title"),
        lines=(
            say(
                f"guess.{procedure.kind}.what",
                letter=procedure.values()["letter"],
                guess=number(guess),
            ),
            say("guess.written.when"),
        ),
        step=2,
        steps=STEPS,
        step_text=say("guess.step.2"),
        main=button(say("guess.next_pair"), Person.GO_ON, sign="arrow"),
        second=_another(procedure),
        home=home_button(),
    )


def _another(procedure: Guess) -> ButtonView:
    return button(say(f"guess.{procedure.kind}.another"), Person.MORE)
