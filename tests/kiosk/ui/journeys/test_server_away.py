"""A kiosk of several, walked by touch, while its server is gone and comes back."""

from __future__ import annotations

import time
from collections.abc import Callable
from contextlib import closing
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from kiosk.records.store import Store
from tests.helpers.journey import Journey

if TYPE_CHECKING:
    from tests.helpers.postgres import Postgres

EMPTY_G, FILLED_G = 12.3, 105.7
PATIENCE_S = 10.0


def let_catch_up(journey: Journey) -> None:
    """In the server's time, which no clock of ours moves on."""
    until = time.monotonic() + PATIENCE_S
    while journey.desk.facts.not_stored and time.monotonic() < until:
        time.sleep(0.01)
        journey.step()


def test_a_cup_is_scored_without_the_server_and_the_next_one_waits_for_it(
    own_server: Postgres,
    start: Callable[..., Journey],
    monkeypatch: pytest.MonkeyPatch,
    tmp_path: Path,
) -> None:
    monkeypatch.setattr("kiosk.records.journal.usual_file", lambda: tmp_path / "records.sqlite")
    monkeypatch.setattr("kiosk.records.writer.AGAIN_S", 0.05)
    monkeypatch.setattr("kiosk.records.backlog.AGAIN_S", 0.05)
    where = own_server.fresh()
    journey = start(server=where)
    journey.take_cup(grams=EMPTY_G)
    own_server.stop("immediate")

    journey.tap("1")
    journey.put(FILLED_G)
    journey.until_screen("score")
    assert journey.score.points == "93.4"
    assert "1 not yet stored" in journey.scene.strip.words

    journey.bench.lift()
    journey.wait(2)
    journey.tap("Home")
    journey.tap("Fill a cup")
    journey.tap("Wren")
    assert "do not answer" in journey.seen
    journey.tap("Home")
    assert journey.screen == "home"  # cups may still be handed in
    journey.tap("Fill a cup")
    journey.tap("Wren")
    own_server.start()
    let_catch_up(journey)
    journey.until_screen("put on")  # the question was asked again by itself
    assert "1 not yet stored" not in journey.scene.strip.words
    with closing(Store(where)) as store:
        (kept,) = store.last_tries("Heron", simulated=True)
        assert str(kept.points) == "93.4"
        assert store.cups_out(simulated=True) == []
