"""Adiabatic heating of a wire: constants and equations of IEC 60364, ICEA and Onderdonk."""

from __future__ import annotations

import math
from typing import NamedTuple

from wirecalc import CMIL_PER_MM2, Confidence, Source, at_or_below, put, tables

_ICEA_KINDS = {"pvc": "thermoplastic", "xlpe": "thermoset"}
WEAKEST, STRONGEST = "pvc-105", "xlpe-epr-90"  # of the insulations that have a row


class Insulation(NamedTuple):
    """Temperatures in C, and the published k in A s^0.5/mm2 with its source, if there is one."""

    name: str
    initial: float
    final: float
    k: float | None
    source: Source


class AllowedTime(NamedTuple):
    """The time that is allowed, in s, and its source; a shorter one from memory, and its own."""

    seconds: float
    source: Source
    care: tuple[float, Source] | None = None


def insulations() -> list[str]:
    """Return the insulations of cables that have a published k."""
    rows = tables.load("adiabatic-k").where(use="in cable", metal="copper")
    return list(dict.fromkeys(r.text("insulation") for r in rows))


def insulation_of(metal: str, area: float, name: str) -> Insulation:
    """Return the insulation's row; that of copper gives the temperatures of another metal."""
    table = tables.load("adiabatic-k")
    for one in (metal, "copper"):
        rows = table.where(metal=one, use="in cable", insulation=name)
        fitting = [r for r in rows if area > r.number("over_mm2")]
        if fitting:
            row = max(fitting, key=lambda r: r.number("over_mm2"))
            k = row.number("k") if one == metal else None
            return Insulation(name, row.number("initial_C"), row.number("final_C"), k, row.source)
    raise AssertionError("the options of an input are rows of copper")


def constant(law: str, metal: str, item: str) -> float:
    """Return a constant of one of the equations."""
    row = tables.load("adiabatic-constants").row(law=law, metal=metal, item=item)
    return row.number("value")


def _k_squared(metal: str) -> float:
    """Return Qc (beta + 20) / rho20, in A^2 s/mm4."""
    beta = constant("iec", metal, "zero_resistance")
    capacity = constant("iec", metal, "heat_capacity")
    return capacity * (beta + 20) / constant("iec", metal, "resistivity_20C")


def formula_k(metal: str, initial: float, final: float) -> float:
    """Return k of the adiabatic formula between two temperatures, in A s^0.5/mm2; 0 over it."""
    beta = constant("iec", metal, "zero_resistance")
    rise = math.log((beta + final) / (beta + initial))
    return math.sqrt(_k_squared(metal) * max(rise, 0.0))


def formula_source() -> Source:
    """Return where the constants of the adiabatic formula come from: memory."""
    row = tables.load("adiabatic-constants").row(law="iec", metal="copper", item="heat_capacity")
    return row.source


class HeatedWire(NamedTuple):
    """A wire of metal and area in mm2, its overcurrent in A, insulation, and temperature in C.

    `before` is the temperature before the overcurrent; None: that of full load.
    """

    metal: str
    area: float
    current: float
    insulation: Insulation
    before: float | None

    @property
    def start(self) -> float:
        """Return the temperature before the overcurrent."""
        return self.insulation.initial if self.before is None else self.before

    def time(self, k: float) -> float:
        """Return the time in s that a factor k allows."""
        return (k * self.area / self.current) ** 2

    def log_time(self, law: str, ratio: float) -> float:
        """Return the time of ICEA's or Onderdonk's equation, in s."""
        share = self.area * CMIL_PER_MM2 / self.current
        factor = constant(law, self.metal, "factor")
        factor = 1 / factor if law == "onderdonk" else factor
        return factor * max(math.log10(ratio), 0.0) * share**2

    def log_working(self, law: str, final: float, zero: float) -> str:
        """Put the numbers into ICEA's or Onderdonk's equation."""
        if final <= self.start:
            return "none: it is as hot already"
        factor = put(constant(law, self.metal, "factor"))
        rise = f"log10(({put(final, 'C')} + {put(zero)}) / ({put(self.start, 'C')} + {put(zero)}))"
        share = f"({put(self.area * CMIL_PER_MM2, 'cmil')} / {put(self.current, 'A')})^2"
        times = f"{rise} / {factor}" if law == "onderdonk" else f"{factor} x {rise}"
        return f"{times} x {share}"

    def factor(self) -> tuple[float, Source]:
        """Return k: the published one from full load, else that of the formula."""
        if self.before is None and self.insulation.k is not None:
            return self.insulation.k, self.insulation.source
        own = self.insulation.source  # an end that is only remembered is less sure than the formula
        source = own if own.confidence is Confidence.MEMORY else formula_source()
        return formula_k(self.metal, self.start, self.insulation.final), source

    def icea_working(self) -> str:
        """Put the numbers into the equation of ICEA P-32-382."""
        kind = _ICEA_KINDS[self.insulation.name.partition("-")[0]]
        return self.log_working(
            "icea", constant("icea", kind, "final"), constant("icea", self.metal, "zero_resistance")
        )

    def icea(self) -> tuple[float, Source] | None:
        """Return the time of ICEA P-32-382 and its source, None where it has no limit."""
        kind = _ICEA_KINDS.get(self.insulation.name.partition("-")[0])
        if kind is None:
            return None
        constants = tables.load("adiabatic-constants")
        final = constants.row(law="icea", metal=kind, item="final")
        factor = constants.row(law="icea", metal=self.metal, item="factor")
        zero = constant("icea", self.metal, "zero_resistance")
        ratio = (final.number("value") + zero) / (self.start + zero)
        weaker = min((factor, final), key=lambda row: row.source.copies)
        return self.log_time("icea", ratio), weaker.source

    def limit(self, time: float) -> AllowedTime:
        """Return what is allowed; the published k counts from a cooler start too, if it is enough.

        ICEA P-32-382 rules where it is stricter and confirmed; from memory it stands beside it.
        """
        k, source = self.factor()
        published, own = self.insulation.k, self.insulation
        if published is not None and at_or_below(self.start, own.initial):
            k, source = (
                (published, own.source) if at_or_below(time, self.time(published)) else (k, source)
            )
        seconds, icea = self.time(k), self.icea()
        if icea is None or icea[0] >= seconds:
            return AllowedTime(seconds, source)
        if icea[1].copies:
            return AllowedTime(icea[0], icea[1])
        return AllowedTime(seconds, source, icea)

    def temperature_after(self, seconds: float) -> float | None:
        """Return the temperature in C, None past any for which the table has a k."""
        beta = constant("iec", self.metal, "zero_resistance")
        most = max(r.number("final_C") for r in tables.load("adiabatic-k").where(metal=self.metal))
        rise = seconds * (self.current / self.area) ** 2 / _k_squared(self.metal)
        if rise >= math.log((beta + most) / (beta + self.start)):
            return None
        return (beta + self.start) * math.exp(rise) - beta

    def temperature_working(self, seconds: float) -> str:
        """Put the numbers into the temperature after a time in s."""
        beta = put(constant("iec", self.metal, "zero_resistance"))
        amps = f"({put(self.current, 'A')} / {put(self.area, 'mm2')})^2"
        rise = f"{put(seconds, 's')} x {amps} / {put(_k_squared(self.metal))}"
        return f"({beta} + {put(self.start, 'C')}) x exp({rise}) - {beta}"
