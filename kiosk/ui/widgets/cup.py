"""Cups with numbers, whatever they stand in: a picture, a key, a row, a table."""

from kiosk.ui.widgets.cup_key import CupDrawing, CupKey, MoreKey
from kiosk.ui.widgets.cup_row import CupRow
from kiosk.ui.widgets.cup_table import CupTable

__all__ = ["CupDrawing", "CupKey", "CupRow", "CupTable", "MoreKey"]
