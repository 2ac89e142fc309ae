"""The arithmetic of the trade in plain floats, and its look-ups: public, for any plugin."""
