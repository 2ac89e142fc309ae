"""Kinds of input: what each reads, shows, spans, and says of what it does not take."""

import pytest

from wirecalc.base.errors import BadText, DeclarationError
from wirecalc.typed.counts import Count
from wirecalc.typed.kinds import TAKEN_AS_EXACT, Kind, Read
from wirecalc.typed.quantity_kinds import Nameplate, Reading
from wirecalc.typed.word_kinds import OneOf, RangeKind, WireKind, YesNo

AMPS = Reading("A", text="current", above=0.0, high=100.0, typical="12.0 A", slip_under=0.5)
MEGOHMS = Reading("Mohm", text="insulation", low=0.0, high=9999.0, past=">", typical="50 Mohm")
OHMS = Reading("ohm", text="bond", low=0.0, high=100.0, past="<", if_open="write unknown")
PLAIN = Reading("V", text="voltage", low=0.0, high=600.0)
DEGREES = Reading("C", text="temperature", low=-40.0, high=120.0)
PLATE = Nameplate("A", text="rating", low=1.0)


def refusal(kind: Reading | Nameplate | Count, given: object) -> str:
    with pytest.raises(BadText) as refused:
        kind.read(given)
    return str(refused.value)


@pytest.mark.parametrize(
    ("kind", "value", "inside"),
    [
        (AMPS, 0.0, False),
        (AMPS, -1.0, False),
        (AMPS, 0.001, True),
        (AMPS, 100.0, True),
        (AMPS, 100.001, False),
        (PLAIN, 0.0, True),
        (PLAIN, -0.001, False),
        (PLATE, 1e9, True),
        (PLATE, 1.0, True),
        (PLATE, 0.999, False),
    ],
)
def test_the_span_of_a_quantity_has_its_ends(kind: Reading, value: float, inside: bool) -> None:
    assert kind.inside(value) is inside


def test_only_what_lies_at_or_under_the_open_end_is_excluded() -> None:
    assert [AMPS.excludes(value) for value in (-1.0, 0.0, 0.001)] == [True, True, False]
    assert not PLAIN.excludes(0.0)


def test_span_and_example_in_words() -> None:
    assert (AMPS.span, AMPS.example) == ("over 0 up to 100 A", "12.0 A")
    assert (PLAIN.span, PLAIN.example) == ("from 0 up to 600 V", "10 V")
    assert PLATE.span == "from 1 A"
    assert Nameplate("A", text="rating").span == "A"


def test_a_meters_end_needs_an_end_of_the_span() -> None:
    for past, more in ((">", {"low": 0.0}), ("<", {"high": 1.0})):
        with pytest.raises(DeclarationError, match="the span has no end"):
            Reading("ohm", text="bond", past=past, **more)


def test_a_reading_has_the_band_of_its_error_cut_at_the_span() -> None:
    exact = AMPS.read("12 A")
    assert (exact.low, exact.high, exact.notes) == (None, None, (TAKEN_AS_EXACT,))
    read = AMPS.read("99 A ±2 A")
    assert (read.low, read.high, read.excluded) == (97.0, 100.0, False)
    assert AMPS.read("1 A ±2 A")[1:4] == (0.0, 3.0, True)  # it reaches what it cannot be
    assert PLAIN.read("1 V ±2 V")[1:4] == (0.0, 3.0, False)


@pytest.mark.parametrize(
    ("given", "error", "low", "high"),
    [
        ("10 A", "±2%", 9.8, 10.2),
        ("10 A", "+/-2%", 9.8, 10.2),
        ("10 A", "2%", 9.8, 10.2),
        ("10 A ±1 A", "2%", 9.0, 11.0),  # its own goes before that of all
        ("10 A", None, None, None),
    ],
)
def test_the_error_given_for_all_readings(
    given: str, error: str | None, low: float | None, high: float | None
) -> None:
    kind = Reading("A", text="current", low=0.0, high=100.0, error_input="meter_error")
    read = kind.read_with(given, {"meter_error": error})
    assert (read.low, read.high) == (pytest.approx(low), pytest.approx(high))


