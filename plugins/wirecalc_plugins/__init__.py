"""The calculations that come with wirecalc, one package for each part of the trade.

`shelf` names them all; each stands in the module of its name. They use the public names of
`wirecalc` and its trade arithmetic (`wirecalc.trade.conductors`, `crimps`, `motors`, `overcurrent`,
`recordings`, `runs`, `statistics`, `wires`, `charts` ...); a shop's plugin may use the same, and
copy these.
"""
