"""Which hazards go with the checks before a machine goes back, by the hands that do them."""

import pytest

import wirecalc

HAZARDS = {
    # hands on live parts joined: prove dead; then a run on a GFCI, a ground that stays connected
    "screening": {"dead-01", "dead-02", "gnd-01", "gfci-01", "flam-01"},
    # 500 V dc: prove dead, bleed; boards unplugged, and none where flammable gas may be
    "insulation": {"dead-01", "dead-02", "cap-01", "ins-01", "ins-02"},
    "leakage": {"wat-01", "gfci-01", "flam-01"},
    "ground": {"gnd-01", "gnd-02", "dead-02"},
    "discharge": {"cap-01", "cap-02", "flam-01"},
    "extension": {"cord-04"},
}


@pytest.mark.parametrize("name", HAZARDS)
def test_each_check_comes_with_its_hazards(name: str) -> None:
    calculation = wirecalc.build(bundled_only=True).calculations[name].calculation
    finding = wirecalc.run(name, **calculation.example_inputs)
    assert {caution.key for caution in finding.cautions} >= HAZARDS[name]
