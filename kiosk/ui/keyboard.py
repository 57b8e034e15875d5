"""A keyboard that is plugged in: what its keys say on the sheet in front."""

from __future__ import annotations

from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.ui.presenters.views import SheetView
from kiosk.ui.reading_off import ENTER, KEYBOARD
from kiosk.ui.widgets.number_pad import POINT, RUB_OUT

DIGITS_ON = ("code", "guess", "paper")  # sheets with a pad
WORDS_ON = "text"


def said_by_key(code: int, sheet: SheetView) -> PersonEvent | None:
    """What the key with Kivy's `code` says; None where it means nothing on this sheet.

    Letters are none of its business: see `said_by_text`.
    """
    says = KEYBOARD.get(code)
    if says == RUB_OUT and sheet.screen in (*DIGITS_ON, WORDS_ON):
        return PersonEvent(Person.RUB_OUT)
    if sheet.screen in DIGITS_ON and says is not None and says != POINT:
        return PersonEvent(Person.TYPE, says)
    ready = sheet.main is not None and sheet.main.state == "ready"
    if sheet.screen == WORDS_ON and code in ENTER and ready:
        return PersonEvent(Person.ENTER)
    return None


def said_by_text(text: str, sheet: SheetView) -> list[PersonEvent]:
    """What `text` says, as the keyboard wrote it: a capital or an accent arrives in one piece."""
    if sheet.screen != WORDS_ON:
        return []
    return [PersonEvent(Person.TYPE, character) for character in text if character.isprintable()]
