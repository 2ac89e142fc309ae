"""A kind of job under another name in use must have what that kind must have."""

from __future__ import annotations

import pytest

from wirecalc import tables
from wirecalc.jobs import sheet as jobsheet
from wirecalc.jobs.job import Job
from wirecalc.jobs.sheet import kinds
from wirecalc.plugging import host

from . import sheets
from .sheets import check, whole

CATALOGUE = host.build(bundled_only=True)
MEANS = {  # common practice, no source
    "refrigerator": ["fridge", "Fridge", "wine cooler", "fridge-freezer", "old kitchen fridge"],
    "freezer": ["chest freezer"],
    "air-conditioner": ["AC", "ac", "A/C", "heat pump", "Mini Split", "mini-split", "AC unit"],
    "range": ["oven", "stove", "cooktop", "hob", "electric range oven", "built-in oven"],
    "gas-range": ["gas stove", "gas range", "gas oven"],
    "dryer": ["clothes dryer", "tumble dryer", "electric tumble dryer"],
    "gas-dryer": ["gas dryer", "Gas clothes dryer"],
    "heat-pump-dryer": ["heat pump dryer"],
    "water-heater": ["hot water tank", "water heater", "heat pump water heater"],
    "microwave": ["microwave oven"],
    "washer": ["washing machine"],
    "disposal": ["garbage disposal"],
    "ice-machine": ["ice maker", "ice machine"],
    "fan": ["ceiling fan", "Attic fan"],
    "portable-heater": ["space heater", "fan heater", "portable heater"],
    "sump-pump": ["sump pump", "sewage pump"],
    "other": ["range hood", "toaster oven", "coffee maker", "hair dryer"],
}
NAMED = [(name, kind) for kind, names in MEANS.items() for name in names]


def evaluate(text: str) -> Job:
    return jobsheet.evaluate(sheets.read(text), CATALOGUE)


@pytest.mark.parametrize(("name", "kind"), NAMED)
def test_another_name_must_have_what_its_kind_must_have(name: str, kind: str) -> None:
    def asked(said: str) -> set[str]:
        job = evaluate(whole(kind=said).replace('energy = "electric"\n', ""))
        open_ = {c.key for c in job.confirmed if not c.answer}
        return open_ | {n.calculation for n in job.not_tested if n.required}

    assert asked(kind) <= asked(name)
    if kind not in ("washer", "other", "disposal", "heat-pump-dryer"):
        assert asked(name)


def test_a_name_that_is_listed_is_the_kind_and_no_note() -> None:
    job = evaluate(whole(kind="Fridge") + check("inrush"))
    assert (job.kind, job.verdict) == ("refrigerator", "pass")
    assert not [said for said in job.remarks if "no kind" in said]
    assert kinds.find("fridge", CATALOGUE) == "refrigerator"


def test_a_name_within_other_words_is_a_note() -> None:
    (said,) = [r for r in evaluate(whole(kind="old kitchen fridge")).remarks if "no kind" in r]
    assert "did you mean refrigerator?" in said


@pytest.mark.parametrize(
    "kind", ["iron", "blender", "mixer", "rice maker", "toaster", *MEANS["other"]]
)
def test_another_machine_is_not_taken_for_one_that_is_written_a_little_like_it(kind: str) -> None:
    assert evaluate(whole(kind=kind)).verdict == "pass"


@pytest.mark.parametrize("kind", ["refridgerator", "frezer", "dryr", "ragne", "watr heater"])
def test_a_slip_of_a_letter_loses_nothing(kind: str) -> None:
    assert evaluate(whole(kind=kind)).verdict == "cannot tell"


def test_a_machine_of_the_workshop_is_not_taken_for_the_bench() -> None:
    job = evaluate(whole(kind="bench grinder"))
    assert not [said for said in job.remarks if "did you mean" in said]


def test_the_table_names_kinds_that_there_are_and_nothing_twice() -> None:
    rows = tables.load("job-kind-names").rows
    assert {row.text("kind") for row in rows} <= set(kinds.table_kinds()) - {"bench"}
    plain = [" ".join(row.text("name").casefold().replace("-", " ").split()) for row in rows]
    assert len(plain) == len(set(plain))
    listed = {k.replace("-", " ") for k in kinds.table_kinds()}
    assert not listed & set(plain)
