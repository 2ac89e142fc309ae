"""Exercises in leakage current, with the slips that are made in them."""

from __future__ import annotations

from wirecalc import Case, Drawn, Exercise, Luck, Slip

_SUM = "share of the 4 mA of a GFCI"
_IEC, _VDE = "most by iec-60335-1", "most by vde-0701-0702"
_CLOSED = "leakage current"
_MUST, _MAY = 6.0, 4.0  # mA at which a GFCI of class A must trip, and may


def _draw_sum(luck: Luck) -> Drawn:
    given: dict[str, str | list[str]] = {
        "leakage_current": luck.reading(0.20, 0.90, "0.01", "mA"),
        "machine_kind": "refrigerator",
        "switched_on": "yes",
        "on_gfci": "yes",
        "other_leakage": [luck.reading(0.30, 1.50, "0.01", "mA") for _ in range(2)],
    }
    return Drawn(given)


def _draw_heater(luck: Luck) -> Drawn:
    watts = luck.pick([1500, 2000, 2400, 3000, 3800, 4500, 5500])
    most = 0.75 * watts / 1000
    given = {
        "leakage_current": luck.reading(0.7 * most, 1.3 * most, "0.01", "mA"),
        "machine_kind": "heater",
        "leakage_standard": "iec-60335-1",
        "connection": "wired-in",
        "nameplate_power": f"{watts} W",
        "switched_on": "yes",
    }
    return Drawn(given)


def _share(case: Case) -> float:
    return case.figure(_SUM)


def _each(case: Case) -> list[float]:
    others = [float(text.split()[0]) for text in case.drawn.given["other_leakage"]]
    return [case.value("leakage_current"), *others]


def _most(case: Case) -> float:
    return case.figure(_IEC)


EXERCISES = (
    Exercise(
        "With all of it on, the leakage clamp shows {leakage_current} at a refrigerator. On the "
        "same GFCI hang two more machines that leak {other_leakage}. It is of class A, and may "
        "trip from 4 mA on.",
        "What share of those 4 mA can they reach together?",
        _draw_sum,
        _share,
        "%",
        "0.1",
        (
            Slip(
                "the others left out",
                "You took the refrigerator alone; the GFCI sees all that hangs on it.",
                lambda case: 100 * _each(case)[0] / _MAY,
            ),
            Slip(
                "6 mA for 4 mA",
                "At 6 mA it must have tripped; from 4 mA on it may.",
                lambda case: _share(case) * _MAY / _MUST,
            ),
            Slip(
                "mean for sum",
                "You took the mean of them; the GFCI sees their sum.",
                lambda case: _share(case) / len(_each(case)),
            ),
            Slip(
                "root of the squares",
                "You took the root of the squares; they can all be in step, and then the plain sum "
                "flows.",
                lambda case: 100 * sum(ma**2 for ma in _each(case)) ** 0.5 / _MAY,
            ),
        ),
    ),
    Exercise(
        "A wired-in heating appliance of class I, {nameplate_power} by its plate, leaks "
        "{leakage_current} with all of it on. IEC 60335-1 allows such a one the larger of 0.75 mA "
        "and 0.75 mA per kW, at most 5 mA.",
        "How much may it leak at most?",
        _draw_heater,
        _most,
        "mA",
        "0.01",
        (
            Slip(
                "its power left out",
                "You took 0.75 mA; it is that for every kW of its plate.",
                lambda case: _most(case) * 1000 / case.value("nameplate_power"),
            ),
            Slip(
                "row of the other standard",
                "This is the limit of DIN VDE 0701-0702; IEC 60335-1 is asked for.",
                lambda case: case.figure(_VDE),
            ),
            Slip(
                "its cap for its limit",
                "5 mA is the most of any power; this one has less.",
                lambda _: 5.0,
            ),
            Slip(
                "row of another machine",
                "This is the limit of a refrigerator.",
                lambda case: case.but(machine_kind="refrigerator").figure(_IEC),
            ),
            Slip(
                "the reading for the limit",
                "This is what it leaks; what it may leak is asked for.",
                lambda case: case.value("leakage_current"),
            ),
        ),
        judged=_CLOSED,
        meter={"leakage_current": "±(3%+5)"},
    ),
)
