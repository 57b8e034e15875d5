"""A sentence or two, and where to go from there."""

from __future__ import annotations

from kivy.properties import ObjectProperty

from kiosk.ui import kv_files
from kiosk.ui.presenters.views import MessageView
from kiosk.ui.screens.parts import StepSheet

kv_files.load(__file__)


class MessageSheet(StepSheet):
    """Shows a MessageView."""

    view = ObjectProperty(MessageView(), rebind=True)
