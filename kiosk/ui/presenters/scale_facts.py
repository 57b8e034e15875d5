"""What is known of the scale in use, and of the others that are plugged in."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum


class ScaleKind(StrEnum):
    """How a scale is heard."""

    SIMULATED = "simulated"
    TYPED = "typed"
    HID = "hid"
    SERIAL = "serial"
    NETWORK = "network"


@dataclass(frozen=True, slots=True, kw_only=True)
class FoundScale:
    """A scale that could be used; `described` is what can be read on its cable, or seen."""

    where: str
    kind: ScaleKind
    described: str = ""


@dataclass(slots=True, kw_only=True)
class ScaleFacts:
    """Kept up to date by the drawer of the scale.

    `chosen` is None until somebody chose one. `trying` while it is found out how it speaks,
    `understood` is False once no way was found, `silent` as long as nothing at all came from the
    one on trial. `problem` says why something could not be done.
    """

    chosen: FoundScale | None = None
    dialect: str = ""
    capacity: Decimal | None = None
    found: tuple[FoundScale, ...] = ()
    trying: bool = False
    understood: bool = True
    silent: bool = False
    problem: str = ""
