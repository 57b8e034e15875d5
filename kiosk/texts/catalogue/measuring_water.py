"""Texts: measuring any container with water."""

from __future__ import annotations

TEXTS: dict[str, str | tuple[str, str]] = {
    "measure.shape.water": "any, with water",
    "measure.shape.water.note": "what it holds inside",
    "water.step": "Step {step} of {steps}: {what}",
    "water.step.1": "the water",
    "water.step.2": "empty",
    "water.step.3": "full",
    "water.step.4": "volume",
    "water.resume.title": "Go on with this container?",
    "water.resume.body": "A container with water was left half weighed.",
    # Water and electronics
    "water.caution.title": "Keep the water away from the scale.",
    "water.caution.fill": "Fill it beside the scale, over a tray. Never on the pan.",
    "water.caution.wipe": "Wipe it dry outside before it goes on: nothing may drip.",
    "water.caution.local": "Your school's rules for water near electricity come first.",
    "water.caution.ready": "The water is ready",
    "water.caution.other": "Other shapes",
    # How warm
    "water.warmth.title": "How warm is the water?",
    "water.warmth.label": "The water has",
    "water.warmth.unit": "°C",
    "water.warmth.hint": "Let it stand in the room first.",
    "water.warmth.keep": "Keep {celsius} °C",
    "water.warmth.type": "Type it",
    "water.warmth.cold": "Only {least} to {most} °C, please.",
    "water.warmth.warm": "Only {least} to {most} °C. Fahrenheit?",
    "water.sure.title": "Is {celsius} °C right?",
    "water.sure.body": (
        "Water from the tap that has stood in a room has about 15 to 25 °C. "
        "Look at the thermometer once more."
    ),
    "water.sure.yes": "Yes, keep it",
    "water.sure.no": "Type it again",
    # On the pan
    "water.clear.body": "Then put the container on, empty and dry.",
    "water.empty.title": "Put it on, empty and dry.",
    "water.empty.body": "Inside and outside: a drop left in it is missing later.",
    "water.lift.title": "Take it off and fill it.",
    "water.lift.body": "Up to the brim, beside the scale.",
    "water.lift.kept": "Empty, it weighs {mass}.",
    "water.lift.full": "Full, it weighs {mass}.",
    "water.filled.title": "Put it on, full to the brim.",
    "water.filled.body": "Wipe it dry outside first. Carry it level.",
    "water.filled.wait": "Waiting for the full container",
    "water.lift.wait": "Waiting for an empty pan",
    "water.not_full.title": "There is hardly water in it.",
    "water.not_full.body": (
        "Take it off and fill it up to the brim. If it was full before, weigh it empty again."
    ),
    "water.undo.empty": "Empty\nagain",
    "water.undo.filled": "Undo\n{mass}",
    "water.too_heavy.title": "Too heavy for this scale.",
    "water.too_heavy.off": "Take it off at once.",
    "water.too_heavy.then": (
        "Measure its sizes with a ruler instead, or weigh it on a scale that takes more."
    ),
    "water.too_heavy.sizes": "Measure its sizes",
    "water.too_heavy.again": "Weigh\nagain",
    # The volume
    "water.pan.label": "water in it",
    "water.pan.line": "at {celsius} °C",
    "water.fillings": ("filled once, {celsius} °C", "filled {count} times, {celsius} °C"),
    "water.more": "Fill it\nagain",
    "water.last_again": "Last one\nagain",
    "water.one_filling": "Filled once: how exactly, nobody knows. Fill it again to see.",
    "water.to_result": "See the volume",
    "water.leave.body": "What was weighed is kept. Go on with it later.",
    # The card
    "paper.water.brim": "Measured with water: the volume is what it holds up to the brim.",
    "paper.water.empty": "empty",
    "paper.water.filled": "full, {celsius} °C",
    # The bench
    "bench.vase": "vase",
    "bench.fill_vase": "fill it, {celsius} °C",
    "bench.empty_vase": "empty it",
}
