"""Lays a scene out in a window and looks for what does not fit: one sentence for each fault."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations
from typing import Any, NamedTuple

from kivy.uix.label import Label
from kivy.uix.widget import Widget

from kiosk.ui.presenters.bench import BenchView
from kiosk.ui.presenters.scene import Scene
from kiosk.ui.screens.frame import Frame
from kiosk.ui.screens.parts import SheetContent
from kiosk.ui.theme import theme
from kiosk.ui.widgets.fit_label import FitLabel
from kiosk.ui.widgets.pencil import text_width
from kiosk.ui.widgets.tappable import Tappable
from tests.helpers.offscreen import open_window, unseen_frames

SLACK = 1.5  # pixels of rounding
OVERLAP = 5.0  # look units that two targets may share


class Box(NamedTuple):
    """A box in the window's pixels."""

    left: float
    bottom: float
    right: float
    top: float

    def inside(self, other: Box) -> bool:
        return (
            self.left >= other.left - SLACK
            and self.bottom >= other.bottom - SLACK
            and self.right <= other.right + SLACK
            and self.top <= other.top + SLACK
        )

    def shared(self, other: Box) -> tuple[float, float]:
        """Width and height of what both cover; negative where they are apart."""
        wide = min(self.right, other.right) - max(self.left, other.left)
        high = min(self.top, other.top) - max(self.bottom, other.bottom)
        return wide, high


class Surveyor:
    """One window of `size` with one frame, in which scene after scene is laid out."""

    def __init__(self, size: tuple[int, int], bench: BenchView | None = None) -> None:
        theme.less_motion = True
        self.window = open_window(*size)
        self._edge = Box(0, 0, *size)
        self.frame = Frame(desk=None, bench=None if bench is None else object())
        self.window.add_widget(self.frame)
        if bench is not None:
            self.frame.bench_view = bench

    def lay_out(self, scene: Scene, *, things_out: bool = False) -> None:
        """Show the scene, and let it settle."""
        self.frame.strip_view, self.frame.pan_view = scene.strip, scene.pan
        self.frame.pad_view = scene.pad
        self.frame.things_out = things_out
        self.frame.show(scene.sheet)
        unseen_frames(3)

    def close(self) -> None:
        self.window.remove_widget(self.frame)

    # What does not fit -----------------------------------------------------------------------

    def faults_of(self, scene: Scene, *, things_out: bool = False) -> list[str]:
        """All that is wrong with a scene once it is laid out."""
        self.lay_out(scene, things_out=things_out)
        return [*self.texts_too_large(), *self.out_of_the_sheet(), *self.out_of_the_window(),
                *self.overlapping_targets(), *self.small_targets()]  # fmt: skip

    def texts_too_large(self) -> Iterator[str]:
        for label in self.labels():
            yield from _too_large(label)

    def out_of_the_sheet(self) -> Iterator[str]:
        """Parts that stick out of the sheet on which they lie."""
        for sheet in self._seen(SheetContent):
            for part in sheet.walk(restrict=True):
                box = _box(part)
                if not part.children and self._visible(part) and not box.inside(_box(sheet)):
                    yield f"{_name(part)} at {_said(box)} leaves its sheet {_said(_box(sheet))}"

    def out_of_the_window(self) -> Iterator[str]:
        for label in self.labels():
            if not (box := _box(label)).inside(self._edge):
                yield f"{_name(label)} at {_said(box)} leaves the window"
        for target in self.targets():
            if not (box := _target(target)).inside(self._edge):
                yield f"the target {_name(target)} at {_said(box)} leaves the window"

    def overlapping_targets(self) -> Iterator[str]:
        for one, other in combinations(self.targets(), 2):
            wide, high = _target(one).shared(_target(other))
            if min(wide, high) > OVERLAP * max(1.0, theme.u):
                yield f"{_name(one)} and {_name(other)} share {wide:.0f} x {high:.0f} pixels"

    def small_targets(self) -> Iterator[str]:
        """Things that look much smaller than what takes their touches, or are not to be seen."""
        for target in self.targets():
            if min(target.size) < theme.tap * 0.7:
                wide, high = target.size
                yield f"{_name(target)} is drawn only {wide:.0f} x {high:.0f} pixels"

    def labels(self) -> list[Label]:
        """The texts that are to be seen."""
        return [each for each in self._seen(Label) if each.text.strip()]

    def targets(self) -> list[Tappable]:
        """What can be tapped."""
        return [each for each in self._seen(Tappable) if each.tappable and not each.disabled]

    def _seen(self, kind: type[Widget]) -> list[Any]:
        return [each for each in self.frame.walk(restrict=True)
                if isinstance(each, kind) and self._visible(each)]  # fmt: skip

    def _visible(self, widget: Widget) -> bool:
        while widget is not self.frame:
            if not widget.opacity:
                return False
            widget = widget.parent
        return True


def _too_large(label: Label) -> Iterator[str]:
    wide, high = label.texture_size
    if wide > label.width + SLACK or high > label.height + SLACK:
        yield (
            f"{_name(label)} needs {wide:.0f} x {high:.0f} pixels, "
            f"has {label.width:.0f} x {label.height:.0f}"
        )
    if isinstance(label, FitLabel) and label.text_size[0]:
        room = label.width - label.padding[0] - label.padding[2]
        bold = label.bold or label.font_name == theme.bold
        words = label.text.replace("[b]", "").replace("[/b]", "").split()
        words = [word for word in words if "/" not in word]  # a path may go on in the next line
        widest = max(text_width(word, round(label.font_size), bold) for word in words)
        if widest > room + SLACK:
            yield f"{_name(label)} breaks a word: {widest:.0f} pixels in {room:.0f}"


def _name(widget: Widget) -> str:
    for attribute in ("text", "number", "letter", "way"):
        value = getattr(widget, attribute, "")
        if value:
            return f"{type(widget).__name__} {value!r}"
    return type(widget).__name__


def _said(box: Box) -> str:
    return ", ".join(f"{side:.0f}" for side in box)


def _box(widget: Widget) -> Box:
    return Box(*widget.to_window(widget.x, widget.y), *widget.to_window(widget.right, widget.top))


def _target(widget: Tappable) -> Box:
    left, bottom, wide, high = widget.target()
    parent = widget.parent
    return Box(*parent.to_window(left, bottom), *parent.to_window(left + wide, bottom + high))
