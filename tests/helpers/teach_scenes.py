"""Teaching in every state, from balances of many styles: the longest lines and masses."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache

from drivers.errors import Reason
from drivers.events import Lost
from drivers.learning.findings import Learned, Refusal, Study
from drivers.learning.learner import study
from drivers.packet import Packet
from drivers.passive_line import SettingsTried
from drivers.transports.port_settings import PortSettings
from kiosk.texts import say
from kiosk.ui.lesson import SLOW_S, Lesson
from kiosk.ui.presenters.scene import Scene
from kiosk.ui.presenters.teach_views import teach_pan, teach_view
from kiosk.ui.presenters.views import StripView
from tests.helpers.line_styles import KINDS, Stream, kind

NAME = "Scale 188"
STRIP = StripView(
    connected=True, words=("Scale connected", "The scale", "new kind"), lock="coach",
    lock_text="coach",
)  # fmt: skip
LONG = kind(
    "Larch Hill Middle School {clock} {mark} {signed} {unit} practice pan", "STABLE", "MOVE"
)
STYLES = KINDS | {"long": LONG}
Change = Callable[[Lesson], None]


@cache
def taught(style: str, *loads: float) -> tuple[Packet, ...]:
    """What a balance sends while its load is one after the other of these."""
    stream = Stream(STYLES[style])
    for grams in (0.0, *loads):
        stream.put(grams)
        stream.run(3.0)
    return tuple(stream.packets)


def lesson(packets: tuple[Packet, ...]) -> Lesson:
    """A lesson that heard all of it, and studied it in the end."""
    made = Lesson(0.0)
    for packet in packets:
        if packet.data:
            made.heard(packet)
    if packets:
        made.tick(packets[-1].at)
        made.studied(study(packets, NAME), made.watched_for)
        made.tick(packets[-1].at)
    return made


def scene(made: Lesson) -> Scene:
    return Scene(sheet=teach_view(made, NAME), pan=teach_pan(made), strip=STRIP)


def of(style: str, *loads: float, then: Change | None = None) -> Callable[[], Scene]:
    """The scene after these loads, and after what else happens."""

    def make() -> Scene:
        made = lesson(taught(style, *loads))
        if then is not None:
            then(made)
        return scene(made)

    return make


def later(made: Lesson) -> None:
    made.tick(made.now + SLOW_S)


def nothing_comes() -> Scene:
    made = lesson(())
    made.tick(10.0)
    return scene(made)


def garbage(made: Lesson) -> None:
    made.heard(SettingsTried(settings=PortSettings(), all_failed=True, at=0.0))
    made.heard(Packet(0.1, bytes(range(128, 180)) + b"\r\n" + bytes(range(60))))
    made.tick(0.2)


def lost(reason: Reason) -> Change:
    return lambda made: made.heard(Lost(reason=reason, detail="", at=made.now))


def refused(refusal: Refusal) -> Change:
    def twice(made: Lesson) -> None:
        for _ in range(2):
            made.studied(Study(found=refusal), made.watched_for)

    return twice


def unwritable(made: Lesson) -> None:
    made.problem = say("teach.not_kept", why="No space left on device")


def kept(made: Lesson) -> None:
    assert isinstance(made.learned, Learned)
    made.kept = made.learned.shape


THREE = (1234.56, 0.0, 52.18, 0.0, 777.77, 0.0)

SCENES: dict[str, Callable[[], Scene]] = {
    "teach, listening": lambda: scene(lesson(())),
    "teach, empty": of("clock before"),
    "teach, on": of("clock before", 1234.56),
    "teach, once": of("clock before", 1234.56, 0.0),
    "teach, again on": of("kilograms", 1234.5, 0.0, 1111.1),
    "teach, wrapped": of("STX and ETX", 1234.56, 0.0, 52.18),
    "teach, brackets": of("brackets alone", 1234.56, 0.0),
    "teach, long lines": of("long", 1234.56, 0.0, 52.18),
    "teach, to keep": of("clock before", *THREE),
    "teach, not kept": of("clock before", *THREE, then=unwritable),
    "teach, kept": of("clock before", *THREE, then=kept),
    "teach, too light": of("clock before", then=later),
    "teach, left on": of("clock before", 1234.56, then=later),
    "teach, silent": nothing_comes,
    "teach, garbage": of("clock before", then=garbage),
    "teach, unplugged": of("clock before", *THREE, then=lost(Reason.UNPLUGGED)),
    "teach, not allowed": of("clock before", then=lost(Reason.NOT_ALLOWED)),
    **{
        f"teach, refused: {refusal}": of("long", 52.18, then=refused(refusal))
        for refusal in (Refusal.TWO_FIELDS, Refusal.NO_UNIT, Refusal.UNCLEAR)
    },
}
