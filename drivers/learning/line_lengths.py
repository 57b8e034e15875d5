"""How long the lines of a balance always are, so that a torn one is known by its length."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import zip_longest

from drivers.learning.mass_field import MassField

MOST_LENGTHS = 3  # brackets or a blank unit may make a moving line longer or shorter
_ZERO_FILLED = re.compile(r"0[0-9]")
_RUN = re.compile(r"(:?)([A-Za-z0-9]+)(:?)")


def lengths_of(field: MassField) -> tuple[int, ...]:
    """The lengths that the lines have; empty unless they stay when numbers get longer.

    Else a heavier load, or a clock that passes ten, would make all lines look torn.
    """
    lengths = {len(line.sent) for line in field.lines}
    at_rest = {len(field.lines[at].sent) for at in field.deep}
    sizes = {max(0, number.value.adjusted()) for number in field.found if number.value}
    padded = len(sizes) > 1 or any(_ZERO_FILLED.match(number.digits) for number in field.found)
    if not padded or len(at_rest) > 1 or len(lengths) > MOST_LENGTHS or _others_grow(field):
        return ()
    return tuple(sorted(lengths))


def _others_grow(field: MassField) -> bool:
    """True if another number in the lines may need more digits some day."""
    before, after = [], []
    for line, number in zip(field.lines, field.found, strict=True):
        before.append(_RUN.findall(line.text[: number.start]))
        after.append(_RUN.findall(line.text[number.end :])[::-1])
    columns = (*zip_longest(*before), *zip_longest(*after))
    return any(_grows([run for run in column if run is not None]) for column in columns)


def _grows(runs: Sequence[tuple[str, str, str]]) -> bool:
    """Whether what stands in one place of all lines is a number without zeros in front."""
    texts = {text for _, text, _ in runs}
    if not all(text.isdigit() for text in texts):
        return False
    in_clock = any(before or after for before, _, after in runs)
    if len(texts) == 1:
        return in_clock and len(runs[0][1]) == 1
    same = len({len(text) for text in texts}) == 1
    return not (same and (in_clock or any(text.startswith("0") for text in texts)))
