"""The English texts, one module an area of the kiosk, joined here into one catalogue."""

from __future__ import annotations

from kiosk.texts.catalogue import (
    bench,
    code,
    commands,
    cups,
    general,
    guessing,
    jars,
    keys,
    learning,
    listening,
    measuring,
    measuring_water,
    opening,
    paper,
    paper_round,
    paper_typing,
    plugged_in,
    reading_off,
    reasons,
    records,
    replaying,
    round_clock,
    round_cups,
    round_day,
    round_files,
    round_keys,
    round_results,
    round_rules,
    round_teams,
    rounds,
    scale,
    scale_check,
    trouble,
    volumes,
)

Entry = str | tuple[str, str]


def _joined(*areas: dict[str, Entry]) -> dict[str, Entry]:
    whole: dict[str, Entry] = {}
    for area in areas:
        twice = whole.keys() & area.keys()
        if twice:
            raise ValueError(f"texts written twice: {sorted(twice)}")
        whole |= area
    return whole


ENGLISH = _joined(
    bench.TEXTS,
    code.TEXTS,
    commands.TEXTS,
    cups.TEXTS,
    general.TEXTS,
    guessing.TEXTS,
    jars.TEXTS,
    keys.TEXTS,
    learning.TEXTS,
    listening.TEXTS,
    measuring.TEXTS,
    measuring_water.TEXTS,
    opening.TEXTS,
    paper.TEXTS,
    paper_typing.TEXTS,
    paper_round.TEXTS,
    plugged_in.TEXTS,
    reading_off.TEXTS,
    reasons.TEXTS,
    records.TEXTS,
    replaying.TEXTS,
    round_clock.TEXTS,
    round_cups.TEXTS,
    round_day.TEXTS,
    round_files.TEXTS,
    round_keys.TEXTS,
    round_results.TEXTS,
    round_rules.TEXTS,
    round_teams.TEXTS,
    rounds.TEXTS,
    scale.TEXTS,
    scale_check.TEXTS,
    trouble.TEXTS,
    volumes.TEXTS,
)
