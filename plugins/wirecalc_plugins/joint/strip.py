"""Strip lengths."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    Item,
    Origin,
    Source,
    at_least,
    at_most,
    calculation,
    cannot_tell,
    figure,
)

from .strip_inputs import BarrelLength, Stripped, Style, WindowLength, WireInput
from .strip_lengths import MM_PER_IN, Length, bare_wire, length_of, strip_to, twist_on


@calculation(
    part="wire and joint",
    words=(
        "strip length; stripping; stripping length; how long to strip; how much to strip",
        "how far to strip; bare wire; bare; exposed wire; exposed copper; wire sticks out",
        "stripper; strippers; wire stripper; ferrule; ferrules; bootlace ferrule; ferrule length",
        "end sleeve; barrel length; barrel depth; window; too short; too long",
        "insulation in barrel; insulation in crimp; wire prep; cut back; crimp; over stripped",
        "overstripped; under stripped; copper showing; bare copper; strip gage",
        "take off insulation; insulation to remove; skin; trim; stripping template",
        "strip len; how far back; how much bare; bare length; bare copper length",
        "strip for a spade; strip for spade; strip for ferrule; insulation off; peel",
        "strip too long; strip too short; mm to strip; ferrule size; bootlace; strip gauge",
        "copper sticking out; whiskers",
        "remove insulation; take insulation off; remove the plastic; bare the wire; how to bare",
        "skin the wire; centimetres to remove; take off the plastic; remove from cable",
    ),
    go_on="strip a trial piece, look for nicks, then crimp: strands",
    cautions=("dead-01", "crimp-01", "crimp-02"),
    not_checked=("nicked or cut strands: look at every strand", "the maker's own strip length"),
    example_with=("barrel_length",),
    exercises=".strip_exercises",
)
def strip(
    wire: WireInput,
    style: Style,
    barrel_length: BarrelLength = None,
    window_length: WindowLength = None,
    stripped: Stripped = None,
) -> Iterator[Item]:
    """How long must this wire be stripped, and is a stripped length right?

    closed: barrel + gap + brush; the gap 0.25 to 0.75 mm for 20 AWG and thinner, to 1.25 mm for
    thicker wire (NASA-STD-8739.4), the brush flush to 0.8 mm (common practice). closed-insulated:
    barrel + brush, the insulation butts against the barrel. open: wire crimp + brush 0.1 to
    0.5 mm, the insulation edge anywhere in the window. stop: depth + gap. ferrule: sleeve, 2 mm
    more with a collar. twist-on: its own instruction governs; about 12.7 mm for two wires, 19 to
    25.4 mm for more. Not for push-in and lever connectors, which have a gauge printed on them.

    Inputs: wire; style; barrel_length in mm (over 0 to 60), window_length in mm (0 to 20),
    stripped in mm (over 0 to 100). Yields the span in words and the lengths in mm and inch, and
    judges a measured one: insulation in the barrel fails, past the advised span is marginal, and
    bare wire past what a crimp may leave fails: to 6 mm2 2 mm before the barrel and 1 mm behind
    it, or the window (JEM-TR 162); behind a stop 3.05 mm (airframe practice; 6.35 mm from 8 AWG).
    Source: table strip-rules.
    """
    if style == "twist-on":
        yield from twist_on(wire, stripped)
        return
    if barrel_length is None:
        yield cannot_tell(
            "strip length",
            f"a {style} barrel is stripped by its length, and it was not given",
            measure="measure the wire barrel, or read its maker's drawing",
            needs=("barrel_length",),
        )
        return
    if style == "open" and window_length is None:
        yield cannot_tell(
            "longest strip length",
            "how far the strip may reach depends on the window of this open barrel",
            measure="measure the gap between the two crimps",
            needs=("window_length",),
        )
    length = length_of(style, wire, barrel_length, window_length or 0.0)
    if style != "open" or window_length is not None:
        yield strip_to("", length.least, length.most)
    nominal = (length.least + length.most) / 2
    for name, value, source, working in (
        ("least strip length", length.least, length.source, length.least_working),
        ("nominal strip length", nominal, length.source, length.nominal_working),
        ("most strip length", length.most, length.most_source, length.most_working),
    ):
        inches = [(value / MM_PER_IN, "in")]
        yield figure(name, value, "mm", source=source, also=inches, working=working)
    if stripped is not None:
        yield from _judge(stripped, length, bare_wire(wire, style, window_length))


def _judge(stripped: float, length: Length, bare: tuple[float, Source] | None) -> Iterator[Item]:
    yield at_least(
        "strip length, lower limit",
        stripped,
        length.fills,
        "mm",
        caution=length.least,
        source=length.source,
        says="the insulation is in the barrel or so near that it may be drawn in",
        action="cut back and strip again",
    )
    if bare is None:
        return
    most, source = bare
    yield at_most(
        "strip length, upper limit",
        stripped,
        length.most,
        "mm",
        source=length.most_source,
        origin=Origin.PRACTICE,
        advisory=True,
        says="bare wire shows outside the connector",
        action="trim the end",
        behind="bare wire past what a crimp of its kind may leave, before and behind it, fails",
    )
    yield at_most(
        "bare wire outside the barrel",
        stripped,
        length.fills + most,
        "mm",
        source=source,
        says="so much bare wire can touch or be touched",
        action="cut back and strip again; in a sleeve or grip too the insulation must reach it",
    )
