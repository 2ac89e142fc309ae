"""Motors: windings, start parts, and what the readings of a start mean."""
