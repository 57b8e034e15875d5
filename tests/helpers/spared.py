"""What a walk need not do while nobody looks: build the same sheets again, paint them, wait."""

from __future__ import annotations

import pytest

from drivers.transports import serial_port
from kiosk.ui.screens.frame import Frame
from kiosk.ui.screens.parts import SheetContent
from kiosk.ui.widgets.drawing import Drawing

_sheets: dict[str, SheetContent] = {}
_build = Frame._sheet
_paint = Drawing._paint_now


def spare(monkeypatch: pytest.MonkeyPatch) -> None:
    """Spare it until the test ends."""
    monkeypatch.setattr(Frame, "_sheet", _passed_on)
    monkeypatch.setattr(Drawing, "_paint_now", _paint_now)
    # A simulated port has nothing stale to be waited for in real time.
    monkeypatch.setattr(serial_port, "_QUIET", 0.001)


def paint(frame: Frame) -> None:
    """Paint all that is in the frame now."""
    for widget in frame.walk(restrict=True):
        if isinstance(widget, Drawing):
            _paint(widget)


def _passed_on(frame: Frame, screen: str) -> SheetContent:
    """A sheet goes from kiosk to kiosk, as it stays in one kiosk all day."""
    sheet = _sheets.get(screen)
    if sheet is None:
        sheet = _sheets[screen] = _build(frame, screen)
    elif sheet.desk is not frame.desk:
        if sheet.parent is not None:
            sheet.parent.remove_widget(sheet)
        sheet.desk = frame.desk
    return sheet


def _paint_now(_drawing: Drawing, *_: object) -> None:
    """Nobody looks. Named like what it stands for, since Kivy's clock finds it by its name."""
