"""What can go wrong, in words for the person who meets it.

Every error of wirecalc is a `WirecalcError`; each kind is also the built-in exception that a
caller would expect (`ValueError`, `LookupError`, `TypeError`, `RuntimeError`).
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import NamedTuple


class WirecalcError(Exception):
    """Root of everything that wirecalc raises on purpose."""


class Problem(NamedTuple):
    """One thing wrong with one input: what it is called, what is wrong, what would do."""

    name: str
    wrong: str
    would_do: str = ""

    def __str__(self) -> str:
        said = f"{self.name}: {self.wrong}" if self.name else self.wrong
        return f"{said}; {self.would_do}" if self.would_do else said


class BadInput(WirecalcError, ValueError):
    """Inputs that cannot be used. Carries every problem, not just the first."""

    def __init__(self, problems: Iterable[Problem]) -> None:
        self.problems = tuple(problems)
        super().__init__("\n".join(str(p) for p in self.problems))


class OtherWords(BadInput):
    """Words where the name of a calculation belongs, with what fits them, laid out in lines."""

    def __init__(self, text: str) -> None:
        super().__init__([Problem("", text)])


class BadText(WirecalcError, ValueError):
    """One text that cannot be read. Caught where the name of the input is known."""

    def __init__(self, wrong: str, would_do: str = "") -> None:
        self.wrong, self.would_do = wrong, would_do
        super().__init__(f"{wrong}; {would_do}" if would_do else wrong)

    def about(self, name: str) -> Problem:
        """Give the same complaint with the name of the input."""
        return Problem(name, self.wrong, self.would_do)


class TableError(WirecalcError, LookupError):
    """A table that is missing, damaged, or does not hold what was looked for."""


class DamagedTable(TableError, BadInput):
    """A table of a shop that is damaged: a file of the shop's, so bad input and nobody's defect.

    `said` names the file by its folder alone, for a report that others read.
    """

    def __init__(self, folder: str, name: str, wrong: str) -> None:
        lines = [_without(line, name) for line in wrong.splitlines()]
        of_csv = any(w in wrong for w in (", line ", ": line ", "its CSV", "the header", "no rows"))
        file = f"{name}.{'csv' if of_csv else 'toml'}"
        parent = folder.replace("\\", "/").rstrip("/").rpartition("/")[2]
        self.said = f"{parent}/{file}: {'; '.join(lines)}"
        BadInput.__init__(self, (Problem(f"{folder}/{file}", line) for line in lines))


def _without(line: str, table: str) -> str:
    """Return what is wrong in a table without its name."""
    return line.removeprefix(f"table {table}").lstrip(",: ")


class NoSuchInput(WirecalcError, KeyError):
    """An input that a house rule asks for, and that its calculation does not have."""

    def __str__(self) -> str:
        return str(self.args[0])


class DeclarationError(WirecalcError, TypeError):
    """A calculation, hook or house rule that is declared wrongly: a mistake in a plugin."""


class PluginDefect(WirecalcError, RuntimeError):
    """A plugin that raised, or yielded something that it must not, while it was asked to run."""


def nearest(word: str, known: Sequence[str], alike: float = 0.6, start: int = 0) -> str:
    """Return the known word that is most like the given one, or an empty text.

    `alike` is how like it has to be, up to 1 for the same letters. So many letters at the `start`
    are the same: a microamp is not offered as a milliamp, nor 2 kA as amps.
    """
    import difflib  # only when something was mistyped

    begins = word.casefold()[:start]
    lowered = {k.casefold(): k for k in known if k.casefold()[:start] == begins}
    close = difflib.get_close_matches(word.casefold(), list(lowered), n=1, cutoff=alike)
    return lowered[close[0]] if close else ""


def did_you_mean(word: str, known: Sequence[str]) -> str:
    """Return what to try in place of an unknown word."""
    close = nearest(word, known)
    if close:
        return f"did you mean {close}?"
    return "known: " + ", ".join(known) if 0 < len(known) <= 12 else ""
