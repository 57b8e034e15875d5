"""Texts: the drawer of the scale."""

from __future__ import annotations

TEXTS: dict[str, str | tuple[str, str]] = {
    "home.scale": "The\nscale",
    "strip.scale": "The scale",
    "scale.title": "This is the scale.",
    "scale.missing.title": "The scale is not heard.",
    "scale.trying.title": "Listening to the scale.",
    "scale.trying.body": (
        "Switch it on. Put something on it and take it off.\nThis takes some seconds."
    ),
    "scale.unknown.title": "This scale speaks in its own way.",
    "scale.unknown.body": (
        "Something comes, but no mass that the kiosk knows how to read.\n"
        "Teach it: that takes a minute and needs a cup."
    ),
    "scale.silent.title": "Nothing comes from this cable.",
    "scale.silent.body": (
        "Is the scale switched on, and is it this cable? "
        "Many need a setting that makes them send.\nThen teach the kiosk, or choose another one."
    ),
    "scale.none": "no scale chosen",
    "scale.step": "step",
    "scale.most": "most",
    "scale.check": "Check the scale",
    "scale.teach": "Teach the kiosk",
    "scale.other": "Another\nscale",
    "scale.wait": "Waiting for the scale",
    "scales.title": "Which scale?",
    "scales.hid": "USB scale",
    "scales.serial": "Cable",
    "scales.network": "Scale on the network",
    "scales.typed": "No cable",
    "scales.typed.note": "An adult types what the scale shows.",
    "scales.simulated": "Simulated scale",
    "scales.simulated.note": "For trying things out. Nothing counts.",
    "scales.note": "Compare with the cable in your hand. Nothing is sent before you choose.",
    "scales.none": "No cable is found. Plug it in, switch the scale on, then look again.",
    "scales.again": "Look again",
}