def test_a_number_without_a_unit_is_refused_with_the_text_that_would_do() -> None:
    assert refusal(AMPS, 12) == '12 has no unit; write it as text: "12 A"'
    assert refusal(AMPS, float("inf")) == 'inf has no unit; write it as text: "12.0 A"'
    assert "True is not text" in refusal(AMPS, True)


def test_a_small_value_in_a_smaller_unit_is_asked_about() -> None:
    assert refusal(AMPS, "120 mA") == (
        "'120 mA' is next to nothing; "
        "which unit was meant? write 120 A, or 0.12 A if it is so little"
    )
    assert AMPS.read("500 mA").value == 0.5
    assert AMPS.read("0.12 A").value == 0.12
    volts = Reading("V", text="voltage", low=0.0, high=600.0, slip_under=50.0)
    assert volts.read("0 mV").value == 0.0
    assert "next to nothing" in refusal(volts, "500 mV")


@pytest.mark.parametrize(
    ("kind", "given", "says"),
    [
        (DEGREES, "150 C", "did you mean 150 F?"),
        (DEGREES, "-100 C", "such as 10 C"),  # -100 F is -73 C
        (Nameplate("lbf", text="pull", low=0.0, high=50.0), "100 lbf", "such as 10 lbf"),
        (Nameplate("mm", text="strip", low=2.0, high=20.0), "0.5 mm", "did you mean 0.5 in?"),
        (MEGOHMS, "20000 Mohm", "mohm is a thousandth of an ohm, Mohm a million: which was meant?"),
        (
            Nameplate("mV", text="drop", low=0.0, high=500.0, typical="14 mV"),
            "14 V",
            "check the number and its unit",
        ),
        (
            Nameplate("mV", text="drop", low=0.0, high=500.0, typical="14 mV"),
            "15 V",
            "such as 14 mV",
        ),
    ],
)
def test_what_would_do_for_a_value_outside_its_span(
    kind: Reading | Nameplate, given: str, says: str
) -> None:
    assert refusal(kind, given) == f"{given!r} is outside {kind.span}; {says}"


@pytest.mark.parametrize(
    ("given", "parts"),
    [
        ("12 A", ["12 A"]),
        ("12 A; 13 A", ["12 A", " 13 A"]),
        ("12 A, 13 A", ["12 A", " 13 A"]),
        ("12 A ±0.1 A, 13 A", ["12 A ±0.1 A, 13 A"]),
        ("12 A +/-0.1 A, 13 A", ["12 A +/-0.1 A, 13 A"]),
        ("12 A +-0.1 A, 13 A", ["12 A +-0.1 A, 13 A"]),
        ("1,5 mm", ["1,5 mm"]),
        ("12, 13 A", ["12, 13 A"]),
        (12, [12]),
    ],
)
def test_the_values_of_a_list_are_parted(given: object, parts: list[object]) -> None:
    assert list(AMPS.parts(given)) == parts


def test_past_the_end_of_the_meter() -> None:
    above = MEGOHMS.read(">999 Mohm")
    assert above[:4] == (999.0, 999.0, 9999.0, False)
    assert above.notes == ("more than 999 Mohm",)
    below = OHMS.read("<0.1 ohm")
    assert (below.value, below.low, below.high) == (0.1, 0.0, 0.1)
    assert below.notes == ("less than 0.1 ohm",)
    assert refusal(MEGOHMS, "<999 Mohm") == (
        "'<999 Mohm' is no one number; read it on a lower range, "
        "or write 499.5 Mohm ±499.5 Mohm for 0 to 999 Mohm"
    )
    under = MEGOHMS.read("499.5 Mohm ±499.5 Mohm")
    assert (under.low, under.high) == (0.0, 999.0)
    assert refusal(OHMS, ">1 ohm") == (
        "'>1 ohm' is no one number; read it again on a higher range of the meter, or write unknown"
    )
    assert "says a side and an error; drop the ± part" in refusal(MEGOHMS, ">999 Mohm ±1 Mohm")
    with pytest.raises(BadText):
        OHMS.read("")


