"""Words that people say for about the same thing, in one country, shop or class and another."""

from __future__ import annotations

import functools

from .word_stems import stem

_ALIKE = (  # common practice, no source
    "plug outlet socket receptacle point powerpoint",
    "fridge refrigerator freezer icebox reefer chiller",
    "earth ground bond",
    "trip pop kick throw",
    "cord lead cable flex",
    "hot warm overheat cook scorching toasty",
    "hum buzz growl drone groan",
    "shock tingle zap belt jolt bite electrocute",
    "burn scorch char smell smoke stink singe brown",
    "spark arc flash crackle sizzle",
    "dead lifeless kaput knackered defunct inoperative",
    "broken faulty defective bad kaput duff bust",
    "slip loose wobbly slack wiggle",
    "verify check test prove measure",
    "crimp crimped squeeze press",
    "lug terminal eyelet",
    "trainee learner apprentice student pupil class newbie course lesson",
    "trainer teacher instructor",
    "exercise quiz drill exam homework practice worksheet mock",
    "grade mark score result",
    "policy rule procedure",
    "certificate calibration calibrated cert",
    "swapped reversed reverse backward crossed transposed inverted switched",
    "hot live line phase",
    "amp current ampere amperage",
    "volt voltage",
    "watt power wattage kilowatt",
    "ohm resistance",
    "frozen frost ice iced",
    "cold cool chill",
    "wet damp moisture water soaked flooded",
    "valve solenoid",
    "igniter ignitor glow",
    "stuck seized jammed locked stall",
    "corroded rusty rust green corrosion",
    "sag dim droop dip flicker brownout",
    "generator inverter genset",
    "fuse breaker mcb",
    "gfci rcd gfi elcb rccb",
    "wire conductor core cable",
    "strip bare skin peel",
    "turn spin rotate",
    "customer client owner",
    "return release handover sign",
    "tag label sticker",
    "lockout isolate isolation loto",
    "work job task",
    "card ticket sheet form paper",
    "paper sheet form",
    "shop workshop company",
    "minimum least lowest",
    "maximum most highest",
    "spade blade",
    "spade tab",
    "bin shelf stock inventory van truck",
    "start startup starting",
)


def said_alike(word: str) -> frozenset[str]:
    """Return other words for about the same thing, as they are compared.

    >>> sorted(said_alike("earth"))
    ['bond', 'ground']
    """
    return _alike().get(word, frozenset())


@functools.cache
def _alike() -> dict[str, frozenset[str]]:
    said: dict[str, frozenset[str]] = {}
    for group in _ALIKE:
        words = frozenset(map(stem, group.split()))
        for word in words:
            said[word] = said.get(word, frozenset()) | words - {word}
    return said
