"""The day list and the papers of a round as scenes, with their longest rows."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.texts import plural, say
from kiosk.ui.pages.page import back_button
from kiosk.ui.presenters.page_views import RowsView, RowView
from kiosk.ui.presenters.scene import Scene
from kiosk.ui.presenters.views import QuestionView, button
from tests.helpers.page_scenes import LONG, shown

TAP = PersonEvent(Person.CHOOSE, "")
FOLDER = "D:/Larch Hill/Documents/Gramstand"
SHORT = "Autumn round answer sheets.pdf"
FILE = f"{LONG} answer sheets (simulated) (12).pdf"
REFUSED = say("paper.printer.refused", name=SHORT, why="no paper", folder=FOLDER)
FULL = say("paper.save.full", where=f"{FOLDER}/{SHORT}")

DAY = RowsView(
    title=say("paper.day.head"),
    body=say("day.how"),
    corner=say("day.done", done=11, of=22),
    rows=(
        RowView(text=say("paper.day.small_parts"), sign="to come", says=TAP),
        RowView(text=say("paper.day.awake"), sign="fine", look="done", says=TAP),
        RowView(
            text=say("paper.day.checked"),
            note=plural("check.last.days", 29, verdict=say("check.cannot_tell")),
            sign="to come",
            says=TAP,
        ),
        RowView(text="Jar K", note=say("day.jar.other"), sign="not fine", says=TAP),
        RowView(
            text=say("paper.allergen.holds", material="chocolate drops", allergens="milk, soy"),
            note=say("paper.day.allergens").rstrip(":"),
            sign="fine",
            look="done",
            says=TAP,
        ),
    ),
    home=back_button(),
    turn=button(say("rows.turn", page=1, pages=5), Person.MORE),
)
PAPERS = replace(
    DAY,
    title=say("papers.title"),
    body=say("papers.saved_in", folder=FOLDER),
    corner="",
    rows=(
        RowView(text=say("papers.day"), sign="not fine", says=TAP),
        RowView(text=say("papers.card"), note=say("papers.page"), says=TAP),
        RowView(
            text=say("papers.sheets", sitting=12), note=FILE,
            sign="fine", says=TAP,
        ),
        RowView(
            text=say("papers.sheets", sitting=13), note=say("papers.no_keys"),
            sign="cannot tell", says=TAP,
        ),
        RowView(text=say("papers.list", sitting=12), says=TAP),
    ),
    main=button(say("papers.send"), Person.PRINT, sign="printer"),
)  # fmt: skip


def asked(what: str, words: str) -> QuestionView:
    """What is asked about one that was refused."""
    return QuestionView(
        title=say(f"papers.refused.{what}"),
        body=words,
        main=button(say("papers.again"), Person.YES, sign="tick"),
        second=button(say("papers.leave"), Person.NO),
        home=back_button(),
    )


def scenes() -> dict[str, Callable[[], Scene]]:
    """By name, made when they are wanted."""
    return {
        "day list": lambda: shown(DAY),
        "papers": lambda: shown(PAPERS),
        "papers, not saved": lambda: shown(asked("save", FULL)),
        "papers, not printed": lambda: shown(asked("print", REFUSED)),
    }
