"""The package hidapi, the only place that knows it: which devices there are, and how to open one.

Its wheel for Linux brings two modules, and only ``hidraw`` fills in the usage by which a scale is
known; on other systems there is just ``hid``. Another package brings a module ``hid`` too.
"""

from __future__ import annotations

import sys
from collections.abc import Sequence
from importlib import import_module
from typing import Any, Protocol, cast

from drivers.errors import PortUnavailable, Reason


class OpenedDevice(Protocol):
    """What we use of a device of hidapi; all of it may raise OSError, or ValueError when closed."""

    def open_path(self, path: bytes) -> None:
        """Open it."""

    def set_nonblocking(self, enable: int) -> int:
        """Else a read without a time limit would wait for ever."""

    def read(self, max_length: int, timeout_ms: int) -> Sequence[int]:
        """One report; empty when none came."""

    def get_report_descriptor(self) -> Sequence[int]:
        """What it says of its reports."""

    def error(self) -> str:
        """The last failure in words of the system."""

    def close(self) -> None:
        """Let go of it."""


class Binding(Protocol):
    """What we use of hidapi."""

    def device(self) -> OpenedDevice:
        """A device, not yet open."""

    def enumerate(self) -> list[dict[str, Any]]:
        """All that is plugged in; opens nothing that matters to others."""


def binding() -> Binding:
    """The module of hidapi for this system. PortUnavailable if it is not there, or another is."""
    linux = sys.platform.startswith("linux")
    try:
        module = import_module("hidraw") if linux else import_module("hid")
    except ImportError as error:
        why = f"the Python package hidapi is missing or broken ({error}); pip install hidapi"
        raise PortUnavailable(Reason.OTHER, why) from error
    if not hasattr(module, "device"):
        why = (
            f"the module {module.__name__} is not that of the Python package hidapi; remove the "
            "other package (pip uninstall hid), then pip install --force-reinstall hidapi"
        )
        raise PortUnavailable(Reason.OTHER, why)
    return cast(Binding, module)
