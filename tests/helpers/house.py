"""The house as data: its rooms, their levels, and what each room must not know."""

from __future__ import annotations

# A room uses only what lies on a lower level; rooms on one level do not know each other.
LEVELS = {
    "kiosk.__main__": 6,
    "kiosk.commands": 5,
    "kiosk.ui": 4,
    "kiosk.procedures": 3,
    "kiosk.weighing": 2,
    "kiosk.reports": 2,
    "kiosk.rounds": 2,
    "drivers": 1,
    "kiosk.estimating": 1,
    "kiosk.records": 1,
    "kiosk.evidence": 0,
    "kiosk.texts": 0,
    "kiosk.settings": 0,
}
PORTS = (
    "drivers.balance",
    "drivers.discovery",
    "drivers.passive_line",
    "drivers.port",
    "drivers.recorder",
    "drivers.simulated",
    "drivers.transports",
)
NEVER = {  # although it lies below
    "drivers": ("kiosk",),
    "kiosk.reports": ("drivers",),
    "kiosk.rounds": ("drivers",),
    "kiosk.weighing": PORTS,
    "kiosk.procedures": PORTS,
}
ONLY_IN = {
    "kivy": ("kiosk.ui", "kiosk.commands.open_kiosk", "kiosk.commands.tour"),  # they show a window
    "serial": ("drivers.transports", "drivers.discovery"),
    "hid": ("drivers.transports.hid_binding",),
    "hidraw": ("drivers.transports.hid_binding",),
    "socket": ("drivers.transports", "drivers.simulated"),
    "sqlalchemy": ("kiosk.records",),
    "sqlite3": ("kiosk.records",),
    "threading": (
        "drivers.balance",
        "drivers.passive_line",
        "drivers.simulated",
        "kiosk.records.changes",
        "kiosk.records.watcher",
        "kiosk.records.writer",
    ),
}
WORLD = (
    "asyncio", "concurrent", "io", "multiprocessing", "os", "pathlib", "queue", "select",
    "selectors", "shutil", "signal", "socket", "subprocess", "tempfile", "threading", "time",
)  # fmt: skip
WORLDLY_CALLS = {
    "open", "input", "print",
    "date.today", "datetime.now", "datetime.today", "datetime.utcnow",
}  # fmt: skip
PURE = (
    "drivers.dialects",
    "drivers.errors",
    "drivers.events",
    "drivers.framing",
    "drivers.learning",
    "drivers.line_framing",
    "drivers.line_shape",
    "drivers.line_text",
    "drivers.packet",
    "drivers.passive_listening",
    "drivers.reading",
    "drivers.units",
    "drivers.simulated.weighing_pan",
    "kiosk.estimating",
    "kiosk.evidence",
    "kiosk.procedures",
    "kiosk.rounds",
    "kiosk.settings",
    "kiosk.weighing",
)

NO_WINDOW_NO_PORT = ("kivy", "serial", "hid", "hidraw")
COMES_ALONE = {  # room: (rooms in it that are left out, what must not come along)
    "drivers": (PORTS, ("kiosk", *NO_WINDOW_NO_PORT, "sqlalchemy")),
    "kiosk.weighing": ((), (*NO_WINDOW_NO_PORT, "sqlalchemy", *PORTS)),
    "kiosk.estimating": ((), (*NO_WINDOW_NO_PORT, "sqlalchemy", "drivers")),
    "kiosk.procedures": ((), (*NO_WINDOW_NO_PORT, "sqlalchemy", *PORTS)),
    "kiosk.evidence": ((), (*NO_WINDOW_NO_PORT, "sqlalchemy", "drivers")),
    "kiosk.texts": ((), (*NO_WINDOW_NO_PORT, "sqlalchemy", "drivers")),
    "kiosk.settings": ((), (*NO_WINDOW_NO_PORT, "sqlalchemy", "drivers")),
    "kiosk.records": ((), (*NO_WINDOW_NO_PORT, "drivers")),
    "kiosk.reports": ((), (*NO_WINDOW_NO_PORT, "drivers")),
    "kiosk.rounds": ((), (*NO_WINDOW_NO_PORT, "sqlalchemy", "drivers")),
    "kiosk.__main__": ((), ("kivy", "sqlalchemy")),  # the first picture does not wait for them
}
