"""Rules beside a class are applied once, however often they are asked for."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from kivy.uix.widget import Widget

from kiosk.ui import kv_files


class TwiceAsked(Widget):
    """Gets one child from its rule."""


def test_a_second_load_adds_no_second_child(tmp_path: Path, window: Any) -> None:
    module = tmp_path / "twice_asked.py"
    module.with_suffix(".kv").write_text("<TwiceAsked>:\n    Widget:\n")
    kv_files.load(str(module))
    kv_files.load(str(module))
    assert len(TwiceAsked().children) == 1
