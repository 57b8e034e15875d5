"""The tone of the cup table: made here, and missed by nobody where there is no loudspeaker."""

from __future__ import annotations

import wave
from pathlib import Path
from typing import Any

import pytest

from kiosk.ui.tone import RATE, SECONDS, Tone, samples, write


class Player:
    """What a sound library hands out."""

    def __init__(self) -> None:
        self.calls: list[str] = []

    def stop(self) -> None:
        self.calls.append("stop")

    def play(self) -> None:
        self.calls.append("play")


class Loader:
    """Stands where the sound library stands."""

    def __init__(self, player: Player | Exception | None) -> None:
        self.player = player
        self.loaded: list[str] = []

    def load(self, path: str) -> Player | None:
        self.loaded.append(path)
        if isinstance(self.player, Exception):
            raise self.player
        return self.player


def with_loader(monkeypatch: pytest.MonkeyPatch, player: Any) -> Loader:
    import kivy.core.audio

    loader = Loader(player)
    monkeypatch.setattr(kivy.core.audio, "SoundLoader", loader)
    return loader


def wanted() -> Tone:
    tone = Tone()
    tone.wanted = True
    return tone


def test_the_tone_is_a_plain_wav_file(tmp_path: Path) -> None:
    write(tmp_path / "tone.wav")
    with wave.open(str(tmp_path / "tone.wav")) as file:
        assert (file.getnchannels(), file.getsampwidth(), file.getframerate()) == (1, 2, RATE)
        assert file.getnframes() == round(RATE * SECONDS)


def test_it_begins_and_ends_in_silence() -> None:
    tones = samples()
    assert tones[0] == tones[-1] == 0
    assert max(tones) > 8000


def test_it_is_loaded_once_and_played_each_time(monkeypatch: pytest.MonkeyPatch) -> None:
    player = Player()
    loader = with_loader(monkeypatch, player)
    tone = wanted()
    tone.sound()
    tone.sound()
    assert player.calls == ["stop", "play"] * 2
    assert len(loader.loaded) == 1


@pytest.mark.parametrize("player", [None, OSError("no device")])
def test_without_anything_to_sound_it_nothing_happens(
    monkeypatch: pytest.MonkeyPatch, player: Exception | None
) -> None:
    loader = with_loader(monkeypatch, player)
    tone = wanted()
    tone.sound()
    tone.sound()
    assert len(loader.loaded) == 1


def test_turned_off_it_looks_for_nothing(monkeypatch: pytest.MonkeyPatch) -> None:
    loader = with_loader(monkeypatch, Player())
    Tone().sound()
    assert loader.loaded == []
