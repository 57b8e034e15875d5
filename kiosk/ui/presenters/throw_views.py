"""The presenter of throwing a try away."""

from __future__ import annotations

from kiosk.procedures.procedure import Person
from kiosk.procedures.throw_away import ThrowAway, ThrowState
from kiosk.texts import say
from kiosk.ui.presenters.cup_views import back_button, home_button
from kiosk.ui.presenters.surroundings import cup_marks
from kiosk.ui.presenters.views import HandInView, QuestionView, SheetView, button


def throw_view(procedure: ThrowAway) -> SheetView:
    """The cups that are out, or the question about the chosen one."""
    if procedure.state is ThrowState.SURE:
        return QuestionView(
            title=say("throw.sure.title", number=procedure.number),
            body=say("throw.sure.body"),
            art="cup",
            number=procedure.number,
            main=button(say("throw.sure.no"), Person.NO, sign="arrow"),
            second=button(say("throw.sure.yes"), Person.YES),
            home=home_button(),
        )
    return HandInView(
        title=say("throw.choose.title"), cups=cup_marks(procedure.cups.values()), home=back_button()
    )
