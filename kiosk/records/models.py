"""The tables. Each kind of entry has one; rows are put in and never changed.

Every kept row has `id`, made by whoever made the entry, and `place`, the order in which this store
took it in: a kiosk without a battery-backed clock may wake up in the past, so times do not order.

Two tables are not evidence and may change: `labels_taken` holds a cup's number while the cup is
out and a jar's letter or a box's number while its key counts (its primary key is what keeps two
kiosks from giving one number twice); `choices` holds what the kiosk remembers for the next pair.
"""

from __future__ import annotations

from datetime import datetime
from decimal import Decimal

from sqlalchemy import CheckConstraint, ForeignKey, MetaData, String, UniqueConstraint
from sqlalchemy.orm import DeclarativeBase, Mapped, mapped_column, relationship

from kiosk.records.columns import CheckedRows, Exact, Lines, Moment
from kiosk.records.entries import LAST_NUMBER, CheckedRow

# 2: checks of the balance; 3: guesses; 4: volume keys; 5: goals and lots; 6: closed jars
# 7: rounds; 8: whether bits count; 9: volumes by water
# 10: samples added to others
SCHEMA_VERSION = 10


SECRETS = ("coach_code", "helper_code")  # names of choices that leave the records in no export


class Base(DeclarativeBase):
    """The tables of the records; constraints have fixed names so that a migration finds them."""

    metadata = MetaData(
        naming_convention={
            "pk": "pk_%(table_name)s",
            "uq": "uq_%(table_name)s_%(column_0_name)s",
            "fk": "fk_%(table_name)s_%(column_0_name)s",
            "ck": "ck_%(table_name)s_%(constraint_name)s",
            "ix": "ix_%(table_name)s_%(column_0_name)s",
        }
    )


class Kept:
    """What every kept row has."""

    place: Mapped[int] = mapped_column(primary_key=True)
    id: Mapped[str] = mapped_column(String(32), unique=True)
    at: Mapped[datetime] = mapped_column(Moment)


class WeighingRow(Kept, Base):
    """One captured reading with its frame; masses in grams as shown."""

    __tablename__ = "weighings"

    grams: Mapped[Decimal] = mapped_column(Exact)
    value: Mapped[Decimal] = mapped_column(Exact)
    unit: Mapped[str]
    raw: Mapped[bytes]
    readability: Mapped[Decimal | None] = mapped_column(Exact)
    balance: Mapped[str]
    source: Mapped[str] = mapped_column(
        CheckConstraint("source IN ('balance', 'simulated', 'typed')", name="source")
    )


class CupTakenRow(Kept, Base):
    """A try: an empty cup was weighed and taken away."""

    __tablename__ = "cups_taken"

    number: Mapped[int] = mapped_column(
        CheckConstraint(f"number BETWEEN 1 AND {LAST_NUMBER}", name="number")
    )
    team: Mapped[str] = mapped_column(index=True)
    material: Mapped[str]
    empty_id: Mapped[str] = mapped_column(ForeignKey("weighings.id"))
    simulated: Mapped[bool]
    empty: Mapped[WeighingRow] = relationship(lazy="joined", innerjoin=True)


class CupHandedInRow(Kept, Base):
    """The cup of a try came back and was scored."""

    __tablename__ = "cups_handed_in"

    try_id: Mapped[str] = mapped_column(ForeignKey("cups_taken.id"), unique=True)
    filled_id: Mapped[str] = mapped_column(ForeignKey("weighings.id"))
    net: Mapped[Decimal] = mapped_column(Exact)
    target: Mapped[Decimal] = mapped_column(Exact)
    points: Mapped[Decimal] = mapped_column(Exact)
    side: Mapped[str]
    confirmed: Mapped[bool]
    filled: Mapped[WeighingRow] = relationship(lazy="joined", innerjoin=True)


class TryThrownAwayRow(Kept, Base):
    """A try does not count."""

    __tablename__ = "tries_thrown_away"

    try_id: Mapped[str] = mapped_column(ForeignKey("cups_taken.id"), unique=True)
    reason: Mapped[str]


class KeyStartedRow(Kept, Base):
    """A count key was begun."""

    __tablename__ = "keys_started"

    material: Mapped[str]
    scatter_class: Mapped[str]
    piece_cv_percent: Mapped[Decimal | None] = mapped_column(Exact)
    pieces: Mapped[int]


