"""The highest values of a waveform: what noise and the meter leave of them."""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any

import pytest

from wirecalc_plugins.trace import wave_figures
from wirecalc_plugins.trace.plate_view import Ends


def _crest(monkeypatch: pytest.MonkeyPatch, noise: float) -> tuple[Any, dict[str, float]]:
    """Return the meter and the shares with which the crest of 3 A is shown."""
    monkeypatch.setattr(wave_figures, "banded", lambda *given, **more: (given, more))
    wave = SimpleNamespace(
        rectified=False,
        offset=0.0,
        drift=(0.0, 0.0),
        noise=noise,
        per_cycle=64.0,
        frequency=60.0,
        clock=SimpleNamespace(holes=0, jitter=0, step=1 / 3840),
        trapezoids=0.0,
        begins=0.0,
    )
    found: Any = SimpleNamespace(wave=wave, highest=2.1, begun=[], crest=3.0)
    recording: Any = SimpleNamespace(overview=SimpleNamespace(high=(3.0,), low=(-2.5,)))
    nothing: Any = dict.fromkeys(Ends._fields)
    ends = Ends(**nothing)._replace(doubt=0.2, blur=0.3)
    given, more = next(iter(wave_figures.highest(recording, found, ends)))
    assert given[1] == 3.0
    return given[2], more


@pytest.mark.parametrize(("noise", "least"), [(0.0, 1.0), (0.15, 0.8), (0.75, 0.0), (1.0, 0.0)])
def test_noise_of_a_quarter_of_the_crest_may_be_all_of_it(
    monkeypatch: pytest.MonkeyPatch, noise: float, least: float
) -> None:
    """Four times its rms makes a crest higher (common practice); no crest is under nothing."""
    _, more = _crest(monkeypatch, noise)
    assert more["least"] == pytest.approx(least)


def test_a_crest_is_one_reading_and_has_no_doubt_of_a_mean(monkeypatch: pytest.MonkeyPatch) -> None:
    meter, _ = _crest(monkeypatch, 0.0)
    assert (meter.doubt, meter.blur) == (0.0, 0.0)
