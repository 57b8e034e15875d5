"""What a volume key in the making consists of: the shape, and each edge at one or more places."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal

from kiosk.estimating.volume import Readings, Volume, box, cylinder, tapered, tapered_box
from kiosk.records import kept
from kiosk.records.volume_entries import LengthUnit, Shape, SizeRead
from kiosk.texts.typed import typed_number

USUAL_PLACES, MOST_PLACES = 2, 3
# The inch is 2.54 cm exactly (international yard and pound agreement of 1959, from memory, not
# verified).
CM_IN = {
    LengthUnit.CM: Decimal(1),
    LengthUnit.MM: Decimal("0.1"),
    LengthUnit.INCH: Decimal("2.54"),
}
# The step of the usual ruler in cm: a millimetre, or a sixteenth of an inch (common practice, no
# source).
RULERS = {
    LengthUnit.CM: Decimal("0.1"),
    LengthUnit.MM: Decimal("0.1"),
    LengthUnit.INCH: Decimal("0.15875"),
}

EDGES: Mapping[Shape, tuple[str, ...]] = {
    Shape.BOX: ("long", "wide", "tall"),
    Shape.CYLINDER: ("across", "tall"),
    Shape.TAPERED: ("top across", "bottom across", "tall"),
    Shape.TAPERED_BOX: ("top long", "top wide", "bottom long", "bottom wide", "tall"),
}


def _tapered_box(
    a: Readings, b: Readings, c: Readings, d: Readings, tall: Readings, ruler: Decimal
) -> Volume:
    return tapered_box((a, b), (c, d), tall, ruler)


_FORMULAS: Mapping[Shape, Callable[..., Volume]] = {
    Shape.BOX: box,
    Shape.CYLINDER: cylinder,
    Shape.TAPERED: tapered,
    Shape.TAPERED_BOX: _tapered_box,
}


def centimetres(typed: str, unit: LengthUnit, name: str) -> Decimal:
    """A typed size in cm, exactly. NotANumberError, a sentence that begins with ``name``."""
    return typed_number(typed, name) * CM_IN[unit]


@dataclass(frozen=True, slots=True, kw_only=True)
class VolumeDraft:
    """The sizes of one container as far as they are there; replaced, never changed.

    ``unit`` is what the ruler shows now; each kept size has its own.
    """

    id: str
    shape: Shape
    unit: LengthUnit
    sizes: tuple[SizeRead, ...] = ()

    @property
    def edges(self) -> tuple[str, ...]:
        """The edges of the shape, in the order in which they are measured."""
        return EDGES[self.shape]

    def at(self, edge: str) -> tuple[SizeRead, ...]:
        """The sizes of that edge, in the order in which they were kept."""
        return tuple(size for size in self.sizes if size.edge == edge)

    def places(self, edge: str) -> tuple[Decimal, ...]:
        """The same in centimetres."""
        return tuple(centimetres(size.typed, LengthUnit(size.unit), edge) for size in self.at(edge))

    def spread(self, edge: str) -> Decimal:
        """By how many centimetres the places of that edge differ."""
        places = self.places(edge)
        return max(places) - min(places) if places else Decimal(0)

    @property
    def ruler(self) -> Decimal:
        """The coarsest step in cm of the rulers that were used."""
        return max(
            (RULERS[LengthUnit(size.unit)] for size in self.sizes), default=RULERS[self.unit]
        )

    def uneven(self, edge: str) -> bool:
        """Whether two places differ by more than their ruler can be misread at both."""
        return self.spread(edge) > 2 * self.ruler

    @property
    def complete(self) -> bool:
        """Whether every edge was measured at one place or more."""
        return all(self.at(edge) for edge in self.edges)

    def volume(self) -> Volume | None:
        """The volume with its interval; None while an edge is missing."""
        if not self.complete:
            return None
        readings = (Readings(self.places(edge)) for edge in self.edges)
        return _FORMULAS[self.shape](*readings, ruler=self.ruler)

    def with_size(self, size: SizeRead) -> VolumeDraft:
        """The draft with one more size."""
        return replace(self, sizes=(*self.sizes, size))

    def without(self, gone: SizeRead) -> VolumeDraft:
        """The draft without that size."""
        return replace(self, sizes=tuple(size for size in self.sizes if size.id != gone.id))

    @classmethod
    def from_records(cls, stored: kept.VolumeDraft | None) -> VolumeDraft | None:
        """A volume key that was left half made, as the records have it."""
        if stored is None:
            return None
        return cls(
            id=stored.id,
            shape=Shape(stored.shape),
            unit=LengthUnit(stored.sizes[-1].unit),
            sizes=stored.sizes,
        )


def unlike(cm: Decimal, others: Sequence[Decimal], times: int) -> Decimal | None:
    """Another place of the same edge that is ``times`` as long or as short, if there is one."""
    return next((one for one in others if max(cm, one) >= times * min(cm, one)), None)
