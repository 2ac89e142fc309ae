"""Before a machine goes back to its user: insulation, leakage, ground path."""
