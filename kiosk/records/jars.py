"""Reading the jars that have a key, with what they weigh closed."""

from __future__ import annotations

from sqlalchemy import select
from sqlalchemy.orm import Session

from kiosk.evidence import Weighing
from kiosk.records import queries
from kiosk.records.entries import MassRole
from kiosk.records.jar_entries import ClosedJar, JarRole
from kiosk.records.kept import KeyDraft
from kiosk.records.models import JarWeighedRow


def closed_jars(session: Session, simulated: bool) -> list[ClosedJar]:
    """The jars whose key counts, by letter."""
    jars = [
        ClosedJar(
            key_id=key.made.key_id,
            letter=key.made.letter,
            material=key.draft.material,
            piece_mass_g=key.made.piece_mass_g,
            filled=_filled(key.draft),
            closed=_latest(session, key.made.key_id, JarRole.CLOSED),
            checked=_latest(session, key.made.key_id, JarRole.CHECKED),
        )
        for key in queries.keys(session, simulated)
    ]
    return sorted(jars, key=lambda jar: jar.letter)


def _filled(draft: KeyDraft) -> Weighing | None:
    """The one weighing of the whole fill; in lots there is none."""
    weighings = draft.of(MassRole.FILLED)
    return weighings[0] if len(weighings) == 1 and not draft.in_lots else None


def _latest(session: Session, key_id: str, role: JarRole) -> Weighing | None:
    row = session.scalar(
        select(JarWeighedRow)
        .where(JarWeighedRow.key_id == key_id, JarWeighedRow.role == role.value)
        .order_by(JarWeighedRow.place.desc())
        .limit(1)
    )
    return None if row is None else queries.weighing_of(row.weighing)
