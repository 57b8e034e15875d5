"""Jars of made-up pieces, counted by weight on a balance that rounds: what a coach does, at random.

Pieces have their own masses (gamma or lognormal), the tray and the empty container lie anywhere
between two steps of the balance, each reading is rounded to a step, and tare is subtracted. Samples
are weighed one by one in the emptied tray, or each is added to those that lie in it.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

import numpy as np
from numpy.typing import NDArray

from kiosk.estimating.count_key import CountInput

Masses = NDArray[np.float64]
PIECES_DRAWN_ONE_BY_ONE = 2_000  # a sum of more pieces is as good as gamma


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """One corner: ``number`` samples of ``pieces``, ``true`` pieces in the jar.

    ``cv`` is the scatter of pieces, relative; ``step`` and ``piece`` are grams.
    """

    number: int
    pieces: int
    cv: float
    step: Decimal
    piece: float
    true: int
    in_fill: bool = False
    shape: str = "gamma"
    added: bool = False


def jars(case: Case, how_many: int, seed: int) -> Iterator[tuple[tuple[Decimal, ...], Decimal]]:
    """The net samples and the net fill of so many jars of one case."""
    rng = np.random.default_rng(seed)
    loads = _sums(rng, case, case.pieces, (how_many, case.number))
    counted = case.number * case.pieces if case.in_fill else 0
    fill = _sums(rng, case, case.true - counted, (how_many,))
    if case.in_fill:
        fill = fill + loads.sum(axis=1)
    tray, container = rng.uniform(3, 4, (2, how_many))
    if case.added:
        gross = _shown_net(tray[:, None], loads.cumsum(axis=1), case.step)
        samples = np.diff(gross, axis=1, prepend=0)
    else:
        samples = _shown_net(tray[:, None], loads, case.step)
    fills = _shown_net(container, fill, case.step)
    for sample, net in zip(samples, fills, strict=True):
        yield tuple(int(mass) * case.step for mass in sample), int(net) * case.step


def as_input(
    case: Case, samples: tuple[Decimal, ...], net: Decimal, prior_percent: Decimal | None
) -> CountInput:
    """What the coach gives in."""
    return CountInput(
        pieces=case.pieces,
        samples=samples,
        filled=net,
        readability=case.step,
        piece_cv_percent=prior_percent,
        from_container=case.in_fill,
        chains=1 if case.added else None,
    )


def _sums(rng: np.random.Generator, case: Case, pieces: int, size: tuple[int, ...]) -> Masses:
    if pieces == 0:
        return np.zeros(size)
    if case.shape == "gamma" or pieces > PIECES_DRAWN_ONE_BY_ONE:
        return case.piece * rng.gamma(pieces / case.cv**2, case.cv**2, size)
    sigma = np.sqrt(np.log(1 + case.cv**2))
    flat = np.concatenate(
        [
            np.exp(rng.normal(-(sigma**2) / 2, sigma, (min(500, rest), pieces))).sum(axis=1)
            for rest in range(int(np.prod(size)), 0, -500)
        ]
    )
    return case.piece * flat.reshape(size)


def _shown_net(tare: Masses, load: Masses, step: Decimal) -> NDArray[np.int64]:
    """Gross less tare in steps, both rounded; ``tare`` in steps, ``load`` in grams."""
    gross = np.floor(tare + load / float(step) + 0.5)
    return (gross - np.floor(tare + 0.5)).astype(np.int64)
