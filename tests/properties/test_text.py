"""Any text on the command line ends in a status of 0, 1, 2 or 3, and never in a traceback."""

from __future__ import annotations

import pytest
from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st

from tests.calculations.trials import BUNDLED as NAMES
from tests.calculations.trials import CATALOGUE, FILED, TRIALS
from wirecalc import ReadingsFile, ReadingsStream, cli
from wirecalc.testing import strategies
from wirecalc.testing.strategies import NASTY

pytestmark = pytest.mark.usefixtures("built_once")
BOUNDED = settings(
    deadline=None,
    max_examples=25,
    suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow],
)

ELSEWHERE = ("--output",)  # writes a file


def general(text: str) -> bool:
    return not text.startswith(ELSEWHERE)


texts = strategies.texts().filter(general)


def options_of(name: str) -> list[str]:
    return [i.option for i in CATALOGUE.calculations[name].calculation.inputs]


# columns are those of a file, which is not there; what reads open contradicts its resistance
NOT_BESIDE = (
    "by",
    "column",
    "ground_open",
    "element_open",
    "overload_open",
    "device_open",
    "coil_open",
)
NOT_BESIDE += ("contact_upright", "contact_inverted")  # of a relay, and the example is none
NOT_BESIDE += ("measured_capacitance",)  # beside amps and volts of the same part
NOT_BESIDE += ("only_receptacle of breaker", "other_leg_current of drop")  # of other circuits
NOT_BESIDE += ("starts of trip", "rcd_rating")  # of a start, not a current; beside a GFCI
NOT_BESIDE += ("line_line of outlet",)  # the example has one line
NOT_BESIDE += ("nameplate_voltage of start-curve",)  # a plate stands in place of a machine


def examples_of(name: str) -> list[str]:
    alone = {*NOT_BESIDE, *(f"{i} of {name}" for i in TRIALS[name].apart)}
    inputs = [
        i
        for i in CATALOGUE.calculations[name].calculation.inputs
        if not i.kind.goes_with
        and not isinstance(i.kind, ReadingsFile | ReadingsStream)
        and not {i.name, f"{i.name} of {name}"} & alone
    ]
    return [word for i in inputs for word in (i.option, i.kind.example)]


def run(capsys: pytest.CaptureFixture[str], words: list[str]) -> int:
    capsys.readouterr()
    status = cli.main(words)
    out, err = capsys.readouterr()
    assert status in (0, 1, 2, 3), err
    assert "Traceback" not in out + err
    if status == 2:
        assert out == ""
        said_what_fits = "`wirecalc` lists all" in " ".join(err.split())
        assert err.startswith("wirecalc: ") or said_what_fits
    else:
        assert out.strip()
    return status


@pytest.mark.parametrize("name", [n for n in NAMES if n not in FILED])
def test_the_examples_of_the_inputs_run(name: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(capsys, [name, *examples_of(name)]) in (0, 1, 3)


@pytest.mark.parametrize("name", NAMES)
def test_any_text_as_the_value_of_an_input(name: str, capsys: pytest.CaptureFixture[str]) -> None:
    @BOUNDED
    @given(st.sampled_from(options_of(name)), texts, st.booleans(), st.sampled_from("tj"))
    def check(option: str, text: str, joined: bool, form: str) -> None:
        words = [name, *examples_of(name)]
        if option in words:
            del words[words.index(option) : words.index(option) + 2]
        words += [f"{option}={text}"] if joined else [option, text]
        run(capsys, [*words, "--format", "json" if form == "j" else "text", "--working"])

    check()


@pytest.mark.parametrize("name", NAMES)
def test_a_nasty_text_as_the_value_of_every_input(
    name: str, capsys: pytest.CaptureFixture[str]
) -> None:
    for text in NASTY:
        words = [f"{option}={text}" for option in options_of(name)]
        only_a_wire = options_of(name) == ["--wire"] and text == "0 AWG"  # which is 1/0 AWG
        wanted = (0, 3) if only_a_wire else (2, 3)
        assert run(capsys, [name, *words]) in wanted, ascii(text)[:90]


@pytest.mark.parametrize("name", NAMES)
def test_any_text_as_a_word_or_an_option(name: str, capsys: pytest.CaptureFixture[str]) -> None:
    words = st.one_of(
        texts,
        texts.map(lambda t: f"--{t}").filter(general),
        st.sampled_from(options_of(name)),
        st.sampled_from(["--format", "--working", "--no-marginal", "--bundled-only", "-h", "-x"]),
    )

    @BOUNDED
    @given(st.lists(words, max_size=6))
    @example(["--\0"])
    @example(["--working=x"])
    @example(["--format"])
    @example(["--format", "%"])
    def check(more: list[str]) -> None:
        run(capsys, [name, *more])

    check()


@BOUNDED
@given(texts.filter(lambda t: t not in NAMES), st.lists(texts, max_size=3))
def test_any_text_as_the_name_of_a_calculation(
    capsys: pytest.CaptureFixture[str], name: str, more: list[str]
) -> None:
    run(capsys, [name, *more])


@pytest.mark.parametrize("name", NAMES)
def test_any_mix_of_texts_for_all_inputs(name: str, capsys: pytest.CaptureFixture[str]) -> None:
    kinds = {i.option: i.kind.example for i in CATALOGUE.calculations[name].calculation.inputs}
    each = {o: st.just(e) | st.just("unknown") | texts for o, e in kinds.items()}

    @BOUNDED
    @given(st.fixed_dictionaries({}, optional=each))
    def check(given_: dict[str, str]) -> None:
        run(capsys, [name, *(f"{option}={text}" for option, text in given_.items())])

    check()
