"""Values that are sold or standard: what is tried one by one where one of them is sought."""

from __future__ import annotations

from wirecalc import tables


def breakers() -> list[str]:
    """Return the standard ratings of breakers and fuses (NEC 240.6(A))."""
    return _amps("standard-ratings", "rating_A")


def receptacles() -> list[str]:
    """Return the ratings of receptacles (NEC 210.21(B)(3))."""
    return _amps("nec-receptacles", "receptacle_A")


def tab_widths() -> list[str]:
    """Return the widths of quick-connect tabs (UL 310, IEC 61210)."""
    rows = tables.load("quick-connect-tabs").rows
    return [f"{text} in" for text in sorted({row.text("tab_in") for row in rows})]


def _amps(table: str, column: str) -> list[str]:
    return [f"{a:g} A" for a in sorted({row.number(column) for row in tables.load(table).rows})]


SERVICES = ("120 V", "208 V", "230 V", "240 V")  # ANSI C84.1 and IEC 60038, volts of a service
PLATE_VOLTS = tuple(  # that motors and appliances are marked for (common practice, no source)
    f"{v} V"
    for v in (*(100, 110, 115, 120, 127, 200, 208, 220, 230, 240), *(277, 400, 415, 440, 460, 480))
)
CLASSES = ("60 C", "75 C", "90 C")  # of building wire: the columns of NEC Table 310.16
# of appliance wire and of terminals (common practice, no source)
WIRE_CLASSES = tuple(f"{c} C" for c in (60, 75, 80, 90, 105, 125, 150, 180, 200, 250))
