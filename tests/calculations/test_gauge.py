"""What the shared tests need to know of `gauge`."""

from __future__ import annotations

from .trial import Bad, Trial, When, near, texts

TRIAL = Trial(
    good={"strands": "41", "strand_diameter": "0.254 mm", "outside_diameter": "3 mm"}
    | {"metal": "copper"},
    bad=(
        Bad("strand_diameter", "0.010 mm", "41 x 0.01 mm", "0.01 in"),  # inches typed as mm
        Bad("strand_diameter", "2.5 mm", "41 x 2.5 mm", "one strand"),  # the bundle
        Bad("strand_diameter", "0.03 mm", "41 x 0.03 mm", "check mm"),
        Bad("strand_diameter", "25 mm", "'25 mm'", "0.254 mm"),
        Bad("strands", "0", "0 is outside", "whole number"),
        Bad("outside_diameter", "1.2 mm", "1.2 mm", "check the count"),
        Bad("outside_diameter", "3 in", "'3 in'", "3 mm"),
        Bad("metal", "aluminum", "'aluminum'", "did you mean aluminium?"),
    ),
    sometimes={
        "strands": texts(["1", "16", "19", "26", "41", "65"]),
        "strand_diameter": near(0.127, 0.16, 0.2, 0.254, 0.287, 0.36, 0.455, high=0.8),
        "metal": texts(["copper", "tinned copper", "aluminium"]),
        "outside_diameter": near(2, 3, 6, high=12),
    },
    why=(
        "Strands are measured on bare wire; of an unmarked one neither metal nor "
        "insulation is known."
    ),
    cautions=("dead-01", "alu-01"),
    not_checked=("temperature and voltage rating",),
    when=(When("strands are silver through", {"metal": "aluminium"}),),
)
