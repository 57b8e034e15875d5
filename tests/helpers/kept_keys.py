"""Keys put into the records as they are, for what stands on them; every number is invented."""

from __future__ import annotations

from decimal import Decimal

from kiosk.evidence import Source
from kiosk.records.entries import KeyMade, KeyMass, KeyStarted, MassRole
from kiosk.records.store import Store
from kiosk.records.volume_entries import SizeRead, VolumeMade, VolumeStarted
from tests.helpers.pan import STARTED
from tests.helpers.weighings import weighed

HALF_PERCENT = Decimal("0.005")
MASSES = (
    (MassRole.TRAY, "21.4"), (MassRole.SAMPLE, "31.4"), (MassRole.SAMPLE, "31.5"),
    (MassRole.SAMPLE, "31.3"), (MassRole.EMPTY, "250.0"), (MassRole.FILLED, "650.0"),
)  # fmt: skip


def keep_jar(store: Store, letter: str, count: int, percent: str = "0.5") -> str:
    """A jar of that many pieces by the simulated balance; the id of its key."""
    started = KeyStarted(
        material="lentils", scatter_class="grains", piece_cv_percent=None, pieces=100, at=STARTED
    )
    masses = [
        KeyMass(
            key_id=started.id, role=role, at=STARTED,
            weighing=weighed(grams, source=Source.SIMULATED),
        )
        for role, grams in MASSES
    ]  # fmt: skip
    half = round(count * Decimal(percent) / 100)
    made = KeyMade(
        key_id=started.id, letter=letter, count=count, low=count - half, high=count + half,
        half_width_percent=Decimal(percent), piece_mass_g=Decimal("0.1"),
        score_effect=Decimal("0.5"), warnings=(), from_container=False, at=STARTED,
    )  # fmt: skip
    store.save(started, *masses, made)
    return started.id


def keep_box(store: Store, number: int, cm3: str) -> str:
    """A box of that volume; the id of its key."""
    started = VolumeStarted(shape="box", at=STARTED)
    size = SizeRead(key_id=started.id, edge="long", typed="18.4", unit="cm", at=STARTED)
    whole = Decimal(cm3)
    made = VolumeMade(
        key_id=started.id, number=number, cm3=whole, low=whole * (1 - HALF_PERCENT),
        high=whole * (1 + HALF_PERCENT), score_effect=Decimal("0.5"), at=STARTED,
    )  # fmt: skip
    store.save(started, size, made)
    return started.id
