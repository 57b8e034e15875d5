"""Presenters of checking closed jars: which one, and whether it is still the same."""

from __future__ import annotations

from kiosk.estimating.same_jar import JarChange
from kiosk.evidence import Weighing
from kiosk.procedures.check_jars import CheckJars, JarState
from kiosk.procedures.procedure import Person
from kiosk.texts import plural, say
from kiosk.texts.numbers import grams, number, together
from kiosk.ui.presenters.cup_views import back_button, home_button, picture_of
from kiosk.ui.presenters.surroundings import TableFacts
from kiosk.ui.presenters.views import (
    ButtonView,
    Choice,
    ChoicesView,
    MessageView,
    PutOnView,
    QuestionView,
    SheetView,
    button,
)

MOST_WITH_NOTES = 15  # cards of two lines; more of them are too low for the second one


def jars_view(procedure: CheckJars, facts: TableFacts) -> SheetView:
    """The view of each state."""
    match procedure.state:
        case JarState.CHOOSE:
            return _choose(procedure)
        case JarState.FIRST_TIME:
            return _first_time(procedure)
        case JarState.KEPT:
            return _kept(procedure)
        case JarState.SAME:
            return _same(procedure)
        case JarState.CHANGED:
            return _changed(procedure)
    return _put_on(procedure, facts)


def _choose(procedure: CheckJars) -> ChoicesView:
    return ChoicesView(
        screen="choices",
        title=say("jars.choose.title"),
        note=say("jars.note") if procedure.jars else say("jars.none"),
        choices=tuple(_card(procedure, letter) for letter in procedure.jars),
        home=back_button(),
    )


def _card(procedure: CheckJars, letter: str) -> Choice:
    found = _found(procedure, letter)
    if found and len(procedure.jars) > MOST_WITH_NOTES:
        return Choice(text=say("jars.card", letter=letter, found=found), value=letter)
    return Choice(text=say("guess.jar.name", letter=letter), value=letter, note=found)


def _found(procedure: CheckJars, letter: str) -> str:
    if letter not in procedure.changes:
        return ""
    change = procedure.changes[letter]
    if change is None:
        return say("jars.kept")
    if change.same:
        return say("jars.same")
    way = "jars.lighter" if change.grams < 0 else "jars.heavier"
    return say(way, mass=grams(abs(change.grams)))


def _put_on(procedure: CheckJars, facts: TableFacts) -> PutOnView:
    ask, letter = procedure.ask, procedure.letter
    down = procedure.state is not JarState.CLEAR
    ring = down and not facts.typed
    then = "cup.put_on.typed_then" if facts.typed else "cup.put_on.ring_then"
    return PutOnView(
        title=say(ask.title, letter=letter),
        body=say(ask.body or "", letter=letter),
        art=picture_of(ask),
        arrows="down" if down else "up",
        sign="ring" if ring else "",
        sign_text=say("cup.put_on.ring") if ring else "",
        side_text=say(then) if down else "",
        home=home_button()
        if procedure.sealing
        else button(say("button.back"), Person.NO, sign="back"),
    )


def _first_time(procedure: CheckJars) -> QuestionView:
    letter = procedure.letter
    return QuestionView(
        title=say("jars.first.title", letter=letter),
        body=say("jars.first.body"),
        art="jar",
        main=button(say("jars.first.yes", letter=letter), Person.YES, sign="tick"),
        second=button(say("jars.first.no"), Person.NO),
        home=home_button(),
    )


def _kept(procedure: CheckJars) -> MessageView:
    letter = procedure.letter or ""
    return MessageView(
        title=say("jars.kept.title", letter=letter),
        body=say("jars.kept.body", mass=_mass(procedure.now)),
        lines=(say("jars.kept.later"),),
        main=_next(procedure),
        home=home_button(),
    )


def _same(procedure: CheckJars) -> MessageView:
    change = _change(procedure)
    return MessageView(
        title=say("jars.same.title", letter=procedure.letter),
        body=say("jars.same.body", now=_mass(procedure.now), before=_mass(procedure.jar.closed)),
        lines=(plural("jars.unseen", change.unseen),),
        main=_next(procedure),
        home=home_button(),
    )


def _changed(procedure: CheckJars) -> MessageView:
    change = _change(procedure)
    lighter = change.grams < 0
    mass = together(grams(abs(change.grams)))
    twin = procedure.twin()
    open_before = procedure.jar.closed is None
    lines = (
        plural("jars.pieces", change.pieces, low=number(change.fewest), high=number(change.most)),
        say("jars.open_lighter") if open_before else "",
        say("jars.twin", letter=twin) if twin else say("jars.lost" if lighter else "jars.more"),
    )
    return MessageView(
        title=say(
            "jars.lighter.title" if lighter else "jars.heavier.title",
            letter=procedure.letter,
            mass=mass,
        ),
        lines=tuple(line for line in lines if line),
        main=_next(procedure),
        second=button(say("jars.again"), Person.UNDO),
        home=home_button(),
    )


def _next(procedure: CheckJars) -> ButtonView:
    if procedure.sealing:
        return button(say("jars.done"), Person.MORE, sign="tick")
    letter = procedure.following
    words = say("jars.next", letter=letter) if letter else say("jars.all")
    return button(words, Person.MORE, sign="arrow")


def _change(procedure: CheckJars) -> JarChange:
    change = procedure.changes[procedure.jar.letter]
    assert change is not None
    return change


def _mass(weighing: Weighing | None) -> str:
    assert weighing is not None
    return together(grams(weighing.grams, weighing.readability))
