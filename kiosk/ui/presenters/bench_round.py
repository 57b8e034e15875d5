"""The numbered cups of a round on the bench of the simulated scale: the next one, and another."""

from __future__ import annotations

from drivers.simulated.bench import Bench
from drivers.simulated.materials import Material
from drivers.simulated.things import Cup, Thing
from kiosk.procedures.cup_queue import CupQueue
from kiosk.rounds.contents import CupTurn
from kiosk.rounds.cups import TeamCup
from kiosk.texts import say
from kiosk.ui.presenters.bench_tiles import TileView

NEXT, OTHER, CRUMBS = "round cup", "other round cup", "crumbs"
CRUMBS_G = 0.6  # more than a pan may show before a cup comes


class RoundThings:
    """Makes each team's cup when it is first wanted; a known empty mass stays what it was."""

    def __init__(self, bench: Bench) -> None:
        self._bench = bench
        self._made: dict[tuple[str, int], Cup] = {}
        self._crumbs = Thing(CRUMBS_G)

    def tiles(self, procedure: CupQueue) -> list[TileView]:
        """The cup that lies there or is waited for, the one after it, and what may fall out."""
        other = self._other(procedure)
        words = (
            say("bench.no_cups") if other is None else say("bench.other_cup", number=other.team.cup)
        )
        return [
            self._tile(procedure),
            TileView(
                key=OTHER,
                text=words,
                art="cup" if procedure.list.weighs_empty else "filled cup",
                on_pan=other is not None and self._lies(other),
                off=other is None,
            ),
            TileView(
                key=CRUMBS,
                text=say("bench.crumbs"),
                art="crumbs",
                on_pan=self._crumbs in self._bench.on_pan,
            ),
        ]

    def _tile(self, procedure: CupQueue) -> TileView:
        cup = procedure.cup
        if cup is None:
            return TileView(key=NEXT, text=say("bench.no_cups"), art="cup", off=True)
        empty = self._comes_empty(procedure)
        words = "bench.cup_empty" if empty else "bench.cup_filled"
        return TileView(
            key=NEXT,
            text=say(words, number=cup.team.cup),
            art="cup" if empty else "filled cup",
            on_pan=self._lies(cup),
        )

    def tap(self, key: str, procedure: CupQueue, scoop: int, material: Material) -> None:
        """Take that off the pan, or put it there instead of another cup; crumbs stay there."""
        if key == CRUMBS:
            self._toggle_crumbs()
            return
        cup = procedure.cup if key == NEXT else self._other(procedure)
        if cup is None:
            return
        lay = self._lies(cup)
        for made in self._made.values():
            self._bench.lift(made)
        if lay:
            return
        thing = self._thing(cup)
        if self._comes_empty(procedure):
            self._bench.empty(thing)
        elif not thing.filling:
            self._bench.fill(thing, scoop, material)
        self._bench.put(thing)

    def _toggle_crumbs(self) -> None:
        if self._crumbs in self._bench.on_pan:
            self._bench.lift(self._crumbs)
        else:
            self._bench.put(self._crumbs)

    def _comes_empty(self, procedure: CupQueue) -> bool:
        if procedure.recorded is not None:
            return self._lies_empty(procedure.recorded)
        return procedure.list.weighs_empty

    def _other(self, procedure: CupQueue) -> TeamCup | None:
        waiting = procedure.list.following if procedure.recorded is None else procedure.list.pending
        return next(iter(waiting), None)

    def _place(self, cup: TeamCup) -> tuple[str, int]:
        return cup.team.team, cup.turns.count(CupTurn.CRACKED)

    def _thing(self, cup: TeamCup) -> Cup:
        place = self._place(cup)
        if place not in self._made:
            self._made[place] = (
                self._bench.new_cup(number=cup.team.cup)
                if cup.empty is None
                else self._bench.cup(float(cup.empty.grams), cup.team.cup)
            )
        return self._made[place]

    def _lies(self, cup: TeamCup) -> bool:
        return self._made.get(self._place(cup)) in self._bench.on_pan

    def _lies_empty(self, cup: TeamCup) -> bool:
        made = self._made.get(self._place(cup))
        return made is not None and not made.filling
