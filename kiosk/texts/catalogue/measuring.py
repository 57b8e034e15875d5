"""Texts: how much to count before counting, and volumes."""

from __future__ import annotations

TEXTS: dict[str, str | tuple[str, str]] = {
    # gramstand sample-plan
    "command.sample_plan.help": "find the fewest pieces to count for a key as good as wanted",
    "command.sample_plan.piece_mass": "about how much one piece weighs, in grams",
    "command.sample_plan.readability": "the step of the balance in grams",
    "command.sample_plan.goal_percent": "half of the 95 %% interval to reach, in per cent",
    "command.sample_plan.piece_cv": (
        "how much single pieces differ, one standard deviation in per cent, if it is known "
        "({usual} is planned for unless given)"
    ),
    "command.sample_plan.count": "the pieces in the jar, about ({usual} unless given)",
    "command.name.piece_mass": "The mass of a piece",
    "command.name.goal_percent": "The goal",
    "command.name.count": "The number of pieces in the jar",
    "command.sample_plan.done": (
        "Count {samples} samples of {pieces}: good to {half} for a jar of {count}."
    ),
    "command.sample_plan.assumed": (
        "Note: The pieces are taken to differ by {usual} %; if they differ less, say so with "
        "--piece-cv and count fewer."
    ),
    "command.sample_plan.count_all": (
        "Note: That is as many as are in the jar, or more: count all {count} instead."
    ),
    # No plan
    "plan.refused.light_samples": (
        "Even samples of {most} pieces can be under {least} steps of {step}: {help}."
    ),
    "plan.refused.light_fill": (
        "A jar of {count} such pieces is under {least} steps of {step}: {help}."
    ),
    "plan.refused.too_wide": (
        "Even {samples} samples of {pieces} make a key of {count} pieces good only to {best}, "
        "not {goal} %: {help}."
    ),
    "plan.help.light_samples": "choose heavier pieces",
    "plan.help.light_fill": "fill in more",
    "plan.help.too_wide": "be content with {best}, or fill in more",
    "plan.help.unknown": "say how much the pieces differ, or be content with {best}",
    # gramstand volume
    "command.volume.help": "the volume of a container, with a 95 % interval",
    "command.volume.box": "a box, outside sizes in cm",
    "command.volume.cylinder": "a cylinder, outside sizes in cm",
    "command.volume.tapered": "a round container wider at one end, outside sizes in cm",
    "command.volume.water": "any container by the water that fills it",
    "command.volume.length": "one edge of the bottom; once for each place where it was measured",
    "command.volume.width": "the other edge of the bottom; again for another place",
    "command.volume.height": "the height, straight up; again for another place",
    "command.volume.diameter": "the diameter; again for another place",
    "command.volume.top": "the diameter at the top; again for another place",
    "command.volume.bottom": "the diameter at the bottom; again for another place",
    "command.volume.ruler": "the step of the ruler in cm (0.1 unless given)",
    "command.volume.grams": "net mass of the water in grams; once for each filling",
    "command.volume.celsius": "temperature of the water in degrees Celsius",
    "command.volume.readability": "the step of the balance in grams (else from the digits)",
    "command.name.length": "The length",
    "command.name.width": "The width",
    "command.name.height": "The height",
    "command.name.diameter": "The diameter",
    "command.name.top": "The top",
    "command.name.bottom": "The bottom",
    "command.name.ruler": "The step of the ruler",
    "command.name.grams": "The mass of the water",
    "command.name.celsius": "The temperature",
    "command.volume.done": "{volume} cm³; 95 % sure: between {low} and {high}.",
    "command.volume.over_limit": "Note: More than {limit} cm³: too large for the event.",
    "command.volume.filled": (
        "Note: How exactly it was filled is not in it, unless --grams is given for several "
        "fillings."
    ),
    "volume.temperature": "The water must be between {least} and {most} °C, not {celsius}.",
    "typed.too_large": "{name} must be at most {limit}, not {text}.",
}
