"""What the shared tests need to know of `strip`."""

from __future__ import annotations

from hypothesis import strategies as st

from .trial import Bad, Step, Trial, near, texts

TRIAL = Trial(
    good={"wire": "18 AWG", "style": "open", "barrel_length": "6.5 mm"}
    | {"window_length": "2 mm", "stripped": "8 mm"},
    zero=("window_length",),
    bad=(
        Bad("barrel_length", "6.5 in", "'6.5 in'", "6.5 mm"),
        Bad("stripped", '8"', "'8\"'", "8 mm"),
        Bad("window_length", "2 in", "'2 in'", "2 mm"),
        Bad("style", "ferule", "'ferule'", "did you mean ferrule?"),
    ),
    always={
        "wire": st.lists(texts(["22 AWG", "18 AWG", "1.5 mm2"]), min_size=1, max_size=3),
        "style": texts(["closed", "closed-insulated", "open", "stop", "ferrule", "twist-on"]),
    },
    sometimes={
        "barrel_length": near(6.5, high=12),
        "window_length": near(2, high=6),
        "stripped": near(6.5, 6.6, 7, 7.8, 8.5, 10, 12.7, high=20),
    },
    why=("Bare wire in the hand; what is nicked or solid does not go into an ordinary crimp."),
    cautions=("dead-01", "crimp-01", "crimp-02"),
    not_checked=("nicked or cut strands", "maker's own strip length"),
    steps=(
        Step(
            "strip length, lower limit",
            "stripped",
            {"6.5 mm": "marginal", "6.4 mm": "fail"},
            limit="no shorter than the barrel of 6.5 mm",
            source="two makers' crimp inspection sheets",
        ),
    ),
)
