"""Texts: opening the kiosk, and the tour."""

from __future__ import annotations

TEXTS: dict[str, str | tuple[str, str]] = {
    "kiosk.help": "open the kiosk",
    "kiosk.scale": (
        "where the balance is: a serial port, hid:..., socket://host:port, 'auto' (the one "
        "chosen last, else the kiosk asks), 'typed' (no cable: an adult types what it shows), or "
        "'simulated' (the default)"
    ),
    "kiosk.records": "a file for the records (else one in the user's data folder)",
    "kiosk.new_code": "let the coach choose a new code, when the old one is forgotten",
    "kiosk.window": "the size of the window in pixels, such as 800x480",
    "kiosk.full_screen": "fill the whole screen",
    "kiosk.bad_window": "{text} is no window size: write it like 800x480",
    "kiosk.small_window": "the window needs {width}x{height} pixels at the least",
    "kiosk.unseen": (
        "There is no display, so the kiosk runs unseen. "
        "To see its screens as pictures: gramstand tour --pictures FOLDER"
    ),
    "kiosk.no_window": (
        "No window can be opened: {why}. On Debian or Ubuntu: sudo apt-get install libgl1 libegl1"
    ),
    "kiosk.no_graphics": "the system has no OpenGL libraries",
    "kiosk.bad_settings": "The settings file {file} cannot be used: {why}",
    "tour.help": "walk the kiosk by touch on the simulated balance, save a picture of each screen",
    "tour.pictures": "the folder for the pictures; made if it is not there",
    "tour.size": "the size of the window in pixels (1024x600 unless said)",
    "tour.records": "a file for the records of the tour (else one that is thrown away)",
    "tour.saved": ("{count} picture in {folder}", "{count} pictures in {folder}"),
    "tour.folder": "Pictures cannot be saved in {folder}: {why}",
    "tour.stuck": "The tour got stuck: {why}",
}
