"""What each command takes: its forms, its options, and how it is written."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from types import MappingProxyType
from typing import NamedTuple

FORMATS = ("text", "json")
ROWS = (*FORMATS, "csv", "markdown")  # of a table or a batch
PARQUET = "parquet"  # of a batch
REPORTS = (*ROWS, "html")  # of a finding or a job
GENERAL = {  # option -> what its value is (empty: it takes none), and what it does
    "--format": ("FORM", "how it is written"),
    "--output": ("FILE", "write to a file, whole or not at all"),
    "--chart": ("FILE", "draw what it has to show, as .svg or .png; .csv for its numbers"),
    "--full": ("", "all of it, also on a terminal"),
    "--short": ("", "what to act on, as a terminal shows it"),
    "--working": ("", "show the arithmetic with the numbers put in"),
    "--no-marginal": ("", "a marginal verdict exits with 3"),
    "--bundled-only": ("", "run without plugins from outside, settings and rules files"),
    "--only-plugins": ("A,B", "of the plugins from outside, load only these"),
    "--strict": ("", "a plugin or rules file that does not load ends the run with 4"),
    "--help": ("", "show this"),
}
METER = {"--meter": ("NAME", "the declared instrument of all readings that name none")}
OF_BATCH = ("--output", "--working", "--no-marginal", "--full", "--short")
RESULT = (*OF_BATCH, "--chart")  # what a calculation takes
SWITCHES = ("--bundled-only", "--only-plugins", "--strict", "--help")  # every command takes them


def with_meter(given: dict[str, object], own: Mapping[str, str]) -> dict[str, object]:
    """Return what is given, with the instrument that an option names for all of it."""
    return {**given, "meter": own["meter"]} if "meter" in own else given


class Command(NamedTuple):
    """A command: how it is written, what it does, and the options that it takes.

    `own` are those that only it has, and `repeated` those of them that may be given several times;
    `forms` are the ways in which its result can be written, and
    `takes` those of RESULT that it takes, `words` has what people call it, and `also` another line
    that leads to it.
    """

    usage: str
    text: str
    own: Mapping[str, tuple[str, str]] = MappingProxyType({})
    forms: Sequence[str] = ()
    takes: Sequence[str] = ("--output",)
    repeated: Sequence[str] = ()
    words: tuple[str, ...] = ()
    also: str = ""

    @property
    def described(self) -> Mapping[str, tuple[str, str]]:
        """All its options: what the value of each is (empty: it takes none), and what it does."""
        taken = (*self.takes, *SWITCHES, *(("--format",) if self.forms else ()))
        general = {option: about for option, about in GENERAL.items() if option in taken}
        if self.forms:
            general["--format"] = ("FORM", ", ".join(self.forms))
        return {**self.own, **general}


_SOUGHT = {
    "--target": ("TEXT", 'beside a value that is sought: of a figure, as in "volts lost <= 3 V"'),
    "--target-alone": ("", "let the target alone count, and no criterion"),
}
CALCULATION = Command(
    "NAME", "run a calculation", {**METER, **_SOUGHT}, forms=REPORTS, takes=RESULT
)
LISTING = Command("", "list the calculations")
