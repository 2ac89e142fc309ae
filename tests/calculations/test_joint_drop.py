"""What the shared tests need to know of `joint-drop`."""

from __future__ import annotations

from .trial import Bad, Step, Trial, When, near, texts

TRIAL = Trial(
    good={"drop": "0.36 V", "joint_current": "8.7 A", "wire": "16 AWG"}
    | {"joint_length": "150 mm"},
    bad=(
        Bad("drop", "14 V", "'14 V'", "30 mV"),
        Bad("drop", "0 mV", "'0 mV'", "30 mV"),
        Bad("drop", "-14 mV", "'-14 mV'", "30 mV"),
        Bad("drop", "14 mohm", "'mohm'", "mV"),
        Bad("joint_current", "0 A ±0.05 A", "0 A", "8.7 A"),
        Bad("joint_current", "1044 W", "'W'", "divide by the voltage"),
        Bad("joint_length", "150 in", "'150 in'", "150 mm"),
    ),
    always={
        # 16 AWG: 3 and 10 times the wire at 8.7 A over 150 mm are 53 and 175 mV; 1 W is 115 mV
        "drop": near(0.0526, 0.115, 0.1754, high=1),
        "joint_current": near(1, 8.7, high=20),
        "wire": texts(["16 AWG", "14 AWG solid", "1.5 mm2", "12 AWG aluminum", "12 AWG cca"]),
        "joint_length": near(15, 150, high=305),
    },
    why=(
        "Probes on a live joint and a clamp at the same moment; a joint that heats burns fingers."
    ),
    cautions=("live-01", "live-02", "meter-01", "cord-04", "hot-01", "flam-01"),
    not_checked=("larger current", "loose only at times"),
    when=(When("joint of aluminium wire", {"wire": "12 AWG aluminium"}, comes=("alu-01",)),),
    steps=(
        Step(
            "joint against its wire",
            "drop",
            {"83.6 mV": "pass", "83.7 mV": "marginal", "278.8 mV": "marginal", "278.9 mV": "fail"},
            limit=(
                "150 mm of 18 AWG copper of IACS, 2 % for its strands, have 3.205 mohm: two and"
                " nine times that at 8.7 A, beyond the wire, are 83.65 and 278.8 mV"
            ),
            source="IACS, 17.241 nohm m at 20 C; the shares are common practice",
        ),
        Step(
            "heat in the joint",
            "drop",
            {"142 mV": "pass", "143 mV": "fail"},
            limit="1 W: 8.7 A x (142.8 mV less 27.9 mV of its wire)",
            source="common practice, no source",
        ),
    ),
)
