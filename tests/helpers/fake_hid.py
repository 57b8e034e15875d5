"""A stand-in for hidapi's module, with scales that a test plugs in and out.

It fails as the binding does: ``OSError`` without a number, the reason only in ``error()``.
"""

from __future__ import annotations

import sys
from collections import deque
from dataclasses import dataclass, field
from typing import Any

from pytest_mock import MockerFixture

from tests.helpers.hid_reports import SMALLEST

STALE = bytes([3, 4, 2, 0, 99, 0])


@dataclass
class FakeScale:
    """One device on the desk; ``refusal`` is why it cannot be opened, None if it can."""

    serial_number: str | None = "A7"
    vid: int = 0x1209
    pid: int = 0x0001
    product: str | None = "Pan"
    maker: str | None = "Larch Hill"
    usage: tuple[int, int] = (0x8D, 0x20)
    descriptor: bytes | None = SMALLEST
    refusal: str | None = None
    reports: deque[bytes] = field(default_factory=deque)

    def sends(self, *reports: bytes) -> None:
        """Queue these; the first one that is read after an opening counts as stale."""
        self.reports.extend(reports)


class FakeDevice:
    """What ``module.device()`` gives."""

    def __init__(self, module: FakeHid) -> None:
        self._module = module
        self._scale: FakeScale | None = None
        self._path = b""
        self._nonblocking = False
        self._error = ""
        self.limits: list[int] = []

    def open_path(self, path: bytes) -> None:
        scale = self._module.plugged.get(path)
        why = "No such file or directory" if scale is None else scale.refusal
        if scale is None or why is not None:
            self._error = f"Failed to open a device with path '{path.decode()}': {why}"
            raise OSError("open failed")
        self._scale, self._path = scale, path
        self._module.opened.append(self)

    def set_nonblocking(self, enable: int) -> int:
        self._nonblocking = bool(enable)
        return 0

    def read(self, max_length: int, timeout_ms: int = 0) -> list[int]:
        if self._scale is None:
            raise ValueError("not open")
        if self._module.plugged.get(self._path) is not self._scale:
            raise OSError("read error")
        assert timeout_ms > 0 or self._nonblocking, "this read would wait for ever"
        self.limits.append(timeout_ms)
        return list(self._scale.reports.popleft()[:max_length]) if self._scale.reports else []

    def get_report_descriptor(self) -> list[int]:
        if self._scale is None or self._scale.descriptor is None:
            raise OSError("get report descriptor error")
        return list(self._scale.descriptor)

    def write(self, data: bytes) -> int:
        raise AssertionError(f"{data!r} was sent to a scale")

    def error(self) -> str:
        return self._error

    def close(self) -> None:
        self._scale = None
        self._module.closed.append(self)


class FakeHid:
    """The module: ``plugged`` holds the devices by path."""

    def __init__(self) -> None:
        self.plugged: dict[bytes, FakeScale] = {}
        self.opened: list[FakeDevice] = []
        self.closed: list[FakeDevice] = []

    def plug(self, scale: FakeScale, path: bytes = b"/dev/hidraw0") -> FakeScale:
        """Plug a device in under a path."""
        self.plugged[path] = scale
        return scale

    def unplug(self, path: bytes = b"/dev/hidraw0") -> None:
        """Pull it out."""
        del self.plugged[path]

    def device(self) -> FakeDevice:
        return FakeDevice(self)

    def enumerate(self) -> list[dict[str, Any]]:
        return [self._entry(path, scale) for path, scale in self.plugged.items()]

    def _entry(self, path: bytes, scale: FakeScale) -> dict[str, Any]:
        return {
            "path": path,
            "vendor_id": scale.vid,
            "product_id": scale.pid,
            "serial_number": scale.serial_number,
            "release_number": 1,
            "manufacturer_string": scale.maker,
            "product_string": scale.product,
            "usage_page": scale.usage[0],
            "usage": scale.usage[1],
            "interface_number": 0,
            "bus_type": 1,
        }


def keyboard() -> FakeScale:
    """Something else on the desk, which must never be opened."""
    return FakeScale(usage=(0x01, 0x06), product="Keys", refusal="a keyboard was opened")


def installed(mocker: MockerFixture) -> FakeHid:
    """Puts a stand-in in the place of hidapi's modules, whatever the system."""
    module = FakeHid()
    mocker.patch.dict(sys.modules, {"hid": module, "hidraw": module})
    return module
