"""Draws the parts of the kiosk, to look at: python -m tests.helpers.gallery FOLDER."""

from __future__ import annotations

import argparse
from pathlib import Path

from tests.helpers.offscreen import frames, open_window, prepare_once, save_picture

SIZES = ((800, 480), (1024, 600), (1280, 800))


def draw(folder: Path, wanted: list[str], sizes: list[tuple[int, int]]) -> None:
    """Draw the wanted pictures, or all, in each size into ``folder``."""
    # Kivy is set up by now; not before.
    from kiosk.ui.theme import theme
    from tests.helpers import gallery_cups, gallery_keys, gallery_parts
    from tests.helpers.gallery_table import Table

    scenes = gallery_cups.SCENES | gallery_keys.SCENES | gallery_parts.SCENES
    theme.less_motion = True
    for width, height in sizes:
        window = open_window(width, height)
        for name in wanted or scenes:
            table = Table(width, height)
            scenes[name](table)
            window.add_widget(table.root)
            frames(4)
            save_picture(window, str(folder / f"{name}-{width}.png"))
            window.remove_widget(table.root)


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("folder", type=Path)
    parser.add_argument("--scene", action="append", default=[])
    parser.add_argument("--width", action="append", type=int, default=[])
    wanted = parser.parse_args()
    wanted.folder.mkdir(parents=True, exist_ok=True)
    prepare_once()
    sizes = [size for size in SIZES if not wanted.width or size[0] in wanted.width]
    draw(wanted.folder, wanted.scene, sizes)


if __name__ == "__main__":
    main()
