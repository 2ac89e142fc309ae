"""The drawings of the book: `python -m docs.book.drawings` writes them into docs/pictures."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import NamedTuple

from .svg import COPPER, DIM, INK, METAL, PALE, SHEATH, Sheet

PICTURES = Path(__file__).parents[1] / "pictures"
GREEN, AMBER, GREY, RED = "#2e7d46", "#b26a00", "#5a5a5a", "#b3261e"


class Drawing(NamedTuple):
    """A drawing with the words for those who cannot see it."""

    title: str
    height: int
    draw: Callable[[Sheet], None]

    @property
    def text(self) -> str:
        """The picture as SVG."""
        sheet = Sheet(self.title, self.height)
        self.draw(sheet)
        return sheet.made


def _strip(sheet: Sheet) -> None:
    sheet.box(16, 92, 164, 56, SHEATH, 4)
    sheet.words(98, 125, "insulation")
    sheet.strands(180, 416, 120, 20)
    sheet.shape("M200 84H386V156H200Z", fill="none", wide=3)
    sheet.shape("M200 84H386V100H200ZM200 140H386V156H200Z", fill=METAL)
    sheet.across(180, 200, 62, "gap", at=172)
    sheet.across(200, 386, 62, "barrel")
    sheet.across(386, 416, 62, "brush", at=418)
    sheet.shape("M180 150V190M416 142V190", line=DIM, wide=1)
    sheet.shape("M180 184H416M180 178V190M416 178V190")
    sheet.words(298, 208, "strip length = gap + barrel + brush")
    sheet.words(180, 240, "shoulder: measure from here")
    sheet.shape("M180 224V194", line=DIM, wide=1)
    sheet.words(16, 28, "A closed barrel, cut open", "start", bold=True)


def _window(sheet: Sheet) -> None:
    sheet.words(16, 28, "The wire is in as far as it goes", "start", bold=True)
    sheet.box(16, 66, 118, 48, SHEATH, 4)
    sheet.strands(134, 150, 90, 17)
    sheet.box(150, 58, 170, 64, METAL, 3)
    sheet.strands(262, 296, 90, 14)
    sheet.shape("M262 76H296V104H262Z", wide=2)
    sheet.shape("M320 74H420A16 16 0 0 1 420 106H320Z", fill=METAL)
    sheet.number(279, 152, 1, (279, 104))
    sheet.number(142, 152, 2, (142, 112))
    sheet.words(16, 190, "1  inspection window: strands fill it", "start")
    sheet.words(16, 212, "2  insulation stays out of the wire barrel", "start")
    sheet.words(16, 250, "A barrel and its range, end on", "start", bold=True)
    for middle, wide, name in ((84, 11, "too thin"), (240, 25, "in the range"), (396, 25, "")):
        sheet.disc(middle, 312, 38, METAL)
        sheet.disc(middle, 312, 29, "white")
        for dx, dy in (
            (0, 0),
            (-1, 0),
            (1, 0),
            (-0.5, 0.87),
            (0.5, 0.87),
            (-0.5, -0.87),
            (0.5, -0.87),
        ):
            sheet.disc(middle + dx * wide * 0.66, 312 + dy * wide * 0.66, wide * 0.33, COPPER, 0.8)
        sheet.words(middle, 374, name or "too thick")
        sheet.words(
            middle,
            394,
            {"too thin": "nothing grips"}.get(name, "all are in" if name else "one stays out"),
        )
    sheet.disc(440, 276, 8, COPPER, 0.8)
    sheet.shape("M418 290L433 281", line=RED, wide=2)


def _crimp(sheet: Sheet) -> None:
    sheet.box(8, 82, 128, 44, SHEATH, 4)
    sheet.shape("M64 68Q64 62 72 62H112Q120 62 120 70V138H64Z", fill=METAL)
    sheet.shape("M120 126H452V138H120Z", fill=METAL)
    sheet.strands(136, 330, 104, 18)
    sheet.shape("M172 76Q184 90 196 90H282Q294 90 304 78L312 138H164Z", fill=METAL)
    sheet.shape("M150 86V96", line="white", wide=3)
    for number, x, y, to in (
        (1, 92, 34, (92, 62)), (2, 150, 168, (150, 122)), (3, 176, 34, (174, 78)),
        (4, 240, 34, (240, 90)), (5, 336, 60, (322, 92)), (6, 140, 34, (150, 86)),
    ):  # fmt: skip
        sheet.number(x, y, number, to)
    for row, text in enumerate((
        "1  support holds the insulation, does not cut it",
        "2  between the two: insulation and strands show",
        "3  bell mouth: flared, no edge on the strands",
        "4  wire crimp closed, all strands inside",
        "5  brush: the ends just show",
        "6  a nick: a bright line across a strand",
    )):  # fmt: skip
        sheet.words(16, 206 + 22 * row, text, "start")


def _clamp(sheet: Sheet) -> None:
    sheet.words(16, 28, "What goes through the jaws", "start", bold=True)
    for middle, dots, shown, under in (
        (84, ((0, 0, "L"),), "8.00 A", ("one conductor:", "its amps")),
        (240, ((-17, -9, "L"), (17, -9, "N"), (0, 19, "G")), "0.00 A",
         ("a whole cord:", "nearly nothing")),
        (396, ((-17, 0, "L"), (17, 0, "N")), "0.004 A", ("line and neutral:", "only what leaks")),
    ):  # fmt: skip
        if shown == "0.00 A":
            sheet.disc(middle, 104, 38, PALE)
        for dx, dy, name in dots:
            sheet.disc(middle + dx, 104 + dy, 15, "#8fbf8f" if name == "G" else SHEATH)
            sheet.words(middle + dx, 109.5 + dy, name, bold=True)
        sheet.shape(f"M{middle - 6} 54A50 50 0 1 0 {middle + 6} 54", line=INK, wide=9)
        sheet.shape(f"M{middle - 3} 49V59M{middle + 3} 49V59", line="white", wide=2)
        sheet.box(middle - 44, 168, 88, 30, PALE, 4)
        sheet.words(middle, 188.5, shown, bold=True)
        sheet.words(middle, 222, under[0])
        sheet.words(middle, 242, under[1])


def _tab(sheet: Sheet) -> None:
    sheet.words(16, 28, "Tab", "start", bold=True)
    sheet.shape("M60 60H150L168 72V108L150 120H60Z", fill=METAL)
    sheet.disc(112, 90, 7, "white")
    sheet.shape("M190 60V120M184 60H196M184 120H196")
    sheet.words(204, 95, "width", "start")
    sheet.box(60, 168, 108, 10, METAL)
    sheet.shape("M190 154V168M190 178V192M184 168H196M184 178H196")
    sheet.words(204, 178, "thickness", "start")
    sheet.words(114, 142, "on its flat")
    sheet.words(114, 202, "on its edge")
    sheet.words(300, 28, "Ring and stud", "start", bold=True)
    sheet.disc(380, 112, 42, METAL)
    sheet.shape("M368 152H392V182H368Z", fill=METAL)
    sheet.disc(380, 112, 22, "white")
    sheet.disc(380, 112, 17, PALE)
    sheet.words(380, 117.5, "stud")
    sheet.across(358, 402, 62, "hole")
    sheet.shape("M358 68V112M402 68V112", line=DIM, wide=1)
    sheet.words(380, 204, "the least play that fits")


def _band(sheet: Sheet) -> None:
    sheet.words(16, 26, "A reading, as wide as the meter's error", "start", bold=True)
    sheet.shape("M236 62V252", line=AMBER, wide=2)
    sheet.shape("M340 62V252", line=RED, wide=2)
    sheet.words(236, 54, "caution level")
    sheet.words(356, 54, "limit: at most")
    for row, (left, right, colour, verdict) in enumerate((
        (150, 210, GREEN, "pass"), (262, 322, AMBER, "marginal"),
        (310, 370, GREY, "cannot tell"), (362, 422, RED, "fail"),
    )):  # fmt: skip
        y = 92 + row * 46
        sheet.words(16, y + 5, verdict, "start", bold=True)
        sheet.shape(
            f"M{left} {y}H{right}M{left} {y - 9}V{y + 9}M{right} {y - 9}V{y + 9}",
            line=colour,
            wide=3,
        )
        sheet.disc((left + right) / 2, y, 5, colour)
    sheet.shape("M120 262H460M452 257L460 262L452 267")
    sheet.words(290, 284, "what is measured")


DRAWINGS = {
    "strip": Drawing(
        "Strip length: from the shoulder of the insulation over gap and barrel to the brush",
        256,
        _strip,
    ),
    "barrel": Drawing(
        "A barrel with its inspection window, and wire too thin, in the range and too thick",
        408,
        _window,
    ),
    "crimp": Drawing(
        "What to look at in a crimp: insulation support, bell mouth, wire crimp, brush, nicks",
        332,
        _crimp,
    ),
    "clamp": Drawing(
        "A clamp around one conductor, around a whole cord, and around line and neutral",
        258,
        _clamp,
    ),
    "tab": Drawing("Width and thickness of a tab; the hole of a ring and its stud", 218, _tab),
    "band": Drawing("How a reading meets a limit: pass, marginal, cannot tell, fail", 298, _band),
}


def drawing(name: str, to_docs: str) -> str:
    """Return a drawing as it stands on a page, with the way from there to docs/."""
    return f"![{DRAWINGS[name].title}]({to_docs}pictures/{name}.svg)"


if __name__ == "__main__":
    for name, one in DRAWINGS.items():
        (PICTURES / f"{name}.svg").write_text(one.text, encoding="utf-8")
