"""Printed sheets read back, and a key to print; every number is invented."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal
from io import BytesIO
from typing import Any

from pypdf import PageObject, PdfReader

from kiosk.evidence import Source
from kiosk.records.entries import KeyMade, KeyMass, MassRole
from kiosk.records.kept import KeyDraft, StoredKey
from tests.helpers.pan import STARTED
from tests.helpers.weighings import weighed

KEY_ID = "5eed" * 8
COUNT, LOW, HIGH = 15_234, 14_987, 15_482


def pages(data: bytes) -> list[PageObject]:
    return list(PdfReader(BytesIO(data)).pages)


def words_on(data: bytes) -> str:
    """Everything on all pages, thin spaces and line breaks as plain spaces."""
    text = " ".join(page.extract_text() for page in pages(data))
    return " ".join(text.split())


def baselines(page: PageObject) -> list[tuple[str, float, float]]:
    """Each run of upright text and where it begins, in points from the lower left corner."""
    found: list[tuple[str, float, float]] = []

    def visit(text: str, page_place: Any, text_place: Any, _font: Any, _size: Any) -> None:
        upright = page_place[1] == 0
        if text.strip() and upright:
            x, y = text_place[4] + page_place[4], text_place[5] + page_place[5]
            found.append((text.strip(), x, y))

    page.extract_text(visitor_text=visit)
    return found


def fonts(data: bytes) -> dict[str, bool]:
    """The names of all fonts, without their subset's letters, and whether each is in the file."""
    found = {}
    for page in pages(data):
        resources: Any = page["/Resources"]
        for font in resources["/Font"].values():
            made: Any = font.get_object()
            name = made["/BaseFont"].lstrip("/").partition("+")[2] or made["/BaseFont"]
            found[name] = "/FontDescriptor" in made and "/FontFile2" in made["/FontDescriptor"]
    return found


def kept_key(
    *,
    source: Source = Source.BALANCE,
    samples: int = 3,
    warnings: Sequence[str] = (),
    step: str = "0.1",
    balance: str = "test balance",
    from_container: bool = False,
    material: str = "rice",
    lots: int = 0,
    bits: bool | None = None,
) -> StoredKey:
    """A key for jar W, as the store gives it back."""

    def mass(role: MassRole, grams: str) -> KeyMass:
        weighing = weighed(grams, step, source, balance=balance)
        return KeyMass(key_id=KEY_ID, role=role, at=STARTED, weighing=weighing)

    counted = [
        mass(MassRole.SAMPLE, f"{Decimal('31.0') + Decimal(i) / 10}") for i in range(samples)
    ]
    in_lots = [
        mass(role, f"{each + Decimal(lot) / 10}")
        for lot in range(lots)
        for role, each in ((MassRole.EMPTY, Decimal("250.3")), (MassRole.FILLED, Decimal("350.3")))
    ]
    whole = [mass(MassRole.EMPTY, "250.3"), mass(MassRole.FILLED, "1204.9")]
    masses = (mass(MassRole.TRAY, "21.4"), *counted, *(in_lots or whole))
    draft = KeyDraft(
        id=KEY_ID,
        material=material,
        scatter_class="grains",
        piece_cv_percent=None,
        pieces=500,
        back_in=from_container,
        in_lots=bool(lots),
        bits=bits,
        simulated=source is Source.SIMULATED,
        since=STARTED,
        masses=masses,
    )
    made = KeyMade(
        key_id=KEY_ID,
        letter="W",
        count=COUNT,
        low=LOW,
        high=HIGH,
        half_width_percent=Decimal("1.624"),
        piece_mass_g=Decimal("0.0197"),
        score_effect=Decimal("1.51"),
        warnings=tuple(warnings),
        from_container=from_container,
        at=STARTED,
    )
    return StoredKey(draft=draft, made=made)
