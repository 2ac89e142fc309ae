"""Breakers, fuses and wires under too much current."""
