"""The calculations that come with wirecalc, one module for each part of the trade.

They use the public names of `wirecalc` and the trade arithmetic in `wirecalc.conductors`,
`crimps`, `motors`, `runs`, `tables`, `sources`, `statistics`, `wires` and `charts`; a shop's
plugin may use the same, and copy these.
"""
