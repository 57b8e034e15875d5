"""The widget under every drawn part: it paints itself anew when what it follows has changed."""

from __future__ import annotations

from typing import Any, ClassVar
from weakref import WeakSet

from kivy.clock import Clock
from kivy.uix.widget import Widget

from kiosk.ui.theme import theme
from kiosk.ui.widgets.pencil import Pencil


class Drawing(Widget):
    """A widget that ``paint``s with a pencil in look units.

    With a ``sheet_size`` (width, height in units) the art keeps its proportions and fills the
    widget as far as they allow, centred; without one a unit is the theme's and the origin is the
    widget's upper left corner. ``follows`` names the properties that change the picture.
    """

    sheet_size: ClassVar[tuple[float, float] | None] = None
    follows: ClassVar[tuple[str, ...]] = ()

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(**kwargs)
        self._pencil = Pencil(self.canvas.before)  # under whatever stands on it
        # -1: painted before the frame in which the change happened
        self._repaint = Clock.create_trigger(self._paint_now, -1)
        for name in ("pos", "size", *self.follows):
            self.fbind(name, self._repaint)
        _drawings.add(self)
        self._repaint()

    def sheet(self) -> tuple[float, float] | None:
        """Width and height in units that the art fills; None where it follows the widget."""
        return self.sheet_size

    @property
    def wide(self) -> float:
        """Width of the drawing in units."""
        sheet = self.sheet()
        return sheet[0] if sheet else self.width / theme.u

    @property
    def high(self) -> float:
        """Height of the drawing in units."""
        sheet = self.sheet()
        return sheet[1] if sheet else self.height / theme.u

    @property
    def scale(self) -> float:
        """Pixels of one unit of this drawing."""
        sheet = self.sheet()
        return float(min(self.width / sheet[0], self.height / sheet[1]) if sheet else theme.u)

    def type_size(self, role_size: float) -> float:
        """``role_size`` in pixels, in proportion when the drawing is smaller than in the look."""
        return float(role_size * min(1.0, self.scale / theme.u))

    def paint(self, pencil: Pencil) -> None:
        """Describe the whole picture in units from the upper left corner."""
        raise NotImplementedError

    def _paint_now(self, *_: Any) -> None:
        if self.width < 1 or self.height < 1:
            return
        scale = self.scale
        left = self.x + (self.width - self.wide * scale) / 2
        top = self.top - (self.height - self.high * scale) / 2
        self._pencil.begin(left, top, scale)
        self.paint(self._pencil)
        self._pencil.end()


# A drawing that bound itself to the theme would stay in the theme's list after its end, and each
# new one would be compared with all of them.
_drawings: WeakSet[Drawing] = WeakSet()


def _repaint_all(*_: Any) -> None:
    for drawing in list(_drawings):
        drawing._repaint()


theme.fbind("u", _repaint_all)
