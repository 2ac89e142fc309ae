"""Exercises in a motor that hums, with the slips that are made in them."""

from __future__ import annotations

from wirecalc import Case, Drawn, Exercise, Luck, Slip

_SHARES = ["0.35", "0.45", "0.6", "0.75", "0.85", "0.95", "1.0"]  # of the LRA at these volts


def _draw(luck: Luck) -> Drawn:
    rated = luck.reading(1.2, 6.5, "0.1", "A")
    locked = round(float(rated.split()[0]) * float(luck.pick(["4.6", "5.2", "5.8", "6.5"])))
    volts = luck.pick(["99 V", "102 V", "105 V", "108 V", "111 V", "119 V", "122 V"])
    amps = locked * float(luck.pick(_SHARES)) * float(volts.split()[0]) / 115
    given = {
        "high_current": f"{amps:.1f} A",
        "high_time": luck.reading(4, 12, "1", "s"),
        "rated_load_current": rated,
        "locked_rotor_current": f"{locked} A",
        "nameplate_voltage": "115 V",
        "voltage": volts,
    }
    return Drawn(given)


def _share(case: Case) -> float:
    return case.figure("share of locked-rotor current")


def _volts(case: Case) -> float:
    return case.value("voltage") / case.value("nameplate_voltage")


EXERCISES = (
    Exercise(
        "A compressor is marked RLA {rated_load_current}, LRA {locked_rotor_current} at "
        "{nameplate_voltage}. It hums for {high_time} and the clamp stays at {high_current} rms; "
        "meanwhile the plug has {voltage}.",
        "What share of the locked-rotor current at these volts is that?",
        _draw,
        _share,
        "%",
        "0.1",
        (
            Slip(
                "volts left out",
                "You took the LRA at the plate's volts; at other volts it is another.",
                lambda case: _share(case) * _volts(case),
            ),
            Slip(
                "volts upside down",
                "You put the plate's volts over those of the plug: fewer volts drive less current.",
                lambda case: _share(case) * _volts(case) ** 2,
            ),
            Slip(
                "RLA for LRA",
                "You worked with the running current of the plate.",
                lambda case: (
                    _share(case)
                    * case.value("locked_rotor_current")
                    / case.value("rated_load_current")
                ),
            ),
            Slip(
                "peak for rms",
                "You took 1.414 times the clamp's reading: it shows rms, and so does the plate.",
                lambda case: 2**0.5 * _share(case),
            ),
        ),
    ),
)
