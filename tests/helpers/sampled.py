"""Count keys on their way: what was chosen, and samples that were put on the pan."""

from __future__ import annotations

from decimal import Decimal

from kiosk.estimating.scatter import ScatterClass
from kiosk.procedures.count_samples import CountSamples, SamplesState
from kiosk.procedures.key_draft import KeyDraft
from kiosk.procedures.pan_memory import PanMemory
from kiosk.procedures.procedure import Person
from tests.helpers.pan import EMPTY, PLACED, feed, press, settled, surroundings

LENTILS = ("lentils", ScatterClass.GRAINS.value, Decimal(20))
PASTA = ("pasta", ScatterClass.PASTA.value, Decimal(10))
UNKNOWN = ("something else", ScatterClass.UNKNOWN.value, None)


def started(material: tuple[object, ...] = LENTILS) -> CountSamples:
    """The tray is weighed: 21.4 g."""
    procedure = CountSamples(surroundings(), pan=PanMemory())
    feed(procedure, press(Person.CHOOSE, material))
    if procedure.state is SamplesState.BITS:
        feed(procedure, press(Person.NO))
    feed(procedure, PLACED, settled("21.4"), EMPTY)
    return procedure


def sampled(how_many: int, net: str = "100.0", pieces: int = 500) -> CountSamples:
    """So many samples are in, each a little heavier than the one before."""
    procedure = started()
    feed(procedure, press(Person.PIECES, pieces))
    for place in range(how_many):
        if procedure.state is SamplesState.SPREAD:
            feed(procedure, press(Person.MORE))
        gross = Decimal("21.4") + Decimal(net) + Decimal("0.3") * place
        feed(procedure, PLACED, settled("21.4"))
        feed(procedure, PLACED, settled(str(gross)), press(Person.KEEP), EMPTY)
    return procedure


def added(*nets: str) -> CountSamples:
    """Each sample is added to those on the tray, which stays on the pan."""
    procedure = started()
    feed(procedure, PLACED)
    gross = Decimal("21.4")
    for net in nets:
        gross += Decimal(net)
        feed(procedure, settled(str(gross)), press(Person.KEEP))
    return procedure


def in_tens(*tens: str) -> CountSamples:
    """Pasta of 0.5 g: these tens, in grams, are put on the tray one after the other."""
    procedure = started(PASTA)
    feed(procedure, PLACED, settled("21.4"), press(Person.TENS))
    gross = Decimal("21.4")
    for ten in tens:
        gross += Decimal(ten)
        feed(procedure, PLACED, settled(str(gross)))
    return procedure


def lay(net: str) -> tuple[object, ...]:
    return (PLACED, settled(str(Decimal("21.4") + Decimal(net))))


def draft() -> KeyDraft:
    """Three samples that weigh 25 g a 500 pieces: 50 mg a piece."""
    return sampled(3, "25.0").kept
