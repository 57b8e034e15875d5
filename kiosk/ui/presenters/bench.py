"""The bench of the simulated scale: which things lie there, and what a tap on one does."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from drivers.simulated.materials import LENTILS, MATERIALS, Material
from drivers.simulated.table import SimulatedTable
from drivers.simulated.things import Cup, Jar, Thing, Tray
from kiosk.estimating.known_masses import COINS
from kiosk.procedures.balance_check import BalanceCheck
from kiosk.procedures.count_samples import FIRST_PIECES, CountSamples
from kiosk.procedures.cup_queue import CupQueue
from kiosk.procedures.fill_container import FillContainer
from kiosk.procedures.hand_in import HandIn
from kiosk.procedures.key_draft import KeyDraft
from kiosk.procedures.key_procedure import KeyProcedure
from kiosk.procedures.measure_water import MeasureWater
from kiosk.procedures.procedure import Procedure
from kiosk.procedures.weigh_empty import WeighEmpty
from kiosk.texts import say
from kiosk.ui.presenters.bench_known import KnownThings
from kiosk.ui.presenters.bench_round import CRUMBS, NEXT, OTHER, RoundThings
from kiosk.ui.presenters.bench_tiles import TileView
from kiosk.ui.presenters.bench_water import WaterThings
from kiosk.ui.presenters.check_rows import thing_name
from kiosk.ui.presenters.surroundings import TableFacts

SCOOP_G, LEAST_SCOOP_G, MOST_SCOOP_G, SCOOP_STEP_G = 95, 10, 250, 5
POUR_G = 100
CHECK_WEIGHT_G = 100


__all__ = ["BenchModel", "BenchView", "TileView"]


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchView:
    """The panel."""

    title: str = ""
    not_real: str = ""
    more: str = ""
    tiles: tuple[TileView, ...] = ()


class BenchModel:
    """Hands for the simulated table. `changed` is called when the panel looks different."""

    def __init__(
        self, table: SimulatedTable, facts: TableFacts, changed: Callable[[], None]
    ) -> None:
        self.table = table
        self.facts = facts
        self.procedure: Procedure | None = None
        self.out = False  # whether the panel is out
        self.scoop = SCOOP_G
        self._changed = changed
        self._faults = False
        self._cups: dict[int, Cup] = {}
        self._fresh: Cup | None = None
        self._tray: Tray | None = None
        self._jar: Jar | None = None
        self._weight = table.bench.check_weight(CHECK_WEIGHT_G)
        self._known = KnownThings(table.bench)
        self._water = WaterThings(table.bench)
        self._round = RoundThings(table.bench)
        self._off = False

    # What is shown ---------------------------------------------------------------------------

    def view(self) -> BenchView:
        """The tiles that fit what is being done."""
        if self._faults:
            tiles = self._fault_tiles()
        elif isinstance(self.procedure, KeyProcedure):
            tiles = self._key_tiles()
        elif isinstance(self.procedure, BalanceCheck):
            tiles = self._known_tiles(self.procedure)
        elif isinstance(self.procedure, CupQueue):
            tiles = [*self._round.tiles(self.procedure), self._clear_tile(), *self._scoop_tiles()]
        elif isinstance(self.procedure, MeasureWater):
            tiles = [*self._water.tiles(), self._weight_tile(), self._clear_tile()]
        else:
            tiles = self._cup_tiles()
        return BenchView(
            title=say("bench.title"),
            not_real=say("bench.not_real"),
            more=say("bench.back" if self._faults else "bench.more"),
            tiles=tuple(tiles),
        )

    def _cup_tiles(self) -> list[TileView]:
        number = self._number()
        fresh_on = self._lies(self._fresh) and not (self._fresh and self._fresh.filling)
        solid_on = fresh_on and self._fresh is not None and self._fresh.mass > 40
        filled = say("bench.no_cup") if number is None else say("bench.filled_cup", number=number)
        cup = None if number is None else self._cups.get(number)
        return [
            TileView(key="empty", text=say("bench.empty_cup"), art="cup",
                     on_pan=fresh_on and not solid_on),
            TileView(key="solid", text=say("bench.solid_cup"), art="solid cup", on_pan=solid_on),
            TileView(key="filled", text=filled, art="filled cup",
                     on_pan=self._lies(cup) and cup is not None and cup.filling > 0,
                     off=number is None),
            self._clear_tile(),
            *self._scoop_tiles(),
        ]  # fmt: skip

    def _scoop_tiles(self) -> list[TileView]:
        scoop = say("bench.scoop", mass=f"{self.scoop} g")
        return [
            TileView(key="less", text=f"{scoop}\n{say('bench.scoop_less')}", art="less"),
            TileView(key="more", text=f"{scoop}\n{say('bench.scoop_more')}", art="more"),
        ]

    def _key_tiles(self) -> list[TileView]:
        pieces = self._pieces()
        counted = "bench.tray_more" if self._adds() else "bench.tray_full"
        return [
            TileView(key="tray", text=say("bench.tray"), art="empty tray",
                     on_pan=self._lies(self._tray) and not self._heaped()),
            TileView(key="count", text=say(counted, pieces=pieces), art="tray",
                     on_pan=self._heaped() and self._lies(self._tray)),
            TileView(key="jar", text=say("bench.jar"), art="jar", on_pan=self._lies(self._jar)),
            TileView(key="pour", text=say("bench.pour"), art="pour", off=not self._lies(self._jar)),
            self._weight_tile(),
            self._clear_tile(),
        ]  # fmt: skip

    def _known_tiles(self, procedure: BalanceCheck) -> list[TileView]:
        art = "coins" if procedure.kit in COINS else "weight"
        tiles = [
            TileView(key=key, text=thing_name(thing), art=art, on_pan=self._known.lies(thing))
            for key, thing in self._known.offered(procedure).items()
        ]
        return [*tiles, self._clear_tile()]

    def _fault_tiles(self) -> list[TileView]:
        plugged = self.table.port.plugged
        return [
            TileView(key="zero", text=say("bench.zero"), art="zero"),
            TileView(key="tare", text=say("bench.tare"), art="tare"),
            TileView(key="plug", text=say("bench.unplug" if plugged else "bench.plug"),
                     art="plug" if plugged else "parted plug"),
            TileView(key="off", text=say("bench.wake" if self._off else "bench.switch_off"),
                     art="off", on_pan=self._off),
            self._weight_tile(),
            self._clear_tile(),
        ]  # fmt: skip

    def _weight_tile(self) -> TileView:
        return TileView(key="weight", text=say("bench.weight"), art="weight",
                        on_pan=self._lies(self._weight))  # fmt: skip

    def _clear_tile(self) -> TileView:
        return TileView(key="clear", text=say("bench.clear"), art="clear")

    def _lies(self, thing: Thing | None) -> bool:
        return thing is not None and thing in self.table.bench.on_pan

    def _heaped(self) -> bool:
        return self._tray is not None and self._tray.pieces > 0

    def _adds(self) -> bool:
        """Whether the next sample can be added to the pieces on the tray."""
        sampling = isinstance(self.procedure, CountSamples) and self.procedure.waits_for_more
        return sampling and self._heaped() and self._lies(self._tray)

    def _number(self) -> int | None:
        """The cup that a filled cup would be: the chosen one, else the one that is out longest."""
        if isinstance(self.procedure, HandIn) and self.procedure.number is not None:
            return self.procedure.number
        return self.facts.cups[0].number if self.facts.cups else None

    def _draft(self) -> KeyDraft | None:
        return self.procedure.draft if isinstance(self.procedure, KeyProcedure) else None

    def _pieces(self) -> int:
        draft = self._draft()
        return draft.pieces if draft else FIRST_PIECES

    def _material(self) -> Material:
        draft = self._draft()
        name = draft.material if draft else self.facts.material
        return MATERIALS.get(name, LENTILS)

    # What a tap does -------------------------------------------------------------------------

    def tap(self, key: str) -> None:
        """A tile was tapped."""
        if isinstance(self.procedure, BalanceCheck):
            known = self._known.offered(self.procedure).get(key)
            if known is not None:
                self._known.tap(known, self.procedure)
                self._changed()
                return
        if isinstance(self.procedure, CupQueue) and key in (NEXT, OTHER, CRUMBS):
            self._round.tap(key, self.procedure, self.scoop, self._material())
            self._changed()
            return
        actions: dict[str, Callable[[], object]] = {
            "empty": lambda: self._empty_cup(solid=False),
            "solid": lambda: self._empty_cup(solid=True),
            "filled": self._filled_cup,
            "less": lambda: self._set_scoop(-SCOOP_STEP_G),
            "more": lambda: self._set_scoop(SCOOP_STEP_G),
            "tray": self._empty_tray,
            "count": self._count,
            "jar": self._put_jar,
            "pour": self._pour,
            **self._water.actions(),
            "weight": lambda: self._toggle(self._weight),
            "zero": self.table.press_zero,
            "tare": self.table.press_tare,
            "plug": self._plug,
            "off": self._switch,
            "clear": self.table.bench.lift,
        }
        actions[key]()
        self._changed()

    def turn_page(self) -> None:
        """Show the keys and the cable instead of the things, or the things again."""
        self._faults = not self._faults
        self._changed()

    def pull_out(self) -> None:
        """Lay the panel out, or put it away."""
        self.out = not self.out
        self._changed()

    def follow(self) -> None:
        """A cup that was just weighed on the simulated pan has got its number."""
        procedure = self.procedure
        if not isinstance(procedure, WeighEmpty) or procedure.cup is None or self._fresh is None:
            return
        if self._fresh.number is None and self._lies(self._fresh):
            self._fresh.number = procedure.cup.number
            self._cups[procedure.cup.number] = self._fresh

    def _toggle(self, thing: Thing) -> None:
        bench = self.table.bench
        if self._lies(thing):
            bench.lift(thing)
        else:
            bench.lift()
            bench.put(thing)

    def _empty_cup(self, *, solid: bool) -> None:
        bench = self.table.bench
        if self._fresh is not None and self._lies(self._fresh):
            bench.lift()
            return
        self._fresh = bench.new_cup(solid=solid)
        self._toggle(self._fresh)

    def _filled_cup(self) -> None:
        number = self._number()
        if number is None:
            return
        cup = self._cups.get(number)
        if cup is None:
            kept = next(cup for cup in self.facts.cups if cup.number == number)
            cup = self._cups[number] = self.table.bench.cup(float(kept.empty.grams), number)
        if not self._lies(cup):
            self.table.bench.lift()
            self.table.bench.fill(cup, self.scoop, self._material())
        self._toggle(cup)

    def _set_scoop(self, by: int) -> None:
        self.scoop = min(MOST_SCOOP_G, max(LEAST_SCOOP_G, self.scoop + by))

    def _empty_tray(self) -> None:
        bench = self.table.bench
        if self._tray is None:
            self._tray = bench.new_tray()
        was_heaped = self._heaped()
        bench.empty(self._tray)
        if self._lies(self._tray) and not was_heaped:
            bench.lift(self._tray)
        elif not self._lies(self._tray):
            self._toggle(self._tray)

    def _count(self) -> None:
        bench = self.table.bench
        if self._tray is None:
            self._tray = bench.new_tray()
        if self._adds():
            bench.count_onto(self._tray, self._pieces(), self._material())
            return
        if self._lies(self._tray) and self._heaped():
            bench.lift(self._tray)
            bench.empty(self._tray)
            return
        bench.lift()
        bench.empty(self._tray)
        bench.count_onto(self._tray, self._pieces(), self._material())
        bench.put(self._tray)

    def _put_jar(self) -> None:
        bench = self.table.bench
        waits_for_empty = isinstance(self.procedure, FillContainer) and (
            self.procedure.kept.empty is None
        )
        if self._jar is None or (waits_for_empty and not self._lies(self._jar)):
            self._jar = bench.new_jar()
        self._toggle(self._jar)

    def _pour(self) -> None:
        if self._jar is not None and self._lies(self._jar):
            self.table.bench.pour(self._jar, self._material(), grams=POUR_G)

    def _plug(self) -> None:
        if self.table.port.plugged:
            self.table.unplug()
        else:
            self.table.plug()

    def _switch(self) -> None:
        if self._off:
            self.table.switch_on()
        else:
            self.table.switch_off()
        self._off = not self._off
