"""A drawing as text: lines, shapes and words on a white sheet that reads in the dark too."""

from __future__ import annotations

from html import escape

WIDTH = 480  # with letters of 15 it is still read at the width of a phone
INK, DIM, METAL, PALE, COPPER, SHEATH = (
    "#1b1b1b",
    "#5a5a5a",
    "#b9c2c9",
    "#e6eaed",
    "#c8742f",
    "#7fa3c7",
)


class Sheet:
    """A drawing that grows; `made` is its text."""

    def __init__(self, title: str, height: int) -> None:
        """Start a sheet with what the picture shows, for those who cannot see it."""
        said = escape(title, quote=True)
        self.parts = [
            f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {WIDTH} {height}" '
            f'width="{WIDTH}" height="{height}" role="img" aria-label="{said}" '
            'font-family="sans-serif" font-size="15">',
            f"<title>{escape(title)}</title>",
            f'<rect x="0.5" y="0.5" width="{WIDTH - 1}" height="{height - 1}" rx="6" '
            f'fill="white" stroke="{PALE}"/>',
        ]

    def shape(self, path: str, fill: str = "none", line: str = INK, wide: float = 1.5) -> None:
        """Draw a path, filled and with an outline."""
        self.parts.append(
            f'<path d="{path}" fill="{fill}" stroke="{line}" stroke-width="{wide:g}"/>'
        )

    def box(self, x: float, y: float, wide: float, high: float, fill: str, round_: int = 0) -> None:
        """Draw a box by its left upper corner."""
        self.parts.append(
            f'<rect x="{x:g}" y="{y:g}" width="{wide:g}" height="{high:g}" rx="{round_}" '
            f'fill="{fill}" stroke="{INK}" stroke-width="1.5"/>'
        )

    def disc(self, x: float, y: float, radius: float, fill: str, wide: float = 1.5) -> None:
        """Draw a circle."""
        self.parts.append(
            f'<circle cx="{x:g}" cy="{y:g}" r="{radius:g}" fill="{fill}" stroke="{INK}" '
            f'stroke-width="{wide:g}"/>'
        )

    def words(self, x: float, y: float, text: str, at: str = "middle", bold: bool = False) -> None:
        """Write a line of words; `at` is start, middle or end."""
        weight = ' font-weight="bold"' if bold else ""
        self.parts.append(
            f'<text x="{x:g}" y="{y:g}" text-anchor="{at}" fill="{INK}"{weight}>'
            f"{escape(text)}</text>"
        )

    def across(self, x: float, end: float, y: float, text: str, at: float | None = None) -> None:
        """Measure from x to end at the height y, with words over the middle or over `at`."""
        self.shape(f"M{x:g} {y - 6:g}V{y + 6:g}M{x:g} {y:g}H{end:g}M{end:g} {y - 6:g}V{y + 6:g}")
        self.words((x + end) / 2 if at is None else at, y - 9, text)

    def number(self, x: float, y: float, number: int, to: tuple[float, float]) -> None:
        """Put a number in a circle, with a line to what it names."""
        self.shape(f"M{x:g} {y:g}L{to[0]:g} {to[1]:g}", line=DIM, wide=1.2)
        self.disc(x, y, 11, "white")
        self.words(x, y + 5.5, str(number), bold=True)

    def strands(self, x: float, end: float, middle: float, half: float, count: int = 5) -> None:
        """Draw bare strands along the wire, `half` the height of all of them."""
        high = 2 * half / count
        for strand in range(count):
            top = middle - half + strand * high
            self.parts.append(
                f'<rect x="{x:g}" y="{top:g}" width="{end - x:g}" height="{high:g}" '
                f'fill="{COPPER}" stroke="{INK}" stroke-width="0.8"/>'
            )

    @property
    def made(self) -> str:
        """The whole text of the picture."""
        return "\n".join([*self.parts, "</svg>", ""])
