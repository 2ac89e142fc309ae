"""The start of a single-phase motor, simulated."""
