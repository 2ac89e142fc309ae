"""What the shared tests need to know of `shared-barrel`, and its published checks."""

from __future__ import annotations

import pytest

import wirecalc
from tests.published.records import independent, memory, source

from .trial import Bad, Span, Step, Trial, near, texts

PAIR = {
    "wire": ["18 AWG", "16 AWG"],
    "terminal": "ring",
    "force": ["24 lbf", "35 lbf"],
    "insulation_gap": "0.8 mm",
    "soldered_ends": "no",
}

TRIAL = Trial(
    good={"wire": "2x18 AWG", "terminal": "ring", "insulation_gap": "0.8 mm"}
    | {"barrel": "16-14 AWG", "stamp": "16-14 AWG", "soldered_ends": "no"},
    zero=("insulation_gap",),
    bad=(
        Bad("barrel", "moon", "'moon'", "AWG"),
        Bad("stamp", "moon", "'moon'", "AWG"),
        Bad("force", "24 lbf", "1 forces for 2 wires", "in the order of the wires"),
        Bad("terminal", "knot", "'knot'", "ring"),
        Bad("soldered_ends", "perhaps", "'perhaps'", "yes or no"),
    ),
    always={
        "wire": texts(["2x18 AWG", "18 AWG; 16 AWG", "22 AWG; 20 AWG"]),
        "terminal": texts(["ring", "butt", "push-on"]),
    },
    sometimes={
        "insulation_gap": near(0.75, 1.25, high=3),
        "barrel": texts(["16-14 AWG"]),
        "stamp": texts(["16-14 AWG", "22-16 AWG"]),
        "soldered_ends": texts(["yes", "no"]),
        "listed_for": texts(["stranded", "solid", "either", "combination"]),
    },
    spans={
        "insulation_gap": Span("0 mm", "50 mm", "butted to a strip that was far too long"),
    },
    why="Pulled samples fly and are scrap; a tug proves no minimum; crimped ones are not reused.",
    cautions=("crimp-02", "pull-01", "crimp-03"),
    not_checked=("see `splice`", "the lay", "lists this combination"),
    steps=(
        Step(
            "wire 1 by itself",
            "force",
            {"20 lbf; 35 lbf": "pass", "19.9 lbf; 35 lbf": "fail"},
            given=PAIR,
            limit="20 lbf of 18 AWG",
            source="UL 486A, 8th edition, pull-out test values",
        ),
        Step(
            "wire 2 by itself",
            "force",
            {"24 lbf; 30 lbf": "pass", "24 lbf; 29.9 lbf": "fail"},
            given=PAIR,
            limit="30 lbf of 16 AWG",
            source="UL 486A, 8th edition, pull-out test values",
        ),
        Step(
            "gap to the insulation",
            "insulation_gap",
            {"1.25 mm": "pass", "1.26 mm": "fail"},
            given=PAIR,
            limit="0.050 in, 1.25 mm as rounded there, from 18 AWG",
            source="NASA-STD-8739.4, insulation clearance",
        ),
        Step(
            "gap to the insulation",
            "insulation_gap",
            {"0.75 mm": "pass", "0.76 mm": "fail"},
            given=PAIR | {"wire": ["20 AWG", "16 AWG"]},
            limit="0.030 in, 0.75 mm as rounded there, to 20 AWG",
            source="NASA-STD-8739.4, insulation clearance",
        ),
        Step(
            "stamp agrees with the bag",
            "stamp",
            {"16-14 AWG": "pass", "22-16 AWG": "fail"},
            given=PAIR | {"barrel": "16-14 AWG"},
            limit="one range",
            source="the maker's marking",
        ),
        Step(
            "no solder in the barrel",
            "soldered_ends",
            {"no": "pass", "yes": "fail"},
            given=PAIR,
            limit="no soldered strand in a crimp",
            source="NASA-STD-8739.4, 4.3.4",
        ),
    ),
)


@source("UL 486A", "8th edition, 1991/1995", "pull-out test values", seen="three copies")
@pytest.mark.parametrize(("size", "lbf"), [("22 AWG", 8), ("20 AWG", 13), ("14 AWG", 50)])
def test_each_wire_has_the_minimum_of_its_size(size: str, lbf: int) -> None:
    found = wirecalc.run("shared-barrel", **PAIR | {"wire": ["18 AWG", size]})
    got = {f.figure.name: f.figure.value for f in found.figures}
    assert got["minimum of wire 1"] == pytest.approx(20)
    assert got["minimum of wire 2"] == pytest.approx(lbf)


@source("component maker's crimp handbook", "undated", "double crimps", seen="one copy")
def test_a_strong_wire_never_hides_a_weak_one() -> None:
    for forces in (["10 lbf", "60 lbf"], ["25 lbf", "12 lbf"]):
        assert str(wirecalc.run("shared-barrel", **PAIR | {"force": forces}).verdict) == "fail"


@memory("IEC 60335-1, 23.9: no soldered strand under contact pressure")
def test_solder_that_was_not_asked_about_is_asked() -> None:
    given = {k: v for k, v in PAIR.items() if k != "soldered_ends"}
    assert str(wirecalc.run("shared-barrel", **given).verdict) == "cannot tell"


@independent("40 lbf of 24 AWG would be 124 ksi: no copper bears it")
def test_newtons_typed_as_lbf_are_refused() -> None:
    with pytest.raises(wirecalc.BadInput, match="look at the unit"):
        wirecalc.run("shared-barrel", **PAIR | {"wire": ["24 AWG", "16 AWG"],
                                                "force": ["40 lbf", "35 lbf"]})  # fmt: skip


@source("UL 486A and UL 486C", "8th edition; 486C recalled", "pull-out", seen="three; none")
@pytest.mark.parametrize("force", ["19 lbf", "21 lbf"])
def test_a_wire_of_a_pair_is_judged_no_milder_than_by_itself(force: str) -> None:
    for terminal in ("butt", "ring", "push-on"):
        for wire in ("18 AWG", "18 AWG solid", "18 AWG tinned"):
            alone = wirecalc.run("pull", wire=wire, terminal=terminal, force=force)
            pair = wirecalc.run(
                "shared-barrel",
                wire=[wire, "18 AWG"],
                terminal=terminal,
                force=[force, "60 lbf"],
                insulation_gap="0.5 mm",
                soldered_ends="no",
            )
            assert pair.verdict is not None and alone.verdict is not None
            assert pair.verdict.rank >= alone.verdict.rank, (terminal, wire)


@source("NASA-STD-8739.4", "Change 6", "4.3.4, solder-tinned strand", seen="four copies")
@memory("IEC 60335-1, 23.9: no soldered ends where they are under a clamp's pressure")
@pytest.mark.parametrize(
    ("terminal", "key"), [("ring", "nasa-8739-4-tinned"), ("clamp", "iec-60335-23-9")]
)
def test_solder_fails_by_the_rule_of_its_place(terminal: str, key: str) -> None:
    found = wirecalc.run(
        "shared-barrel", wire=["18 AWG", "16 AWG"], terminal=terminal, soldered_ends="yes"
    )
    judged = found.criterion("no solder in the barrel")
    assert (judged.verdict, judged.criterion.source.key) == ("fail", key)
