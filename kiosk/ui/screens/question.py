"""A question with two answers."""

from __future__ import annotations

from kivy.properties import ObjectProperty

from kiosk.ui import kv_files
from kiosk.ui.presenters.views import QuestionView
from kiosk.ui.screens.parts import StepSheet

kv_files.load(__file__)


class QuestionSheet(StepSheet):
    """Shows a QuestionView."""

    view = ObjectProperty(QuestionView(), rebind=True)