def test_open_is_told_what_to_write() -> None:
    assert refusal(MEGOHMS, "OL") == (
        "'OL' is no number: it is past the meter's range; "
        "write the end of its range with >, such as >50 Mohm, or unknown"
    )
    assert refusal(OHMS, " 0L Mohm ").endswith("write unknown")
    assert refusal(PLAIN, "open").endswith("take a higher range of the meter, or write unknown")


def test_a_printed_value_has_no_error() -> None:
    assert PLATE.read("15 A") == (15.0, None, None, False, (), "", "")
    assert "a printed value has no meter error" in refusal(PLATE, "15 A ±1 A")


@pytest.mark.parametrize("lacks", ["read", "example", "span", "schema"])
def test_a_kind_of_a_plugins_own_says_all_that_a_kind_must(lacks: str) -> None:
    whole = {
        "of": str,
        "text": "any text",
        "read": lambda self, given: Read(given),
        "example": "text",
        "span": "text",
        "schema": {},
    }
    own = type("Own", (Kind,), whole)
    assert own().read_with("so", {}).value == "so"
    assert own().show(3) == "3"
    assert list(own().parts("a; b")) == ["a", " b"]
    assert list(own().parts("a, b")) == ["a, b"]
    without = type("Own", (Kind,), {k: v for k, v in whole.items() if k != lacks})
    with pytest.raises(TypeError, match=lacks):
        without()


def test_counts() -> None:
    three = Count("wires", low=1, high=3)
    assert [three.read(given).value for given in (1, "3", " 2 ")] == [1, 3, 2]
    assert refusal(three, 0) == "0 is outside 1 to 3; write a whole number, 1 to 3"
    assert "4 is outside" in refusal(three, "4")
    for wrong in (True, 2.0, "two", "1.0", None, "1234567890"):
        assert "is not a count" in refusal(three, wrong)
    assert [Count("n", low=low, high=high).example for low, high in ((1, 3), (1, 1), (5, 9))] == [
        "2",
        "1",
        "5",
    ]
    assert (three.schema["minimum"], three.schema["maximum"]) == (1, 3)


def test_words_of_a_list() -> None:
    kind = OneOf(("ring", "spade", "M4", "M5"), text="kind of terminal")
    assert kind.read(" RING ").value == "ring"
    with pytest.raises(BadText, match="did you mean spade"):
        kind.read("spad")
    with pytest.raises(BadText, match="is not one of ring, spade, M4, M5; such as ring"):
        kind.read("9")
    assert kind.schema == {
        "type": "string", "description": "kind of terminal", "enum": ["ring", "spade", "M4", "M5"],
    }  # fmt: skip


def test_yes_no_wires_and_ranges() -> None:
    asked = YesNo("whether it is wet")
    assert [asked.read(given).value for given in ("yes", " Y", "no", "N", True, False)] == [
        True, True, False, False, True, False,
    ]  # fmt: skip
    assert (asked.show(True), asked.show(False)) == ("yes", "no")
    for wrong in ("maybe", 1, None):
        with pytest.raises(BadText, match="neither yes nor no"):
            asked.read(wrong)
    assert asked.schema["enum"] == [True, False, "yes", "no"]
    wire = WireKind("the wire")
    assert list(wire.parts("18,16 AWG")) == ["18 AWG", "16 AWG"]
    assert list(wire.parts(18)) == [18]
    assert wire.read("18 AWG").notes == ("assumed stranded", "assumed copper")
    assert wire.schema == {"type": "string", "description": "the wire", "examples": ["18 AWG"]}
    assert RangeKind("the bag").read("16-14 AWG").value.thickest == "14"
