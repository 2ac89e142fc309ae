"""What the shared tests need to know of `short-time`."""

from __future__ import annotations

from .trial import Bad, Step, Trial, When, near, texts

TRIAL = Trial(
    good={"wire": "16 AWG", "overcurrent": "180 A", "overcurrent_time": "0.5 s"}
    | {"insulation": "pvc-70", "temperature_before": "30 C", "cut_strands": "2"}
    | {"strands": "26"},
    zero=("temperature_before",),
    bad=(
        Bad("overcurrent_time", "25 h", "'25 h'", "such as 0.5 s"),
        Bad("overcurrent_time", "86401 s", "'86401 s'", "such as 0.5 s"),
        Bad("overcurrent", "0 A", "'0 A'", "180 A"),
        Bad("overcurrent", "-180 A", "'-180 A'", "180 A"),
        Bad("insulation", "pvc-80", "'pvc-80'", "such as pvc-70"),
        Bad("insulation", "wool", "'wool'", "pvc-70"),
        Bad("temperature_before", "158 C", "'158 C'", "158 F"),
        Bad("cut_strands", "26", "26 of 26", "count again"),
        Bad("cut_strands", "-1", "'-1'", "whole number"),
        Bad("strands", "0", "0 is outside", "whole number"),
    ),
    always={
        "wire": texts(["18 AWG", "1.5 mm2", "26x30 AWG", "14 AWG aluminum", "600 kcmil"]),
        "overcurrent": near(60, 118, 150, 172.5, high=400),
    },
    sometimes={
        "overcurrent_time": near(0.5, 1, 5, high=10),
        "insulation": texts(["pvc-70", "pvc-90", "rubber-60", "xlpe-epr-90"]),
        "temperature_before": near(30, 70, 90, low=-20, high=138),
        "cut_strands": texts(["0", "3"]),
        "strands": texts(["7", "26"]),
    },
    why=(
        "After a fault that a device opened: no larger device, no reset before the cause is found."
    ),
    cautions=("brk-01", "pin-02"),
    not_checked=(
        "steady current",
        "joints, terminals",
        "first cycles of a short circuit under 0.1 s",
    ),
    when=(When("wire of aluminium", {"wire": "12 AWG aluminium"}, comes=("alu-01",)),),
    steps=(
        Step(
            "time to the limit of the insulation",
            "overcurrent_time",
            {"0.178 s": "pass", "0.179 s": "marginal", "0.209 s": "marginal", "0.210 s": "fail"},
            given={"temperature_before": "90 C"},
            limit=(
                "(k S / I)^2 with k 100, 0.823 mm2 and 180 A: 0.2090 s; 0.0297 log10(384 / 324)"
                " x (1624 cmil / 180 A)^2: 0.1784 s, advice"
            ),
            source="IEC 60364-4-43, 434.5.2, Table 43A, from memory; ICEA P-32-382",
        ),
    ),
)
