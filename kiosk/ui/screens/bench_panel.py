"""The things beside the simulated pan: a tap puts one on, another tap takes it off."""

from __future__ import annotations

from typing import Any

from kivy.properties import ObjectProperty

from kiosk.ui import kv_files
from kiosk.ui.presenters.bench import BenchView, TileView
from kiosk.ui.widgets.bench_tile import BenchTile
from kiosk.ui.widgets.sheet import BenchPanel

kv_files.load(__file__)


class ThingsPanel(BenchPanel):
    """Shows a BenchView; `bench.tap` is told which tile was tapped."""

    view = ObjectProperty(BenchView(), rebind=True)
    bench = ObjectProperty(None, allownone=True)

    def on_view(self, _instance: Any, view: BenchView) -> None:
        """Show the tiles of the view."""
        if "tiles" not in self.ids:
            return
        tiles = list(reversed(self.ids.tiles.children))
        if [tile.key for tile in tiles] != [tile.key for tile in view.tiles]:
            self.ids.tiles.clear_widgets()
            tiles = [self._tile(tile) for tile in view.tiles]
        for tile, shown in zip(tiles, view.tiles, strict=True):
            tile.text, tile.art, tile.placed = shown.text, shown.art, shown.on_pan
            tile.disabled = shown.off

    def on_kv_post(self, *_: Any) -> None:
        """Show what the first view says."""
        self.on_view(self, self.view)

    def _tile(self, shown: TileView) -> BenchTile:
        tile = BenchTile(text=shown.text, art=shown.art, placed=shown.on_pan)
        tile.key = shown.key
        tile.bind(on_release=lambda *_: self.bench.tap(shown.key))
        self.ids.tiles.add_widget(tile)
        return tile
