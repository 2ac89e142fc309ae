"""Watts into water: the heat that its rise shows, against what was fed."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    MAKER,
    PRACTICE,
    Item,
    Origin,
    at_least,
    at_or_below,
    calculation,
    cannot_tell,
    computed,
    figure,
    put,
    show,
)

from .water_heat_inputs import (
    HeatingPower,
    HeatingTime,
    LeastShare,
    WaterAfter,
    WaterBefore,
    WaterFlow,
    WaterVolume,
    refuse,
)

WATER_J = 4180.0  # a litre by a kelvin: 4182 J/(kg K) x 0.998 kg/L at 20 C; 1 % less hot
HEAT = computed("water-heat", "heat of water", "4180 J for a litre and a kelvin, near 20 C")
ALL = 103.0  # %: more heat than was fed is a slip; 3 % for the constant and the water's density
SHARE = "heat that reached the water"
_PLAIN = "how much of the power warms the water"


@calculation(
    part="heat and cold",
    words=(
        "water heater; not heating water; dishwasher heats slowly; washer heater; kettle; boiler",
        "instant heater; tankless; flow heater; coffee machine; recovery; heat up time; kWh",
        "how long to heat; lukewarm; water not hot; heat balance; litres; gallons; hot water",
        "water heater watts; shower; instant shower; geyser; immersion; immersion heater",
        "element slow; takes hours to heat; slow to heat; slow hot water; urn; kettle slow",
        "kettle takes long; dishwasher not hot; washer not hot; litres per minute; flow rate",
        "tank; boiler slow; minutes to heat; scale; limescale; heats up slowly",
        "water barely warm; gallons per hour; warm up time",
        "fill time; fill in litres; litres in minutes; litres and minutes",
    ),
    go_on="let it cut out by itself, and read the water at its thermostat's mark",
    cautions=("wat-01", "hot-01", "dead-02", "live-01"),
    not_checked=(
        "heat into the tank, tub or dishes: it is missing in the water",
        "a mixing valve or a running tap, which let cold water in",
        "scalding: water over 50 C burns skin in minutes, over 60 C in seconds",
    ),
    refuse=refuse,
    example_with=("water_volume", "heating_time", "heating_power", "least_share"),
)
def water_heat(
    water_before: WaterBefore,
    water_after: WaterAfter,
    water_volume: WaterVolume = None,
    water_flow: WaterFlow = None,
    heating_time: HeatingTime = None,
    heating_power: HeatingPower = None,
    least_share: LeastShare = None,
) -> Iterator[Item]:
    """Does this heater put its watts into the water?

    Heat is 4180 J for a litre and a kelvin: of a volume over a time, or of a flow, it is watts;
    over known watts it is a time. Where both are known, the share that reached the water is told:
    over 103 % a reading is wrong, and less than a maker's share fails. The rest warms tank, tub
    and air. Within 1 % from 5 to 60 C.

    For electric water, dishwasher, washer and flow heaters and kettles. Inputs: temperatures in C
    (0 to 100), water_volume in L, water_flow in L/min, heating_time in min, heating_power in W,
    least_share in %. Yields heat, watts, time due, and the share. Refuses water that is no warmer.
    Source: heat of water, near 20 C.
    """
    rise = water_after - water_before
    yield figure("rise", rise, "K", source=HEAT, working=lambda: _minus(water_after, water_before))
    watts = None
    if water_flow is not None:
        watts = water_flow / 60 * WATER_J * rise
        yield figure(
            "watts into the water",
            watts,
            "W",
            source=HEAT,
            working=lambda: f"{put(water_flow, 'L/min')} / 60 x 4180 x {put(rise, 'K')}",
        )
    if water_volume is not None:
        joule = water_volume * WATER_J * rise
        yield figure(
            "heat in the water",
            joule,
            "J",
            source=HEAT,
            working=lambda: f"{put(water_volume, 'L')} x 4180 x {put(rise, 'K')}",
        )
        if heating_time is not None:
            watts = joule / (60 * heating_time)
            yield figure(
                "watts into the water",
                watts,
                "W",
                source=HEAT,
                working=lambda: f"{put(joule, 'J')} / (60 x {put(heating_time, 'min')})",
            )
        elif heating_power is not None:
            yield figure(
                "least time it takes",
                joule / heating_power / 60,
                "min",
                source=HEAT,
                working=lambda: f"{put(joule, 'J')} / {put(heating_power, 'W')} / 60",
            )
    if watts is not None and heating_power is not None:
        yield from _share(100 * watts / heating_power, least_share)


def _minus(after: float, before: float) -> str:
    return f"{put(after, 'C')} - {put(before, 'C')}"


def _share(share: float, least: float | None) -> Iterator[Item]:
    yield figure("share that reached the water", share, "%", source=HEAT)
    if not at_or_below(share, ALL):
        yield cannot_tell(
            SHARE,
            f"{show(share, '%')} is more heat than was fed",
            measure="read watts, volume or flow, time and both temperatures again",
            source=PRACTICE,
            plain=_PLAIN,
        )
    elif least is not None:
        yield at_least(
            SHARE,
            share,
            least,
            "%",
            source=MAKER,
            origin=Origin.MAKER,
            action="does all of the element heat? Is cold water let in, or lime on it?",
            plain=_PLAIN,
        )
