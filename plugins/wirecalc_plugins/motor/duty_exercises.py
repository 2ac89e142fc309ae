"""Exercises in running time and the energy of a day, with the slips that are made in them."""

from __future__ import annotations

from wirecalc import Case, Drawn, Exercise, Luck, Slip

_CYCLES = 3


def _draw(luck: Luck) -> Drawn:
    on = [luck.reading(8, 26, "1", "min") for _ in range(_CYCLES)]
    off = [luck.reading(10, 38, "1", "min") for _ in range(_CYCLES)]
    power = luck.reading(60, 220, "1", "W")
    given: dict[str, str | list[str]] = {"on_times": on, "off_times": off, "running_power": power}
    return Drawn({**given, "after_restock": "no", "inverter": "no"})


def _minutes(case: Case, name: str) -> float:
    return sum(float(text.split()[0]) for text in case.drawn.given[name])


def _share(case: Case) -> float:
    return case.figure("duty")


def _energy(case: Case) -> float:
    return case.figure("energy in a day")


_TIMED = (
    "A refrigerator without an inverter, not filled or defrosted of late, was timed with its door "
    "shut. It ran for {on_times}, and stood for {off_times}, by turns."
)
_REST = "rest for run", "You counted the time that it stands for the time that it runs."

EXERCISES = (
    Exercise(
        _TIMED,
        "What share of the time does it run?",
        _draw,
        _share,
        "%",
        "0.1",
        (
            Slip(
                "on over off",
                "You put the time on over the time off; both together are the whole.",
                lambda case: 100 * _minutes(case, "on_times") / _minutes(case, "off_times"),
            ),
            Slip(*_REST, lambda case: 100 - _share(case)),
            Slip(
                "an hour for the whole",
                "You put the minutes on over an hour; all the time it was watched counts.",
                lambda case: 100 * _minutes(case, "on_times") / 60,
            ),
            Slip(
                "one cycle for all",
                "You took the first cycle alone; the times of all of them count.",
                lambda case: _share(_first_cycle(case)),
            ),
        ),
    ),
    Exercise(
        f"{_TIMED} While it runs the power meter shows {{running_power}}.",
        "How much energy does it use in a day?",
        _draw,
        _energy,
        "kWh",
        "0.01",
        (
            Slip(
                "on all day",
                "You took it to run for 24 hours; it runs for its share of them.",
                lambda case: 24 * case.value("running_power") / 1000,
            ),
            Slip(*_REST, lambda case: _energy(case) * (100 - _share(case)) / _share(case)),
            Slip(
                "an hour for a day",
                "This is the energy of one hour; a day has 24 of them.",
                lambda case: _energy(case) / 24,
            ),
            Slip(
                "Wh for kWh",
                "These are watt-hours; a kilowatt-hour is a thousand of them.",
                lambda case: 1000 * _energy(case),
            ),
        ),
    ),
)


def _first_cycle(case: Case) -> Case:
    first = {name: [case.drawn.given[name][0]] for name in ("on_times", "off_times")}
    return case.but(**first)
