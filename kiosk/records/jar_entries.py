"""Jars that have a key: weighed closed, and weighed again later.

JarWeighed of the role closed is what a jar weighs from then on; of the role checked, what it
weighed when somebody looked whether it is still the same.
"""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum

from kiosk.evidence import Weighing
from kiosk.records.entries import Entry


class JarRole(StrEnum):
    """Why a jar with a key was weighed."""

    CLOSED = "closed"
    CHECKED = "checked"


@dataclass(frozen=True, slots=True, kw_only=True)
class JarWeighed(Entry):
    """A jar whose key was made and counts was weighed with its lid; ``role`` is one of JarRole."""

    key_id: str
    role: str
    weighing: Weighing

    def __post_init__(self) -> None:
        Entry.__post_init__(self)
        JarRole(self.role)


@dataclass(frozen=True, slots=True, kw_only=True)
class ClosedJar:
    """A jar whose key counts, as the store gives it back; ``piece_mass_g`` is grams.

    ``filled`` was weighed without the lid, None if it was filled in lots; ``closed`` with the lid,
    None while nobody weighed it closed; ``checked`` when it was looked at last, if ever.
    """

    key_id: str
    letter: str
    material: str
    piece_mass_g: Decimal
    filled: Weighing | None
    closed: Weighing | None = None
    checked: Weighing | None = None
