"""What the shared tests need to know of `splice`."""

from __future__ import annotations

from hypothesis import strategies as st

from .trial import Bad, Step, Trial, When, near, texts

TRIAL = Trial(
    good={"wire": "16 AWG", "barrel": "16-14 AWG", "current": "8.7 A"}
    | {"circuit_voltage": "120 V"}
    | {"wire_temperature": "105 C", "terminal_temperature": "105 C", "place_temperature": "60 C"}
    | {"terminal_voltage": "300 V", "wire_limit": "2", "listed_for": "stranded"},
    zero=("current", "circuit_voltage", "place_temperature"),
    printed=("wire_temperature", "terminal_temperature", "terminal_voltage"),
    counts=("wire_limit",),
    bad=(
        Bad("place_temperature", "700 C", "'700 C'", "700 F"),
        Bad("wire_temperature", "90 F", "'90 F'", "90 C"),
        Bad("barrel", "14-16 AWG", "'14-16 AWG'", "16-14 AWG"),
        Bad("barrel", "2/0-10 AWG", "'2/0-10 AWG'", "10-2/0 AWG"),
        Bad("barrel", "5180-2050 cmil", "'5180-2050 cmil'", "2050-5180 cmil"),
        Bad("barrel", "16-14", "'16-14'", "16-14 AWG"),
        Bad("barrel", "16 AWG-2.5 mm2", "'16 AWG-2.5 mm2'", "one unit"),
        Bad("barrel", "1,5-2,5 mm2", "'1,5-2,5 mm2'", "1.5-2.5 mm2"),
        Bad("barrel", "16-14-12 AWG", "'16-14-12 AWG'", "16-14 AWG"),
        Bad("barrel", "16-50 AWG", "50 AWG", "4/0 to 40 AWG"),
        Bad("barrel", "0-2.5 mm2", "'0-2.5 mm2'", "check mm"),
        Bad("barrel", "nan-2 mm2", "'nan-2 mm2'", "2.5 mm2"),
        Bad("barrel", "1-9**9 mm2", "**9", "mm2"),
        Bad("barrel", "1-2.5 mm", "'mm'", "mm2"),
        Bad("barrel", "١٦-١٤ AWG", "'١٦-١٤ AWG'", "16-14 AWG"),
        Bad("barrel", "１.５-２.５ mm2", "１.５", "write"),
        Bad("barrel", "", "''", "16-14 AWG"),
        Bad("barrel", b"16", "16", '"22-18 AWG"'),
        Bad("connector", "but", "'but'", "did you mean butt?"),
        Bad("listed_for", "stranted", "'stranted'", "did you mean stranded?"),
        Bad("wire", b"[18, 16]", "18", '"18 AWG"'),
        Bad("wire", b'[["18 AWG"], "16 AWG"]', "18 AWG", '"18 AWG"'),
    ),
    always={
        "wire": st.lists(texts(["18 AWG", "14 AWG solid", "12 AWG", "2.5 mm2"]), max_size=3).map(
            lambda more: ["16 AWG", *more]
        ),
        "barrel": texts(["18-14 AWG", "16-10 AWG", "2050-5180 cmil", "1.5-6 mm2"]),
    },
    sometimes={
        "connector": texts(["butt", "closed-end", "push-on"]),
        "listed_for": texts(["stranded", "either", "combination"]),
        "wire_limit": texts(["1", "3"]),
        "wire_temperature": texts(["80 C", "105 C"]),
        "terminal_temperature": texts(["75 C", "105 C"]),
        "place_temperature": near(55, 60, 75, 80, 85, 105, low=-40, high=130),
        "current": near(15, 20, 30, high=40),
        "circuit_voltage": near(300, 600, high=700),
        "terminal_voltage": texts(["300 V", "600 V"]),
        "tab_width": texts(["0.110 in", "0.187 in", "0.250 in"]),
        "insulation_diameter": near(3.4, high=6),
        "insulation_limit": texts(["3.4 mm"]),
    },
    why=("Wires in the hand, a barrel that is not for every wire, a part that a maker must name."),
    cautions=("heat-01", "crimp-01", "dead-01", "flam-01", "flam-02"),
    not_checked=("die of the tool",),
    when=(
        When(
            "aluminium among the wires", {"wire": ["18 AWG", "18 AWG aluminium"]}, comes=("alu-01",)
        ),
    ),
    steps=(
        Step(
            "temperature rating of the terminal",
            "place_temperature",
            {"85 C": "pass", "86 C": "fail"},
            limit="105 C less the 20 K that a joint warms by",
            source="common practice, no source",
        ),
        Step(
            "voltage of the connector",
            "circuit_voltage",
            {"300 V": "pass", "301 V": "cannot tell"},
            limit="connectors are marked 300 V or 600 V; the lower counts where none was read",
            source="common practice, no source",
        ),
        Step(
            "voltage of the connector",
            "circuit_voltage",
            {"300 V": "pass", "301 V": "fail"},
            given={"terminal_voltage": "300 V"},
            limit="its own 300 V",
            source="the mark",
        ),
    ),
)
