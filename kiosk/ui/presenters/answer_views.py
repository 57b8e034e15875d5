"""Presenters of the answer: what a key says, and how near all pairs came."""

from __future__ import annotations

from kiosk.procedures.procedure import Person
from kiosk.procedures.show_answer import Answer, ScoredGuess, ShowAnswer, ShowState, scored
from kiosk.settings import Rules
from kiosk.texts import plural, say
from kiosk.texts.numbers import number
from kiosk.ui.presenters.cup_views import ON_TARGET_PERCENT, back_button, home_button
from kiosk.ui.presenters.surroundings import TableFacts
from kiosk.ui.presenters.views import (
    AnswerMark,
    AnswerView,
    Choice,
    ChoicesView,
    MessageView,
    SheetView,
    button,
)


def answer_view(procedure: ShowAnswer, facts: TableFacts) -> SheetView:
    """The view of each state."""
    chosen = procedure.chosen
    if procedure.state is ShowState.SHOWN and chosen is not None:
        return _shown(chosen, facts.settings.rules)
    if procedure.state is ShowState.SURE and chosen is not None:
        letter = chosen.container.letter
        return MessageView(
            title=say(f"answer.sure.{chosen.container.kind}", letter=letter),
            lines=(
                _guessed(chosen),
                say("answer.sure.body"),
            ),
            main=button(say("answer.sure.yes"), Person.YES, sign="arrow"),
            second=button(say("answer.sure.no"), Person.NO),
            home=home_button(),
        )
    retiring = procedure.state is ShowState.RETIRE
    if procedure.state is ShowState.RETIRE_SURE and chosen is not None:
        return _retire_sure(chosen)
    return ChoicesView(
        screen="choices",
        title=say("answer.retire.title" if retiring else "answer.choose.title"),
        choices=tuple(
            Choice(
                text=say(f"guess.{answer.container.kind}.name", letter=letter),
                value=letter,
                note=_note(answer),
            )
            for letter, answer in procedure.answers.items()
        ),
        note=say("answer.retire.note") if retiring else "",
        second=None
        if retiring or not procedure.answers
        else button(say("answer.retire.open"), Person.UNDO),
        home=back_button(),
    )


def _retire_sure(chosen: Answer) -> MessageView:
    return MessageView(
        title=say(f"answer.retire.{chosen.container.kind}", letter=chosen.container.letter),
        lines=(say("answer.retire.what"), say("answer.retire.kept")),
        main=button(say("answer.retire.no"), Person.NO, sign="arrow"),
        second=button(say("answer.retire.yes"), Person.YES),
        home=home_button(),
    )


def _note(answer: Answer) -> str:
    return say("answer.shown_before") if answer.container.shown else _guessed(answer)


def _guessed(answer: Answer) -> str:
    guessed = answer.container.guesses
    return plural("answer.guessed", guessed) if guessed else say("answer.nobody")


def _shown(answer: Answer, rules: Rules) -> AnswerView:
    marks = [_mark(each, answer) for each in scored(answer, rules)]
    sides = [mark.side for mark in marks]
    actual = number(answer.actual, 0)
    return AnswerView(
        title=say(f"answer.shown.{answer.container.kind}", letter=answer.container.letter),
        actual=actual,
        corner=plural("answer.guessed", len(marks)) if marks else say("answer.nobody"),
        under=tuple(mark for mark in marks if mark.share <= 1),
        over=tuple(mark for mark in marks if mark.share > 1),
        band=float((answer.high - answer.low) / 2 / answer.actual),
        left="0",
        peak=actual,
        right=say("answer.double", double=number(2 * answer.actual, 0)),
        sums=tuple(
            say(f"answer.sum.{name}", count=sides.count(side))
            for name, side in (("under", "under"), ("on", "on target"), ("over", "over"))
        ),
        home=home_button(),
        main=button(say("answer.another"), Person.MORE, sign="arrow"),
    )


def _mark(each: ScoredGuess, answer: Answer) -> AnswerMark:
    near = abs(each.score.error_percent) <= ON_TARGET_PERCENT or each.inside
    return AnswerMark(
        name=each.team,
        points=number(each.score.points, 0),
        share=float(each.guess / answer.actual),
        side="on target" if near else "over" if each.guess > answer.actual else "under",
    )
