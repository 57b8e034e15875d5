"""hidapi under its two names, missing, and mistaken for another package."""

import sys
from types import ModuleType

import pytest
from pytest_mock import MockerFixture

from drivers.errors import PortUnavailable, Reason
from drivers.transports.hid_binding import binding
from tests.helpers.fake_hid import FakeHid


@pytest.mark.parametrize(
    ("system", "name"), [("linux", "hidraw"), ("win32", "hid"), ("darwin", "hid")]
)
def test_each_system_has_its_module(mocker: MockerFixture, system: str, name: str) -> None:
    module = FakeHid()
    mocker.patch("drivers.transports.hid_binding.sys.platform", system)
    mocker.patch.dict(sys.modules, {"hid": None, "hidraw": None, name: module})
    assert binding() is module


def test_a_missing_package_is_named(mocker: MockerFixture) -> None:
    mocker.patch.dict(sys.modules, {"hid": None, "hidraw": None})
    with pytest.raises(PortUnavailable, match="hidapi is missing or broken") as caught:
        binding()
    assert caught.value.reason is Reason.OTHER


def test_another_package_of_that_name_is_noticed(mocker: MockerFixture) -> None:
    other = ModuleType("hid")
    mocker.patch.dict(sys.modules, {"hid": other, "hidraw": other})
    with pytest.raises(PortUnavailable, match="is not that of the Python package hidapi"):
        binding()


@pytest.mark.parametrize("name", ["open_path", "read", "get_report_descriptor", "error", "close"])
def test_the_installed_package_has_what_is_used(name: str) -> None:
    assert hasattr(binding().device(), name)


def test_the_installed_package_can_look_for_devices() -> None:
    wanted = {
        "path", "vendor_id", "product_id", "serial_number", "product_string",
        "manufacturer_string", "usage_page", "usage",
    }  # fmt: skip
    assert all(wanted <= entry.keys() for entry in binding().enumerate())
