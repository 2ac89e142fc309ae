"""What the shared tests need to know of `motor-circuit`."""

from __future__ import annotations

from .trial import Bad, Span, Step, Trial, When, near, texts

TRIAL = Trial(
    good={"motor_kind": "motor", "fastened_in_place": "yes", "horsepower": "1/2 hp"}
    | {"nameplate_voltage": "115 V", "full_load_current": "8.6 A", "rated_load_current": "6 A"}
    | {"branch_selection_current": "7 A", "minimum_ampacity": "9 A", "maximum_breaker": "25 A"}
    | {"breaker": "25 A", "other_current": "3 A", "building_wire": "14 AWG", "ambient": "25 C"}
    | {"motor_device": "inverse-time breaker", "plate_governs": "no"}
    | {"overload_setting": "9.8 A", "overload_too_low": "no", "cool_running": "no"},
    zero=("other_current", "ambient"),
    printed=(
        "horsepower",
        "nameplate_voltage",
        "full_load_current",
        "rated_load_current",
        "branch_selection_current",
        "minimum_ampacity",
        "maximum_breaker",
        "breaker",
        "overload_setting",
    ),
    bad=(
        Bad("motor_kind", "compresor", "'compresor'", "did you mean compressor?"),
        Bad("motor_device", "time delay fuze", "'time delay fuze'", "time-delay fuse"),
        Bad("fastened_in_place", "no", "plugged in", "ask breaker"),
        Bad("overload_too_low", "perhaps", "'perhaps'", "yes or no"),
        Bad("cool_running", "perhaps", "'perhaps'", "yes or no"),
        Bad("plate_governs", "maybe", "'maybe'", "yes or no"),
        Bad("listed_combination", "perhaps", "'perhaps'", "yes or no"),
        Bad("branch_selection_current", "5 A", "5 A", "look at the plate"),
        Bad("horsepower", "115 V", "'V'", "hp"),
    ),
    spans={
        "overload_setting": Span(
            "0 A", "200 A", "140 % of a motor of 100 A, and what is set far too high", over=True
        )
    },
    always={
        "motor_kind": texts(["motor", "compressor"]),
        "fastened_in_place": texts(["yes"]),
    },
    sometimes={
        "horsepower": texts(["1/8 hp", "1/2 hp", "2 hp"]),
        "nameplate_voltage": texts(["115 V", "230 V", "277 V"]),
        "full_load_current": texts(["8.6 A", "14 A"]),
        "plate_governs": texts(["yes", "no"]),
        "cool_running": texts(["yes", "no"]),
        "overload_setting": texts(["9.8 A", "10.8 A", "12 A", "13 A"]),
        "overload_too_low": texts(["yes", "no"]),
        "rated_load_current": texts(["1.6 A", "9 A", "20 A"]),
        "branch_selection_current": texts(["20 A", "24 A"]),
        "minimum_ampacity": texts(["9 A", "25 A"]),
        "maximum_breaker": texts(["20 A", "40 A"]),
        "breaker": texts(["15 A", "25 A", "40 A"]),
        "motor_device": texts(["inverse-time breaker", "time-delay fuse", "instantaneous breaker"]),
        "will_not_start": texts(["yes", "no"]),
        "listed_combination": texts(["yes", "no"]),
        # 175 % of 9 and 20 A and these are 20 and 40 A; 125 % of 9.8 A and 2.75 A are 15 A
        "other_current": near(2.75, 4.25, 5, 10, high=60),
        "building_wire": texts(["18 AWG", "14 AWG", "12 AWG", "8 AWG aluminum", "2.5 mm2"]),
        "insulation_class": texts(["60 C", "75 C", "90 C"]),
        "termination_temperature": texts(["60 C", "75 C", "90 C"]),
        "ambient": near(10, 30, 40, 55, 70, 85, low=-40, high=90),
        "conductors": texts(["2", "4", "10"]),
    },
    why=(
        "Wire and device of a building, looked at in an open box: licensed, locked at both poles."
    ),
    cautions=("brk-01", "dead-03", "live-01"),
    not_checked=(
        "overload protector itself",
        "cord and plug",
        "largest on its circuit",
        "room air conditioners",
        "overload setting of 125 %",
        "code edition in force",
    ),
    when=(
        When(
            "building wire of aluminium", {"building_wire": "12 AWG aluminium"}, comes=("alu-01",)
        ),
    ),
    steps=(
        Step(
            "device on this motor circuit",
            "breaker",
            {"25 A": "pass", "30 A": "fail"},
            given={"will_not_start": "no"},
            limit="250 % of 9.8 A is 24.5 A; the next standard size up is 25 A",
            source="NEC (NFPA 70), Tables 430.248 and 430.52(C)(1), 240.6(A)",
        ),
        Step(
            "device on this motor circuit",
            "breaker",
            {"20 A": "pass", "25 A": "fail"},
            given={"motor_device": "time-delay fuse"},
            limit="175 % of 9.8 A is 17.15 A; the next standard size up is 20 A",
            source="NEC (NFPA 70), Tables 430.248 and 430.52(C)(1), 240.6(A)",
        ),
        Step(
            "device on this motor circuit",
            "breaker",
            {"30 A": "pass", "35 A": "fail"},
            given={"motor_device": "nontime-delay fuse", "will_not_start": "no"},
            limit="300 % of 9.8 A is 29.4 A; the next standard size up is 30 A",
            source="NEC (NFPA 70), Tables 430.248 and 430.52(C)(1), 240.6(A)",
        ),
        Step(
            "load on the wire",
            "other_current",
            {"2.75 A": "pass", "2.76 A": "fail"},
            given={"other_current": ""},
            limit="125 % of 9.8 A is 12.25 A; with 2.75 A it is the 15 A of 14 AWG at 60 C",
            source="NEC (NFPA 70), 430.24 and Table 310.16",
        ),
        Step(
            "load on the wire",
            "minimum_ampacity",
            {"15 A": "pass", "15.1 A": "fail"},
            limit="14 AWG at 60 C carries 15 A, and the plate's least ampacity counts",
            source="NEC (NFPA 70), 440.4(B), Table 310.16",
        ),
    ),
)
