"""Capacitors of a motor: weak or good, what may replace one, and how to bleed it."""
