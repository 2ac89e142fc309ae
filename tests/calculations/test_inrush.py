"""What the shared tests need to know of `inrush`."""

from __future__ import annotations

from .trial import Bad, Step, Trial, near, texts

TRIAL = Trial(
    good={"rated_load_current": "1.6 A", "locked_rotor_current": "12 A", "voltage": "117 V"}
    | {"nameplate_voltage": "115 V", "frequency": "60 Hz", "peak": "11 A", "settled": "1.2 A"}
    | {"horsepower": "1/4 hp", "code_letter": "L", "settle_time": "0.4 s", "breaker": "15 A"}
    | {"nameplate_current": "6.5 A", "nameplate_load": "appliance"},
    zero=("peak", "settled", "settle_time"),
    printed=(
        "rated_load_current",
        "locked_rotor_current",
        "nameplate_voltage",
        "frequency",
        "horsepower",
        "breaker",
        "nameplate_current",
    ),
    bad=(
        Bad("settle_time", "2 m", "'m'", "min"),
        Bad("settle_time", "400 min", "'400 min'", "such as 0.4 s"),
        Bad("nameplate_voltage", "115 mV", "'115 mV'", "115 V"),
        Bad("nameplate_current", "6500 A", "'6500 A'", "such as 6.5 A"),
        Bad("nameplate_load", "fan", "'fan'", "appliance"),
        Bad("locked_rotor_current", "1.2 A", "1.2 A", "look at the plate"),  # below RLA
        Bad("code_letter", "O", "'O'", "N, P"),
        Bad("meter_mode", "peakhol", "'peakhol'", "did you mean peak-hold?"),
        Bad("settled", "90 mA", "next to nothing", "write 90 A, or 0.09 A if it is so little"),
    ),
    always={
        # left out, others are tried in their place, and only where that could change the verdict
        "meter_mode": texts(["inrush", "peak-hold", "max-hold"]),
        "device": texts(["ul-489", "iec-60898-b", "iec-60898-c", "fuse-plug-time-delay"]),
    },
    sometimes={
        "rated_load_current": texts(["1.6 A"]),
        "locked_rotor_current": texts(["12 A"]),
        "code_letter": texts(["A", "G", "V"]),
        "horsepower": texts(["1/4 hp"]),
        "nameplate_voltage": texts(["115 V"]),
        "frequency": texts(["50 Hz"]),
        "voltage": near(92, 103.5, 115, 126.5, 138, high=150),
        "peak": near(0.6, 1.8, 7.56, 8.4, 12, 13.44, 30, 33.9, 75, high=200),
        "settled": near(0.08, 0.32, 0.48, 1.6, 1.76, 2.304, high=3),
        "settle_time": near(1, 3, 50, 120, high=150),
        "breaker": texts(["5 A", "15 A", "20 A"]),
        "nameplate_current": texts(["1.5 A", "6.5 A"]),
        "nameplate_load": texts(["appliance", "heater", "motor"]),
        "motor_kind": texts(["motor", "compressor"]),
        "service_factor_current": texts(["1.9 A"]),
        "inverter": texts(["yes", "no"]),
    },
    why="A clamp on a live wire during a start; does the breaker hold: no larger one.",
    cautions=("meter-01", "live-02", "start-01", "pin-01", "flam-01", "brk-01"),
    not_checked=("current alone does not show it", "breaker's own curve"),
    steps=(
        Step(
            "time to settle",
            "settle_time",
            {"1 s": "pass", "1.01 s": "marginal", "3 s": "marginal", "3.01 s": "fail"},
            limit="within 1 s normal, over 3 s stop",
            source="common practice, no source",
        ),
        Step(
            "settled current, upper limit",
            "settled",
            {"1.6 A": "pass", "1.61 A": "marginal", "2.30 A": "marginal", "2.31 A": "fail"},
            given={"motor_kind": "compressor"},
            limit=(
                "RLA 1.6 A; the least continuous limit of a compressor is 1.44 times that, 2.304 A"
            ),
            source="two trade articles on RLA and maximum continuous current",
        ),
        Step(
            "settled current, upper limit",
            "settled",
            {"1.76 A": "marginal", "1.77 A": "cannot tell"},
            given={"motor_kind": "motor"},
            limit="1.1 times 1.6 A is 1.76 A; beyond it the service-factor amps decide",
            source="common practice, no source",
        ),
        Step(
            "settled current, lower limit",
            "settled",
            {"0.48 A": "pass", "0.47 A": "marginal", "0.32 A": "marginal", "0.31 A": "cannot tell"},
            limit="idle under 0.3, nothing turns under 0.2 times 1.6 A",
            source="common practice, no source",
        ),
        Step(
            "volts at the plug, lower limit",
            "voltage",
            {"103.5 V": "not judged", "103.4 V": "marginal", "92 V": "marginal", "91.9 V": "fail"},
            limit="90 % of 115 V; under 80 % it has 64 % of its torque",
            source="makers' sheets; 80 % is common practice",
        ),
        Step(
            "volts at the plug, upper limit",
            "voltage",
            {
                "126.5 V": "not judged",
                "126.6 V": "marginal",
                "138 V": "marginal",
                "138.1 V": "fail",
            },
            limit="110 % of 115 V; over 120 % its iron saturates",
            source="makers' sheets; 120 % is common practice",
        ),
        Step(
            "start peak, lower limit",
            "peak",
            {"8.55 A": "pass", "8.54 A": "marginal"},
            given={"meter_mode": "inrush"},
            limit="70 % of 12 A at 117 V of 115 V is 8.546 A",
            source="common practice, no source",
        ),
        Step(
            "start peak, upper limit",
            "peak",
            {"13.67 A": "pass", "13.68 A": "marginal"},
            given={"meter_mode": "inrush"},
            limit=(
                "12 A at 117 V of 115 V is 12.209 A; an offset start reads 1.12 times that, "
                "13.674 A"
            ),
            source="integrated for R/X 0.1",
        ),
    ),
)
