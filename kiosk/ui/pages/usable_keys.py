"""The keys that a round may be bound to, as they are read from the records."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import TYPE_CHECKING

from kiosk.procedures.key_draft import KeyDraft
from kiosk.records.kept import StoredKey, StoredVolume
from kiosk.records.kinds import BOX, JAR
from kiosk.rounds.readiness import KeyFacts
from kiosk.texts import say
from kiosk.ui.presenters.key_views import jar_material

if TYPE_CHECKING:
    from kiosk.records.store import Store  # brings SQLAlchemy along, which only the writer may


@dataclass(frozen=True, slots=True, kw_only=True)
class Usable:
    """A key that counts: of a jar or a box, what it says, and how it could say it more surely."""

    kind: str
    key_id: str
    letter: str
    name: str
    actual: Decimal
    half_width_percent: Decimal
    closed: bool
    advice: str


def usable_keys(store: Store, simulated: bool) -> list[Usable]:
    """Jars by letter, then boxes by number."""
    closed = {jar.key_id for jar in store.closed_jars(simulated) if jar.closed is not None}
    jars = sorted(
        (_jar(key, closed=key.made.key_id in closed) for key in store.keys(simulated)),
        key=lambda one: one.letter,
    )
    boxes = sorted(store.volumes(simulated), key=lambda one: one.made.number)
    return [*jars, *map(_box, boxes)]


def facts_of(keys: list[Usable]) -> KeyFacts:
    """Which keys count, and which containers are closed."""
    return KeyFacts(
        counting=frozenset(key.key_id for key in keys),
        closed=frozenset(key.key_id for key in keys if key.closed),
    )


def _jar(key: StoredKey, *, closed: bool) -> Usable:
    draft = KeyDraft.from_records(key.draft)
    advice = draft.advice() if draft and draft.samples else None
    return Usable(
        kind=JAR,
        key_id=key.made.key_id,
        letter=key.made.letter,
        name=jar_material(key.draft.material),
        actual=Decimal(key.made.count),
        half_width_percent=key.made.half_width_percent,
        closed=closed,
        advice=advice.sentence if advice else "",
    )


def _box(volume: StoredVolume) -> Usable:
    made = volume.made
    half_width = (made.high - made.low) / 2 / made.cm3 * 100
    return Usable(
        kind=BOX,
        key_id=made.key_id,
        letter=str(made.number),
        name=say(f"measure.shape.{volume.draft.shape.replace(' ', '_')}"),
        actual=made.cm3,
        half_width_percent=round(half_width, 3),
        closed=True,
        advice="",
    )
