"""The keys of drills, recomputed by hand: the arithmetic and the tables below are of this file.

Nothing here asks a calculation. The resistances are those of NEC chapter 9 table 8 (stranded
copper, uncoated, 75 C), the ampacities those of NEC table 310.16 with its corrections for 30 C and
its adjustments 310.15(C)(1), the pulls those of UL 486A (8th edition), the allowances of a strip
those of NASA-STD-8739.4 (clearance of the insulation, from 18 AWG) with 0.8 mm of wire past the
barrel (common practice, no source), and the brush of an open barrel; the most of a start is 12 %
over the locked-rotor amps, as the question on the sheet says it.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from itertools import pairwise

import pytest
from hypothesis import settings

import wirecalc
from wirecalc.drills.questions import Maker, Question
from wirecalc.drills.recipe import CHOOSE, JUDGE, Recipe

from . import drilled
from .drilled import Told, n
from .records import independent

BY_DAY, BY_NIGHT = 4, 1000
OHM_PER_KFT = {"14": 3.14, "12": 1.98, "10": 1.24}
AMPS = {  # 75 C, 90 C
    "14": (20, 25),
    "12": (25, 30),
    "10": (35, 40),
    "8": (50, 55),
    "6": (65, 75),
}
WARM = {30: (1.0, 1.0), 35: (0.94, 0.96), 40: (0.88, 0.91), 45: (0.82, 0.87), 50: (0.75, 0.82)}
CROWDED = {"3": 1.0, "4": 0.8, "6": 0.8, "8": 0.7, "9": 0.7}
LEAST_PULL = {"22": 8, "20": 13, "18": 20, "16": 30, "14": 50, "12": 70, "10": 80}
STRIP = {"closed": (0.25, 1.25 + 0.8), "open": (0.1, 0.5)}  # mm over the barrel, least and most


def size(told: Told, name: str = "wire") -> str:
    return told[name].split()[0]


def lost(told: Told) -> float:
    wire = OHM_PER_KFT[size(told, "building_wire")]
    return n(told, "current") * 2 * n(told, "run_length") * wire / 1000


def share(told: Told) -> float:
    return 100 * lost(told) / n(told, "nameplate_voltage")


def windings(told: Told, leads: float = 1) -> list[float]:
    """Return run, start and both windings, the fewest ohms first."""
    off = leads * n(told, "lead_resistance")
    return sorted(n(told, f"reading_{pins}") - off for pins in ("1_2", "1_3", "2_3"))


def start_winding(told: Told) -> float:
    return windings(told)[1]


def start_over_run(told: Told) -> float:
    return windings(told)[1] / windings(told)[0]


def microfarads(told: Told) -> float:
    turns = 2 * math.pi * n(told, "frequency")
    return n(told, "capacitor_current") / (turns * n(told, "capacitor_voltage")) * 1e6


def watts(told: Told) -> float:
    ohms = n(told, "element_resistance") - n(told, "lead_resistance")
    return n(told, "element_voltage") ** 2 / ohms


def least_pull(told: Told) -> float:
    return LEAST_PULL[size(told)]


def pull_margin(told: Told) -> float:
    return n(told, "force") - least_pull(told)


def pulls(told: Told) -> list[float]:
    return [float(one.split()[0]) for one in told["force"].split(", ")]


def batch_margin(told: Told) -> float:
    return min(pulls(told)) - least_pull(told)


def mean(told: Told) -> float:
    return sum(pulls(told)) / len(pulls(told))


def least_strip(told: Told) -> float:
    return n(told, "barrel_length") + STRIP[told["style"]][0]


def most_strip(told: Told) -> float:
    return n(told, "barrel_length") + STRIP[told["style"]][1]


def amps(told: Told) -> float:
    column = {"75": 0, "90": 1}[size(told, "insulation_class")]
    warm = next(row for top, row in WARM.items() if n(told, "ambient") <= top)[column]
    as_it_lies = AMPS[size(told)][column] * warm * CROWDED[told["conductors"]]
    return min(as_it_lies, AMPS[size(told)][0])


def path_less_leads(told: Told) -> float:
    return n(told, "ground_resistance") - n(told, "lead_resistance")


def path_by_drop(told: Told) -> float:
    return n(told, "path_drop") / 1000 / n(told, "test_current")


def most_start(told: Told) -> float:
    volts = n(told, "voltage") / n(told, "nameplate_voltage")
    return 1.12 * n(told, "locked_rotor_current") * volts


BY_HAND: dict[str, tuple[Callable[[Told], float], ...]] = drilled.BY_HAND | {
    "ampacity": (amps,),
    "capacitor": (microfarads,),
    "drop": (lost, share),
    "element": (watts,),
    "ground": (path_less_leads, path_by_drop),
    "inrush": (most_start,),
    "pull": (least_pull, pull_margin),
    "pull-batch": (batch_margin, mean),
    "strip": (least_strip, most_strip),
    "windings": (start_winding, start_over_run),
}


def told_of(question: Question) -> dict[str, str]:
    drawn = question.case.drawn
    given = {k: v if isinstance(v, str) else ", ".join(v) for k, v in drawn.given.items()}
    return {**given, **drawn.beside}


@pytest.fixture(scope="module")
def catalogue() -> wirecalc.Catalogue:
    return wirecalc.build(bundled_only=True)


def seeds() -> range:
    return range(BY_DAY if settings.default.derandomize else BY_NIGHT)  # type: ignore[union-attr]


@independent("by hand: the topics that have arithmetic in this file")
def test_every_bundled_topic_with_exercises_is_recomputed(catalogue: wirecalc.Catalogue) -> None:
    declared = {n for n, p in catalogue.calculations.items() if p.calculation.exercises}
    assert declared == set(BY_HAND)
    for topic, by_hand in BY_HAND.items():
        assert len(catalogue.find(topic).calculation.exercises) == len(by_hand), topic


@independent("arithmetic by hand over the tables named at the head of this file")
@pytest.mark.parametrize("topic", BY_HAND)
def test_key_is_what_comes_out_by_hand(topic: str, catalogue: wirecalc.Catalogue) -> None:
    maker = Maker(catalogue, topic)
    for seed in seeds():
        for number, by_hand in enumerate(BY_HAND[topic], start=1):
            q = maker.question(Recipe(topic, CHOOSE, seed), 1, number)
            value = by_hand(told_of(q))
            assert q.right.value == pytest.approx(value, rel=1e-9, abs=1e-9), q.text
            shown = float(q.right.text.split()[0])
            assert abs(shown - value) <= float(q.step) * (0.5 + 1e-6), q.text
            texts = [o.text for o in q.listed]
            assert len(set(texts)) == len(texts) >= 3, q.text
            assert len(texts) <= 5
            assert texts.count(q.right.text) == 1
            values = sorted(o.number for o in (q.right, *q.slips))
            for low, high in pairwise(values):  # a mark can be but one of them
                assert high - low > 2 * max(float(q.step), 0.01 * max(abs(low), abs(high)))
            assert all(o.slip and o.sentence.endswith(".") for o in q.slips)


def other_row(told: Told, name: str, other: Mapping[str, str]) -> dict[str, str]:
    return {**told, name: f"{other[size(told, name)]} AWG"}


def one_size(told: Told, step: int) -> dict[str, str]:
    """Return what is told of a crimp, with the next thinner (-1) or thicker wire of the table."""
    sizes = list(LEAST_PULL)
    return {**told, "wire": f"{sizes[sizes.index(size(told)) + step]} AWG"}


CLAMP = {"22": 4.5, "20": 6.75, "18": 6.75, "16": 9, "14": 11.5, "12": 13.5, "10": 18}  # UL 486E
NEXT = {"14": "12", "12": "10", "10": "12"}
THINNER = {"12": "14", "10": "12", "8": "10", "6": "8"}
SLIPS: dict[tuple[str, int], dict[str, Callable[[Told], float]]] = drilled.SLIPS | {
    ("drop", 1): {
        "loop not doubled": lambda t: lost(t) / 2,
        "wrong row": lambda t: lost(other_row(t, "building_wire", NEXT)),
        "m for ft": lambda t: lost(t) / 0.3048,
        "percent for volts": share,
    },
    ("drop", 2): {
        "loop not doubled": lambda t: share(t) / 2,
        "wrong row": lambda t: share(other_row(t, "building_wire", NEXT)),
        "m for ft": lambda t: share(t) / 0.3048,
        "volts for percent": lost,
    },
    ("windings", 1): {
        "lead resistance left in": lambda t: windings(t, leads=0)[1],
        "lead resistance taken off twice": lambda t: windings(t, leads=2)[1],
        "both windings for one": lambda t: windings(t)[2],
        "run winding for start winding": lambda t: windings(t)[0],
    },
    ("windings", 2): {
        "lead resistance left in": lambda t: windings(t, leads=0)[1] / windings(t, leads=0)[0],
        "upside down": lambda t: 1 / start_over_run(t),
        "both windings for one": lambda t: windings(t)[2] / windings(t)[0],
    },
    ("capacitor", 1): {
        "50 for 60 Hz": lambda t: microfarads(t) * (1.2 if n(t, "frequency") == 60 else 5 / 6),
        "peak for rms": lambda t: microfarads(t) * 0.70710678,
        "volts of the line": lambda t: microfarads({**t, "capacitor_voltage": t["line"]}),
        "2 pi left out": lambda t: 6.2831853 * microfarads(t),
        "the mark for the reading": lambda t: n(t, "marked_capacitance"),
    },
    ("element", 1): {
        "lead resistance left in": lambda t: watts({**t, "lead_resistance": "0 ohm"}),
        "volts of the plate": lambda t: watts({**t, "element_voltage": t["nameplate_voltage"]}),
        "volts not squared": lambda t: (
            n(t, "nameplate_power") * n(t, "element_voltage") / n(t, "nameplate_voltage")
        ),
        "peak for rms": lambda t: 2 * watts(t),
        "the plate's watts": lambda t: n(t, "nameplate_power"),
    },
    ("pull", 1): {
        "row of the thinner wire": lambda t: least_pull(one_size(t, -1)),
        "row of the thicker wire": lambda t: least_pull(one_size(t, 1)),
        "clamp table for a crimp": lambda t: CLAMP[size(t)],
        "kgf for lbf": lambda t: least_pull(t) * 0.45359237,
        "N for lbf": lambda t: least_pull(t) * 4.4482216,
    },
    ("pull", 2): {
        "row of the thinner wire": lambda t: n(t, "force") - least_pull(one_size(t, -1)),
        "row of the thicker wire": lambda t: n(t, "force") - least_pull(one_size(t, 1)),
        "clamp table for a crimp": lambda t: n(t, "force") - CLAMP[size(t)],
        "kgf for lbf": lambda t: n(t, "force") / 0.45359237 - least_pull(t),
    },
    ("pull-batch", 1): {
        "mean for lowest": lambda t: mean(t) - least_pull(t),
        "middle for lowest": lambda t: sorted(pulls(t))[4] - least_pull(t),
        "the lowest itself": lambda t: min(pulls(t)),
    },
    ("pull-batch", 2): {
        "lowest for mean": lambda t: min(pulls(t)),
        "one pull left out": lambda t: sum(sorted(pulls(t))[1:]) / 7,
        "middle for mean": lambda t: sorted(pulls(t))[4],
    },
    ("strip", 1): {
        "the barrel alone": lambda t: n(t, "barrel_length"),
        "row of the other barrel": lambda t: least_strip(other_barrel(t)),
        "in for mm": lambda t: least_strip(t) / 25.4,
        "most for least": most_strip,
    },
    ("strip", 2): {
        "the barrel alone": lambda t: n(t, "barrel_length"),
        "row of the other barrel": lambda t: most_strip(other_barrel(t)),
        "in for mm": lambda t: most_strip(t) / 25.4,
        "least for most": least_strip,
    },
    ("ampacity", 1): {
        "wrong column": lambda t: amps({**t, "insulation_class": other_class(t)}),
        "number of wires left out": lambda t: amps({**t, "conductors": "3"}),
        "warmth of the place left out": lambda t: amps({**t, "ambient": "30 C"}),
        "the table alone": lambda t: AMPS[size(t)][size(t, "insulation_class") == "90"],
        "wrong row": lambda t: amps(other_row(t, "wire", THINNER)),
    },
    ("ground", 1): {
        "lead resistance left in": lambda t: n(t, "ground_resistance"),
        "half of the leads taken off": lambda t: (
            n(t, "ground_resistance") - n(t, "lead_resistance") / 2
        ),
        "the leads for the path": lambda t: n(t, "lead_resistance"),
        "leads added": lambda t: n(t, "ground_resistance") + n(t, "lead_resistance"),
    },
    ("ground", 2): {
        "mV for V": lambda t: n(t, "path_drop") / n(t, "test_current"),
        "upside down": lambda t: 1000 * n(t, "test_current") / n(t, "path_drop"),
        "multiplied": lambda t: n(t, "path_drop") / 1000 * n(t, "test_current"),
    },
    ("inrush", 1): {
        "volts left out": lambda t: 1.12 * n(t, "locked_rotor_current"),
        "peak for rms": lambda t: 1.41421356 * most_start(t),
        "RLA for LRA": lambda t: most_start({**t, "locked_rotor_current": t["rated_load_current"]}),
        "least for most": lambda t: most_start(t) / 1.12 * 0.7,
    },
}


def other_barrel(told: Told) -> dict[str, str]:
    return {**told, "style": "open" if told["style"] == "closed" else "closed"}


def other_class(told: Told) -> str:
    return "75 C" if size(told, "insulation_class") == "90" else "90 C"


@independent("arithmetic by hand over the tables named at the head of this file")
@pytest.mark.parametrize(("topic", "number"), SLIPS)
def test_slip_is_what_comes_out_by_hand(
    topic: str, number: int, catalogue: wirecalc.Catalogue
) -> None:
    maker = Maker(catalogue, topic)
    by_hand = SLIPS[topic, number]
    declared = catalogue.find(topic).calculation.exercises[number - 1].slips
    assert {s.name for s in declared} == set(by_hand)
    for seed in seeds():
        q = maker.question(Recipe(topic, CHOOSE, seed), 1, number)
        told = told_of(q)
        for offer in q.slips:
            assert offer.value == pytest.approx(by_hand[offer.slip](told), rel=1e-6), q.text


def ends(told: Told, name: str, share: float, counts: float) -> tuple[dict[str, str], ...]:
    """Return what is told with the reading at both ends of its error: a share and an amount."""
    off = share * n(told, name) + counts
    return tuple({**told, name: f"{n(told, name) + sign * off!r}"} for sign in (-1, 1))


METERS = {  # as the sheet says them; `verdict_by_hand` has the same in numbers
    "ampacity": " A ±(2%+5)",
    "capacitor": " A ±(1.5%+3)",
    "drop": " A ±(2%+5)",
    "ground": " mV ±(2%+5)",
    "leakage": " mA ±(3%+5)",
    "pull": " lbf ±(1%+5)",
}


def verdict_by_hand(topic: str, told: Told) -> str:
    """Return the verdict of a level 3 question, from both ends of the reading's error."""
    values: list[float]
    if topic == "drop":
        values = [share(t) for t in ends(told, "current", 0.02, 0.5)]
        return "marginal" if max(values) > 3 else "pass"
    if topic == "capacitor":
        least = 0.94 * n(told, "marked_capacitance")
        values = [microfarads(t) - least for t in ends(told, "capacitor_current", 0.015, 0.03)]
    elif topic == "pull":
        values = [pull_margin(t) for t in ends(told, "force", 0.01, 0.5)]
    elif topic == "ampacity":
        values = [amps(t) - n(t, "current") for t in ends(told, "current", 0.02, 0.5)]
    elif topic == "leakage":
        least = drilled.BY_HAND["leakage"][1](told)
        values = [
            least - n(t, "leakage_current") for t in ends(told, "leakage_current", 0.03, 0.05)
        ]
    else:
        values = [0.1 - path_by_drop(t) for t in ends(told, "path_drop", 0.02, 5)]
    if min(values) >= -1e-12:
        return "pass"
    return "fail" if max(values) < 0 else "cannot tell"


@independent("arithmetic by hand over the tables named at the head of this file")
@pytest.mark.parametrize("topic", METERS)
def test_verdict_is_what_both_ends_of_the_error_say(
    topic: str, catalogue: wirecalc.Catalogue
) -> None:
    maker = Maker(catalogue, topic)
    for seed in seeds():
        q = maker.question(Recipe(topic, JUDGE, seed), 1, 1)
        told = {k: v.partition(" ±")[0] for k, v in told_of(q).items()}
        assert METERS[topic] in q.text
        assert q.right.text == verdict_by_hand(topic, told), q.text