class KeyMassRow(Kept, Base):
    """A mass was kept for a key."""

    __tablename__ = "key_masses"

    key_id: Mapped[str] = mapped_column(ForeignKey("keys_started.id"), index=True)
    role: Mapped[str] = mapped_column(
        CheckConstraint("role IN ('tray', 'sample', 'empty', 'filled')", name="role")
    )
    weighing_id: Mapped[str] = mapped_column(ForeignKey("weighings.id"))
    tare_id: Mapped[str | None] = mapped_column(ForeignKey("weighings.id"))
    weighing: Mapped[WeighingRow] = relationship(
        lazy="joined", innerjoin=True, foreign_keys=[weighing_id]
    )
    tare: Mapped[WeighingRow | None] = relationship(lazy="joined", foreign_keys=[tare_id])


class MassVoidedRow(Kept, Base):
    """A mass of a key does not count."""

    __tablename__ = "masses_voided"

    mass_id: Mapped[str] = mapped_column(ForeignKey("key_masses.id"), unique=True)
    reason: Mapped[str]


class KeyChangedRow(Kept, Base):
    """An answer about a key was given or changed."""

    __tablename__ = "keys_changed"

    key_id: Mapped[str] = mapped_column(ForeignKey("keys_started.id"), index=True)
    pieces: Mapped[int | None]
    back_in: Mapped[bool | None]
    goal: Mapped[str | None]
    in_lots: Mapped[bool | None]
    bits: Mapped[bool | None]


class KeyMadeRow(Kept, Base):
    """A key was finished and given to a jar."""

    __tablename__ = "keys_made"

    key_id: Mapped[str] = mapped_column(ForeignKey("keys_started.id"), unique=True)
    letter: Mapped[str]
    count: Mapped[int]
    low: Mapped[int]
    high: Mapped[int]
    half_width_percent: Mapped[Decimal] = mapped_column(Exact)
    piece_mass_g: Mapped[Decimal] = mapped_column(Exact)
    score_effect: Mapped[Decimal] = mapped_column(Exact)
    warnings: Mapped[tuple[str, ...]] = mapped_column(Lines)
    from_container: Mapped[bool]
    simulated: Mapped[bool]


class KeyDroppedRow(Kept, Base):
    """A key does not count."""

    __tablename__ = "keys_dropped"

    key_id: Mapped[str] = mapped_column(ForeignKey("keys_started.id"), unique=True)
    reason: Mapped[str]


class GuessMadeRow(Kept, Base):
    """A guess; ``seen`` if it does not count: the answer was known, or it is not the first."""

    __tablename__ = "guesses_made"

    key_id: Mapped[str] = mapped_column(String(32), index=True)
    team: Mapped[str]
    guess: Mapped[Decimal] = mapped_column(Exact)
    seen: Mapped[bool]


class AnswerShownRow(Kept, Base):
    """The answer of a key was shown."""

    __tablename__ = "answers_shown"

    key_id: Mapped[str] = mapped_column(String(32), index=True)


class JarWeighedRow(Kept, Base):
    """A jar whose key counts was weighed with its lid."""

    __tablename__ = "jars_weighed"

    key_id: Mapped[str] = mapped_column(ForeignKey("keys_started.id"), index=True)
    role: Mapped[str] = mapped_column(CheckConstraint("role IN ('closed', 'checked')", name="role"))
    weighing_id: Mapped[str] = mapped_column(ForeignKey("weighings.id"))
    weighing: Mapped[WeighingRow] = relationship(lazy="joined", innerjoin=True)


class CheckMassRow(Kept, Base):
    """A mass was weighed in a check of the balance."""

    __tablename__ = "check_masses"

    check_id: Mapped[str] = mapped_column(String(32), index=True)
    role: Mapped[str] = mapped_column(
        CheckConstraint("role IN ('load', 'repeat', 'position', 'zero')", name="role")
    )
    row: Mapped[int]
    name: Mapped[str]
    known: Mapped[Decimal | None] = mapped_column(Exact)
    tolerance: Mapped[Decimal | None] = mapped_column(Exact)
    weighing_id: Mapped[str] = mapped_column(ForeignKey("weighings.id"))
    weighing: Mapped[WeighingRow] = relationship(lazy="joined", innerjoin=True)


class BalanceCheckedRow(Kept, Base):
    """A check of the balance is over."""

    __tablename__ = "balances_checked"

    balance: Mapped[str] = mapped_column(index=True)
    readability: Mapped[Decimal] = mapped_column(Exact)
    rows: Mapped[tuple[CheckedRow, ...]] = mapped_column(CheckedRows)
    verdict: Mapped[str] = mapped_column(
        CheckConstraint("verdict IN ('fine', 'not fine', 'cannot tell')", name="verdict")
    )
    simulated: Mapped[bool]


