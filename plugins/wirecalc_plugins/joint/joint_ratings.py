"""What a joint must stand: heat of its place, voltage, insulation, solid or stranded wire."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from wirecalc import (
    MAKER,
    PRACTICE,
    Item,
    Origin,
    Source,
    Wire,
    at_least,
    at_most,
    cannot_tell,
    caution,
    confirmed,
    not_checked,
    requires,
)

ROOM_K = 20.0  # kelvin that the weakest rating lies above the place; 15 to 20 K is practice
_ALUMINIUM = confirmed("cpsc-516", "CPSC Publication 516", "June 2011", copies=3)
USUAL_V = 300.0  # connectors are marked 300 V or 600 V; common practice, no source


def temperature(wire: float | None, terminal: float | None, place: float | None) -> Iterator[Item]:
    """Judge the ratings of wire and terminal, in C, against the temperature of the place."""
    yield known_place(place)
    yield from rating_of("wire", wire, place)
    yield from rating_of("terminal", terminal, place)


def known_place(place: float | None) -> Item:
    """Ask for the temperature of the place, or say what its heat asks of the joint."""
    if place is not None:
        return caution("heat-01")
    return cannot_tell(
        "temperature of the place",
        "it was not measured",
        measure="measure it with the machine hot, or take it from the maker's sheet",
        needs=("place_temperature",),
    )


def rating_of(part: str, rating: float | None, place: float | None) -> Iterator[Item]:
    """Judge the rating of a part, in C, against the temperature of its place."""
    name = f"temperature rating of the {part}"
    wanted = "" if place is None else f"a rating of {place + ROOM_K:.0f} C or more"
    if rating is None:
        yield cannot_tell(
            name,
            "the rating is not known, and the weakest one decides",
            measure=f"{wanted} would do; read the marking" if wanted else "read the marking",
            needs=(f"{part}_temperature",),
        )
    elif place is not None:
        yield at_least(
            name,
            rating,
            place + ROOM_K,
            "C",
            source=PRACTICE,
            origin=Origin.PRACTICE,
            says=f"it must lie {ROOM_K:.0f} K above the place, for the heat of the current",
            action=f"use a {part} rated for the place and {ROOM_K:.0f} K more",
        )


def voltage(volts: float, rated: float | None) -> Item:
    """Judge the voltage of the circuit against that marked on the connector, else the usual one."""
    marked = rated is not None
    return at_most(
        "voltage of the connector",
        volts,
        rated if rated is not None else USUAL_V,
        "V",
        source=MAKER if marked else PRACTICE,
        origin=Origin.MAKER if marked else Origin.PRACTICE,
        says="" if marked else f"{USUAL_V:g} V is the lower of the usual markings",
        action="use a connector marked for the voltage",
    )


def insulation(diameter: float, limit: float | None) -> Item:
    """Judge whether the insulation goes into the funnel or the insulation barrel."""
    name = "insulation in the insulation barrel"
    if limit is None:
        return not_checked(name, "the largest that the maker lists was not given")
    return at_most(
        name,
        diameter,
        limit,
        "mm",
        source=MAKER,
        origin=Origin.MAKER,
        action="use a terminal for thicker insulation; do not shave it",
    )


def listed(wires: Sequence[Wire], listed_for: str | None) -> Iterator[Item]:
    """Judge whether the connector is listed for such wire: stranded, solid, or both together."""
    builds = {"stranded" if w.stranded else "solid" for w in wires}
    what = "solid and stranded wire together" if len(builds) > 1 else f"{builds.pop()} wire"
    name = "listed for this wire"
    takes = {"stranded": "stranded wire", "solid": "solid wire"}
    if listed_for is None:
        if what != "stranded wire":
            yield cannot_tell(
                name,
                f"whether the maker lists it for {what} is not known",
                measure="read the package and say --listed-for",
                needs=("listed_for",),
            )
        return
    single = what != "solid and stranded wire together"
    fits = listed_for == "combination" or (single and listed_for == "either")
    yield requires(
        name,
        fits or takes.get(listed_for) == what,
        says=f"a connector listed for {listed_for} wire is not listed for {what}",
        source=MAKER,
        origin=Origin.MAKER,
        action=f"use a connector listed for {what}",
    )


def copper_only(
    wires: Sequence[Wire],
    joined_by: str = "an ordinary copper connector",
    source: Source = _ALUMINIUM,
) -> Iterator[Item]:
    """Stop at a wire of another metal than copper."""
    others = sorted({w.metal for w in wires} - {"copper"})
    if others:
        yield caution("alu-01")
    yield requires(
        "copper only",
        not others,
        says=f"{' and '.join(others)} wire is not for {joined_by}",
        source=source,
        action="stop: it needs a method listed for that metal and a qualified electrician",
    )


def metals(wires: Sequence[Wire]) -> Iterator[Item]:
    """Judge metals and platings of wires that share a barrel: copper, and no unlike platings."""
    yield from copper_only(wires)
    coatings = sorted({w.coating for w in wires})
    if len(coatings) > 1 and set(coatings) != {"bare", "tinned"}:
        yield cannot_tell(
            "platings together",
            f"whether {' and '.join(coatings)} wire may share a barrel is not known",
            measure="read the maker's sheet of the connector",
        )
