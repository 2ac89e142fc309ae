"""What the shared tests need to know of `tab`."""

from __future__ import annotations

from .trial import Bad, Step, Trial, When, near, texts

TRIAL = Trial(
    good={"tab_width": "0.250 in", "wire": "14 AWG", "current": "10.8 A"}
    | {"terminal_width": "0.250 in", "tab_thickness": "0.032 in"}
    | {"terminal_thickness": "0.032 in"},
    printed=("tab_width", "terminal_width", "tab_thickness", "terminal_thickness"),
    bad=(
        Bad("tab_width", "6.3 in", "'6.3 in'", "6.3 mm"),
        Bad("tab_width", "0.25 mm", "'0.25 mm'", "0.25 in"),
        Bad("tab_width", "0.300 in", "0.3 in", "0.250"),
        Bad("terminal_width", "5.6 mm", "0.2205 in", "0.205"),
        Bad("tab_thickness", "0.8 in", "'0.8 in'", "0.8 mm"),
    ),
    always={
        "tab_width": texts(["0.110 in", "4.8 mm", "6.3 mm", "0.375 in"]),
        "wire": texts(["18 AWG", "17 AWG", "14 AWG", "1.5 mm2", "14 AWG aluminum"]),
        "current": near(3.2, 4, 5.6, 7, 12, 15, high=25),
    },
    sometimes={
        "terminal_width": texts(["2.8 mm", "0.187 in", "0.250 in"]),
        "tab_thickness": texts(["0.5 mm", "0.032 in", "1 mm"]),
        "terminal_thickness": texts(["0.020 in", "0.8 mm"]),
        "listed_for": texts(["stranded", "solid"]),
    },
    why=(
        "A clamp on a live wire, then hands on the terminal; a loose one burns and trips nothing."
    ),
    cautions=("dead-01", "live-02", "cord-04"),
    not_checked=("heat of the place", "sprung, browned or loose"),
    when=(When("wire of aluminium", {"wire": "14 AWG aluminium"}, comes=("alu-01",)),),
    steps=(
        Step(
            "current against the test current",
            "current",
            {"12 A": "pass", "12.1 A": "marginal", "15 A": "marginal", "15.1 A": "marginal"},
            limit=(
                "14 AWG on a 0.250 in tab is tested at 15 A, which is no rating; 80 % of it "
                "calls for care"
            ),
            source="UL 310, heating test; 80 % common practice",
        ),
    ),
)
