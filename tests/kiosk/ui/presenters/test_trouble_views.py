"""What is in the way has its own sentence, and a way back that fits."""

from __future__ import annotations

import pytest

from drivers.errors import Reason
from kiosk.procedures.pan_memory import Hindrance
from kiosk.ui.presenters.surroundings import TableFacts
from kiosk.ui.presenters.trouble_views import hindrance_view
from kiosk.ui.presenters.views import TroubleView


def trouble(
    hindrance: Hindrance,
    *,
    lost: Reason | None = None,
    flow: bool = False,
    masses: int = 0,
) -> TroubleView:
    return hindrance_view(
        hindrance, TableFacts(), readings_flow=flow, lost=lost, masses_kept=masses, home=None
    )


def test_each_hindrance_has_its_own_sentence() -> None:
    titles = [trouble(hindrance).title for hindrance in Hindrance]
    assert len(set(titles)) == len(titles)


@pytest.mark.parametrize("reason", [Reason.NOT_ALLOWED, Reason.BUSY])
def test_a_port_that_cannot_be_opened_asks_for_the_coach(reason: Reason) -> None:
    view = trouble(Hindrance.UNPLUGGED, lost=reason)
    assert view.title != trouble(Hindrance.UNPLUGGED).title
    assert view.lines[0] == "Tell the coach."


@pytest.mark.parametrize("reason", [Reason.MISSING, Reason.UNPLUGGED, Reason.CLOSED])
def test_a_port_that_is_gone_asks_for_the_plug(reason: Reason) -> None:
    assert trouble(Hindrance.UNPLUGGED, lost=reason) == trouble(Hindrance.UNPLUGGED)


def test_a_scale_that_is_back_only_wants_an_empty_pan() -> None:
    view = trouble(Hindrance.UNPLUGGED, lost=Reason.UNPLUGGED, flow=True)
    assert view.title == "The scale is back."


def test_masses_of_a_key_in_the_making_are_told_to_be_kept() -> None:
    assert trouble(Hindrance.UNPLUGGED, masses=3).kept_more == "3 masses are kept."
