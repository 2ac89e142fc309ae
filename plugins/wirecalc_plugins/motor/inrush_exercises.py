"""Exercises in the start of a motor, with the slips that are made in it."""

from __future__ import annotations

from wirecalc import Case, Drawn, Exercise, Luck, Slip

_MOST = "expected start current, most"
_CREST = 2**0.5


def _draw(luck: Luck) -> Drawn:
    rated = luck.reading(1.2, 7.0, "0.1", "A")
    locked = round(float(rated.split()[0]) * float(luck.pick(["4.6", "5.2", "5.8", "6.5"])))
    given = {
        "rated_load_current": rated,
        "locked_rotor_current": f"{locked} A",
        "nameplate_voltage": "115 V",
        "voltage": luck.pick(["105 V", "108 V", "110 V", "118 V", "121 V", "124 V"]),
        "peak": f"{locked * float(luck.pick(['0.9', '1.0', '1.1', '1.14', '1.2'])):.1f} A",
        "settled": f"{float(rated.split()[0]) * 0.8:.2f} A",
        "settle_time": luck.reading(0.2, 0.8, "0.1", "s"),
        "meter_mode": "inrush",
    }
    return Drawn(given)


def _most(case: Case) -> float:
    return case.figure(_MOST)


EXERCISES = (
    Exercise(
        "A compressor is marked RLA {rated_load_current}, LRA {locked_rotor_current} at "
        "{nameplate_voltage}. The supply reads {voltage} while it starts. A clamp that holds the "
        "rms of the start shows {peak}; it settles at {settled} after {settle_time}.",
        "What is the most that such a clamp should show at these volts, 12 % over the LRA allowed?",
        _draw,
        _most,
        "A",
        "0.1",
        (
            Slip(
                "volts left out",
                "You took the LRA at the plate's volts; the start goes with those of the supply.",
                lambda case: _most(case.but(voltage="115 V")),
            ),
            Slip(
                "peak for rms",
                "This is the crest, 1.414 times the rms value that the clamp shows.",
                lambda case: _CREST * _most(case),
            ),
            Slip(
                "RLA for LRA",
                "You worked with the running current of the plate.",
                lambda case: (
                    _most(case)
                    * case.value("rated_load_current")
                    / case.value("locked_rotor_current")
                ),
            ),
            Slip(
                "least for most",
                "This is the least that may be expected; the most is asked for.",
                lambda case: case.figure("expected start current, least"),
            ),
        ),
    ),
)
