"""Rows to tap, over the whole width, in one or two columns."""

from __future__ import annotations

from typing import Any

from kivy.clock import Clock
from kivy.properties import ObjectProperty

from kiosk.ui import kv_files
from kiosk.ui.presenters.page_views import ROWS_A_PAGE, RowsView
from kiosk.ui.presenters.views import ButtonView
from kiosk.ui.screens.parts import SheetContent
from kiosk.ui.theme import theme
from kiosk.ui.widgets.action_button import SecondButton
from kiosk.ui.widgets.row_tile import RowTile

kv_files.load(__file__)

COLUMN_GAP = 12  # units
LETTER_WIDTH = 0.47  # of a letter's height, on average and a little more
FEWEST = 3  # rows that share the height


class RowsButton(SecondButton):
    """A button below the rows that may be missing."""

    view = ObjectProperty(None, allownone=True)


class RowsSheet(SheetContent):
    """Shows a RowsView; tiles are made once and follow."""

    view = ObjectProperty(RowsView(), rebind=True)

    def __init__(self, **kwargs: Any) -> None:
        self._tiles: list[RowTile] = []
        self._arrange = Clock.create_trigger(self._lay_out, -1)  # once the place is where it stays
        super().__init__(**kwargs)

    def on_kv_post(self, *_: Any) -> None:
        """Show what the first view says, and follow the place that the rows have."""
        self.ids.place.bind(pos=self._arrange, size=self._arrange)
        self.on_view(self, self.view)

    def body_height(self, width: float, letter: float, unit: float, body: str) -> float:
        """Room for the line below the title, for two of them where it is long."""
        if not body:
            return 4 * unit
        lines = 1 if len(body) * LETTER_WIDTH * letter < width else 2
        return max(28 * unit, 1.2 * lines * letter)

    def on_view(self, _instance: Any, view: RowsView) -> None:
        """Let the tiles follow the rows."""
        if "place" not in self.ids:
            return
        while len(self._tiles) < len(view.rows):
            self._tiles.append(self._tile(len(self._tiles)))
        for place, tile in enumerate(self._tiles):
            shown = place < len(view.rows)
            if shown != (tile.parent is not None):
                self.add_widget(tile) if shown else self.remove_widget(tile)
            if shown:
                row = view.rows[place]
                tile.text, tile.note, tile.value = row.text, row.note, row.value
                tile.sign, tile.look = row.sign, row.look
                tile.tappable = row.says is not None
        self._arrange()

    def _tile(self, place: int) -> RowTile:
        tile = RowTile(size_hint=(None, None))
        tile.bind(on_release=lambda *_: self._tapped(place))
        return tile

    def _tapped(self, place: int) -> None:
        if place < len(self.view.rows) and self.view.rows[place].says is not None:
            self.desk.press(self.view.rows[place].says)

    def press(self, button: ButtonView | None) -> None:
        """One of the buttons below the rows."""
        if button is not None and button.says is not None:
            self.desk.press(button.says)

    def _lay_out(self, *_: Any) -> None:
        place, columns = self.ids.place, max(1, self.view.columns)
        gap = COLUMN_GAP * theme.u
        wide = (place.width - (columns - 1) * gap) / columns
        lines = -(-len(self.view.rows) // columns)
        fewest = ROWS_A_PAGE if self.view.turn else FEWEST  # all pages of many look the same
        high = place.height / max(fewest, lines)
        for number, tile in enumerate(self._tiles):
            row, column = divmod(number, columns)
            tile.roomy = columns == 1
            tile.size = wide, high
            tile.pos = place.x + column * (wide + gap), place.top - (row + 1) * high
