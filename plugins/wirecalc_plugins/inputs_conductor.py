"""Inputs of a conductor whose ohms are printed, in place of those that its size has by a table."""

from __future__ import annotations

from wirecalc import Nameplate, OneOf

METALS = ("copper", "aluminium")

RESISTANCE_PER_LENGTH = Nameplate(
    "ohm/kft",
    above=0,
    high=1_000_000,
    typical="3.14 ohm/kft",
    text="resistance of a length of one conductor, as printed",
)
RESISTIVITY = Nameplate(
    "nohm m",
    low=15,
    high=2000,
    typical="17.241 nohm m",
    text="resistivity of the metal of the wire",
)
KNOWN_AT = Nameplate(
    "C",
    low=-40,
    high=150,
    typical="20 C",
    text="temperature at which resistance_per_length or resistivity is printed",
)
KNOWN_AT_20 = "tables and makers print it for 20 C"
CONDUCTOR_METAL = OneOf(METALS, text="metal of a conductor of which a resistance is printed")
RISES = "it says how the ohms rise with temperature"
