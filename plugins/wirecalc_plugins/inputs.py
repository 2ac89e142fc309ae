"""Inputs that several calculations share: one quantity at one place, declared once."""

from __future__ import annotations

from wirecalc import Nameplate, Reading

WIRE_RATING = Nameplate("C", low=40, high=500, typical="105 C", text="rating printed on the wire")
TERMINAL_RATING = Nameplate("C", low=40, high=500, typical="105 C", text="rating of the terminal")
PLACE = Reading("C", low=-40, high=500, typical="60 C", text="temperature of the place")
TAB_WIDTH = Nameplate("in", low=0.05, high=0.5, typical="0.250 in", text="width of the tab")
CURRENT = Reading("A", low=0, high=200, typical="8.7 A", text="line current of the load")
VOLTAGE = Reading("V", low=0, high=1000, typical="120 V", text="voltage of the circuit")
BREAKER = Nameplate("A", low=5, high=100, typical="15 A", text="rating on the breaker handle")
MARKED_CAPACITANCE = Nameplate("uF", above=0, high=2000, typical="30 uF", text="size marked on it")
LINE_VOLTAGE = Reading("V", above=0, high=700, typical="120 V", text="volts of the supply")
