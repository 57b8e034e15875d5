"""Closed jars on the pan, in every state of checking them."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal

from kiosk.procedures.check_jars import CheckJars, JarState
from kiosk.procedures.pan_memory import PanMemory
from kiosk.procedures.procedure import Person
from kiosk.records.jar_entries import ClosedJar
from tests.helpers.pan import EMPTY, PLACED, feed, memory, press, settled, surroundings
from tests.helpers.weighings import weighed

S = JarState


def closed_jar(letter: str, filled: str, closed: str | None) -> ClosedJar:
    """A jar of rice of 35.6 mg a piece, whose key's id is its letter."""
    return ClosedJar(
        key_id=letter, letter=letter, material="rice", piece_mass_g=Decimal("0.0356"),
        filled=weighed(filled), closed=weighed(closed) if closed else None,
    )  # fmt: skip


def checking_jars(jars: Sequence[ClosedJar], pan: PanMemory | None = None) -> CheckJars:
    """The check of these jars begins."""
    return CheckJars(surroundings(), jars=jars, pan=pan or PanMemory())


MANY_JARS = tuple(
    closed_jar(letter, "1722.0", None if letter == "Q" else "1732.1")
    for letter in "ABCDEFGHIJKLMNOPQRSTUVWX"
)


def in_check_jars(state: JarState) -> CheckJars:
    """Two dozen jars, one of them in that state."""
    procedure = checking_jars(MANY_JARS, memory(PLACED) if state is S.CLEAR else PanMemory())
    procedure.pan.used = state is S.CLEAR
    if state is S.CHOOSE:
        feed(procedure, press(Person.CHOOSE, "B"), PLACED, settled("1712.3"), press(Person.UNDO))
        feed(procedure, settled("1732.0"), press(Person.MORE), EMPTY, press(Person.NO))
        return procedure
    letter = "Q" if state in (S.FIRST_TIME, S.KEPT) else "W"
    feed(procedure, press(Person.CHOOSE, letter))
    grams = "1712.3" if state is S.CHANGED else "1732.1"
    if state not in (S.CLEAR, S.PUT_ON):
        feed(procedure, PLACED)
    if state in (S.FIRST_TIME, S.KEPT, S.SAME, S.CHANGED):
        feed(procedure, settled(grams))
    if state is S.KEPT:
        feed(procedure, press(Person.YES))
    return procedure


def like_another() -> CheckJars:
    """A jar that weighs like another one."""
    jars = (closed_jar("W", "1722.0", "1732.1"), closed_jar("Q", "1912.0", "1932.1"))
    procedure = checking_jars(jars)
    feed(procedure, press(Person.CHOOSE, "W"), PLACED, settled("1932.0"))
    return procedure


def lighter_than_open() -> CheckJars:
    """A closed jar that weighs less than it did without its lid."""
    procedure = checking_jars((closed_jar("W", "1722.0", None),))
    feed(procedure, press(Person.CHOOSE, "W"), PLACED, settled("1701.0"))
    return procedure


def sealing() -> CheckJars:
    """A new key: its jar is to be weighed closed."""
    return CheckJars(surroundings(), jars=MANY_JARS, pan=memory(PLACED), sealing="Q")
