"""A current above all that any table gives a wire of its size is never passed over."""

from __future__ import annotations

import pytest

import wirecalc

from .records import memory, source

DROP = {"nameplate_voltage": "240 V", "voltage_at_rest": "240 V"}
RUN = DROP | {"run_length": "10 ft"}
LEAD = DROP | {"cord_length": "6 ft"}
JOINT = {"drop": "1 mV", "joint_length": "12 mm"}


def current_of(name):
    """The input that has the current: that of the joint, or that of the load."""
    return "joint_current" if name == "joint-drop" else "current"


ALONE = {"voltage_at_rest": "240 V", "load_kind": "heater", "run_length": "1 ft"}
SHEET = {
    **{
        "extension_cord": "10 AWG",
        "extension_length": "10 ft",
        "maker_allows": "yes",
        "grounding": "yes",
    },
    **{"cord_rating": "30 A", "cord_conductors": "2", "cord_ambient": "25 C", "has_motor": "no"},
}
ON_WIRE, ON_CORD = "current of the wire", "current of the cord"


@source("NEC (NFPA 70)", "2011 to 2023", "Table 310.16, 75 and 90 C", seen="two copies")
@source("NEC (NFPA 70)", "2011 to 2023", "Table 400.5(A)(1), heater cord", seen="one copy")
@source("a wire maker's page", "undated", "18 AWG, 29 A at 250 C, in free air", seen="one copy")
@memory("IEC 60364-5-52, 2009, Table B.52.12, method E; IEC 60335-1, Table 11")
@pytest.mark.parametrize(
    ("name", "given", "criterion", "kept", "doubted", "past"),
    [
        # 75 C: 20 A, 90 C: 25 A; 16 AWG stands in the 90 C column alone, 18 A
        ("drop", RUN | {"building_wire": "14 AWG"}, ON_WIRE, "20 A", "20.1 A", "25.1 A"),
        ("drop", RUN | {"building_wire": "14 AWG"}, ON_WIRE, "20 A", "25 A", "25.1 A"),
        ("drop", RUN | {"building_wire": "16 AWG"}, ON_WIRE, "18 A", None, "18.1 A"),
        # thinner than all that are listed carries no more than the last, 14 A
        ("drop", RUN | {"building_wire": "20 AWG"}, ON_WIRE, "14 A", None, "14.1 A"),
        ("drop", RUN | {"building_wire": "12 AWG aluminum"}, ON_WIRE, "20 A", "25 A", "25.1 A"),
        ("drop", RUN | {"building_wire": "2.5 mm2"}, ON_WIRE, "36 A", None, "36.1 A"),
        ("drop", RUN | {"building_wire": "14 AWG", "other_current": "8 A"},
         ON_WIRE, "12 A", "17 A", "18 A"),
        ("drop", LEAD | {"cord": "14 AWG"}, ON_CORD, "20 A", None, "20.1 A"),
        ("drop", LEAD | {"cord": "1.5 mm2"}, ON_CORD, "16 A", None, "16.1 A"),
        ("extension", SHEET | RUN | {"building_wire": "14 AWG"}, ON_WIRE, "20 A", "21 A", "26 A"),
        ("upstream", ALONE | {"building_wire": "14 AWG", "voltage_running": "239.9 V"}, ON_WIRE,
         "20 A", "25 A", "25.1 A"),
        ("upstream", ALONE | {"building_wire": "10 AWG", "voltage_running": "239.9 V",
         "extension_cord": "14 AWG",
         "extension_length": "1 ft"}, ON_CORD, "20 A", None, "20.1 A"),
        ("joint-drop", JOINT | {"wire": "18 AWG"}, ON_WIRE, "29 A", None, "29.1 A"),
        # above the appliance wires: the aircraft value of 8 AWG at 200 C, 71 A
        ("joint-drop", JOINT | {"wire": "8 AWG"}, ON_WIRE, "71 A", None, "71.1 A"),
    ],
)  # fmt: skip
def test_a_current_above_every_table_of_its_size(name, given, criterion, kept, doubted, past):
    for amps, verdict in ((kept, None), (doubted, "cannot tell"), (past, "fail")):
        if amps is not None:
            found = wirecalc.run(name, **(given | {current_of(name): amps}))
            judged = [c for c in found.criteria if c.criterion.name == criterion]
            assert [c.verdict for c in judged] == ([] if verdict is None else [verdict]), amps


@source("NEC (NFPA 70)", "2011 to 2023", "Table 310.16, 14 AWG, 90 C: 25 A", seen="two copies")
@source("a wire maker's page", "undated", "14 AWG, 45 A at 200 C, in free air", seen="one copy")
@pytest.mark.parametrize("name", ["drop", "upstream", "joint-drop"])
def test_a_meter_that_cannot_tell_the_current_from_the_limit(name):
    given = {
        "drop": RUN | {"building_wire": "14 AWG"},
        "upstream": ALONE | {"building_wire": "14 AWG", "voltage_running": "239.9 V"},
        "joint-drop": JOINT | {"wire": "14 AWG"},
    }[name]
    limit = 45 if name == "joint-drop" else 25
    for share, verdict in ((0.99, "cannot tell"), (1.04, "fail")):
        amps = f"{limit * share:g} A ±3%"
        found = wirecalc.run(name, **(given | {current_of(name): amps}))
        assert found.criterion("current of the wire").verdict == verdict