class VolumeStartedRow(Kept, Base):
    """A volume key was begun."""

    __tablename__ = "volumes_started"

    shape: Mapped[str] = mapped_column(
        CheckConstraint(
            "shape IN ('box', 'cylinder', 'tapered', 'tapered box', 'water')", name="shape"
        )
    )


class SizeReadRow(Kept, Base):
    """An edge was measured at one place; the digits as typed."""

    __tablename__ = "sizes_read"

    key_id: Mapped[str] = mapped_column(ForeignKey("volumes_started.id"), index=True)
    edge: Mapped[str]
    typed: Mapped[str]
    unit: Mapped[str] = mapped_column(CheckConstraint("unit IN ('cm', 'mm', 'in')", name="unit"))


class SizeVoidedRow(Kept, Base):
    """A size does not count."""

    __tablename__ = "sizes_voided"

    size_id: Mapped[str] = mapped_column(ForeignKey("sizes_read.id"), unique=True)
    reason: Mapped[str]


class WaterWeighedRow(Kept, Base):
    """A container was weighed empty, or full of water."""

    __tablename__ = "waters_weighed"

    key_id: Mapped[str] = mapped_column(ForeignKey("volumes_started.id"), index=True)
    role: Mapped[str] = mapped_column(CheckConstraint("role IN ('empty', 'filled')", name="role"))
    celsius: Mapped[Decimal | None] = mapped_column(Exact)
    weighing_id: Mapped[str] = mapped_column(ForeignKey("weighings.id"))
    weighing: Mapped[WeighingRow] = relationship(lazy="joined", innerjoin=True)


class WaterVoidedRow(Kept, Base):
    """A mass of a container does not count."""

    __tablename__ = "waters_voided"

    water_id: Mapped[str] = mapped_column(ForeignKey("waters_weighed.id"), unique=True)
    reason: Mapped[str]


class VolumeMadeRow(Kept, Base):
    """A volume key was finished and given to a box."""

    __tablename__ = "volumes_made"

    key_id: Mapped[str] = mapped_column(ForeignKey("volumes_started.id"), unique=True)
    number: Mapped[int]
    cm3: Mapped[Decimal] = mapped_column(Exact)
    low: Mapped[Decimal] = mapped_column(Exact)
    high: Mapped[Decimal] = mapped_column(Exact)
    score_effect: Mapped[Decimal] = mapped_column(Exact)


class VolumeDroppedRow(Kept, Base):
    """A volume key does not count."""

    __tablename__ = "volumes_dropped"

    key_id: Mapped[str] = mapped_column(ForeignKey("volumes_started.id"), unique=True)
    reason: Mapped[str]


class RoundNoteRow(Kept, Base):
    """A note of a round; the database keeps two from following the same one."""

    __tablename__ = "round_notes"
    __table_args__ = (UniqueConstraint("round_id", "about", "after", name="uq_round_notes_chain"),)

    round_id: Mapped[str] = mapped_column(String(32), index=True)
    simulated: Mapped[bool]
    kind: Mapped[str]
    about: Mapped[str]
    after: Mapped[str] = mapped_column(String(32))
    content: Mapped[str]
    weighing_id: Mapped[str | None] = mapped_column(ForeignKey("weighings.id"))
    zero_id: Mapped[str | None] = mapped_column(ForeignKey("weighings.id"))
    weighing: Mapped[WeighingRow | None] = relationship(lazy="joined", foreign_keys=[weighing_id])
    zero: Mapped[WeighingRow | None] = relationship(lazy="joined", foreign_keys=[zero_id])


class LabelTakenRow(Base):
    """A cup's number, a jar's letter or a box's number that cannot be given again for now."""

    __tablename__ = "labels_taken"

    kind: Mapped[str] = mapped_column(primary_key=True)
    simulated: Mapped[bool] = mapped_column(primary_key=True)
    label: Mapped[str] = mapped_column(primary_key=True)
    holder: Mapped[str] = mapped_column(String(32), unique=True)


class ChoiceRow(Base):
    """Something small that the kiosk remembers."""

    __tablename__ = "choices"

    name: Mapped[str] = mapped_column(primary_key=True)
    text: Mapped[str]
