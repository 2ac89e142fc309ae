"""Heating elements and the thermal cut-offs beside them."""
