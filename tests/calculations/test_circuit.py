"""What the shared tests need to know of `circuit`."""

from __future__ import annotations

from .trial import Bad, Step, Trial, When

TRIAL = Trial(
    good={"breaker": "15 A", "plug_loads": "6.2 A", "long_plug_loads": "1.6 A"}
    | {"fastened_loads": "3 A", "long_fastened_loads": "2 A", "light_loads": "1 A"}
    | {
        "receptacle": "15 A",
        "building_wire": "14 AWG",
        "insulation_class": "60 C",
        "ambient": "25 C",
    }
    | {"termination_temperature": "60 C", "conductors": "2", "feeds_others": "yes"},
    zero=(
        "plug_loads",
        "long_plug_loads",
        "fastened_loads",
        "long_fastened_loads",
        "light_loads",
        "ambient",
    ),
    printed=("breaker", "receptacle", "insulation_class", "termination_temperature"),
    counts=("conductors",),
    bad=(
        Bad("breaker", "115 A", "'115 A'", "15 A"),
        Bad("plug_loads", "1500 W", "'W'", "divide by the voltage"),
        Bad("plug_loads", ["1.20 mA"], "next to nothing", "write 1.2 A, or 0.0012 A"),
        Bad("light_loads", "6200 A", "'6200 A'", "such as 6.2 A"),
        Bad("feeds_others", "maybe", "'maybe'", "yes or no"),
        Bad("insulation_class", "50 C", "50 C", "60 C, 75 C or 90 C"),
    ),
    drawn_in=("test_monotone_circuit.py",),
    why="As for a breaker, over all that hangs on it.",
    cautions=("brk-01", "live-01", "live-02", "meter-01", "cord-04"),
    not_checked=(
        "all loads are listed",
        "motor and compressor circuits",
        "several cords",
        "browned, warm or loose",
        "code edition in force",
    ),
    when=(
        When(
            "building wire of aluminium", {"building_wire": "12 AWG aluminium"}, comes=("alu-01",)
        ),
    ),
    steps=(
        Step(
            "plug-in load on a shared circuit",
            "plug_loads",
            {"12 A": "pass", "12.1 A": "fail"},
            given={"plug_loads": "", "long_plug_loads": ""},
            limit="one plug-in load: 80 % of a circuit of 15 A",
            source="NEC (NFPA 70), 210.23(A)(1)",
        ),
        Step(
            "all loads on the breaker",
            "long_plug_loads",
            {"5.76 A": "pass", "5.77 A": "fail"},
            given={"long_plug_loads": ""},
            limit="6.2 A + 1.6 A + 125 % of 5.76 A is 15 A",
            source="NEC (NFPA 70), 210.20(A)",
        ),
        Step(
            "loads fastened in place",
            "fastened_loads",
            {"7.5 A": "pass", "7.6 A": "fail"},
            limit="50 % of 15 A where it feeds others too",
            source="NEC (NFPA 70), 210.23(A)(2)",
        ),
    ),
)
