"""The tour: one pass through every job by touch, a stop at each screen."""

from __future__ import annotations

from kiosk.ui import tour_boxes, tour_cups, tour_guesses, tour_keys, tour_rounds, tour_scale
from kiosk.ui.tour_hands import Stops

STATIONS: Stops = tuple(
    (f"{number:02d}-{name}", way)
    for number, (name, way) in enumerate(
        (
            *tour_cups.STOPS,
            *tour_keys.STOPS,
            *tour_boxes.STOPS,
            *tour_guesses.STOPS,
            *tour_scale.STOPS,
            *tour_rounds.STOPS,
        ),
        start=1,
    )
)
