"""The flat tables that a shop's records are written out as: what each column holds.

A column that `names` somebody holds what a person typed in words of their own, in which names of
people, addresses and notes may stand; it is left out unless it is asked for. In the others a group
of readings has a number and a file no name then.
"""

from __future__ import annotations

from typing import NamedTuple

TEXT, NUMBER, INTEGER = "text", "number", "integer"


class Column(NamedTuple):
    """A column: its name, what it holds, and whether people may be named in it."""

    name: str
    type: str
    text: str
    names: bool = False


class FlatTable(NamedTuple):
    """A table: its name, what a row of it is, and its columns."""

    name: str
    row: str
    columns: tuple[Column, ...]

    def shown(self, *, with_names: bool) -> tuple[Column, ...]:
        """Return the columns that are written out."""
        return tuple(c for c in self.columns if with_names or not c.names)


_OF_RECORD = Column("record", TEXT, "date and first eight digits of the record's name")
_OF_CHECK = Column("check_number", INTEGER, "number of the check on its sheet, from 1")

RECORDS = FlatTable(
    "records",
    "a recorded job",
    (
        _OF_RECORD,
        Column("date", TEXT, "day of the job, 2026-01-31"),
        Column("kind", TEXT, "kind of job, as listed"),
        Column("verdict", TEXT, "of the whole job"),
        Column("machine", TEXT, "the words of the sheet for its machine"),
        Column("connection", TEXT, "how it is connected, as the sheet says"),
        Column("energy", TEXT, "what it heats or runs with, as the sheet says"),
        Column("compressor", TEXT, "kind of compressor, as the sheet says"),
        Column("refrigerant", TEXT, "as the sheet says"),
        Column("callback_of", TEXT, "the earlier record, where the sheet names one"),
        Column("callback_date", TEXT, "day of the earlier job, where it is known"),
        Column("callback_cause", TEXT, "cause of the callback, as the sheet says"),
        Column("title", TEXT, "title of the job", names=True),
        Column("technician", TEXT, "as the sheet says", names=True),
        Column("folder", TEXT, "name of the folder of the record", names=True),
        Column("about", TEXT, "all words of [job] and of each [[machine]], as JSON", names=True),
    ),
)
CHECKS = FlatTable(
    "checks",
    "a check of a job",
    (
        _OF_RECORD,
        _OF_CHECK,
        Column("calculation", TEXT, "which calculation it is"),
        Column("plugin", TEXT, "whose calculation it is"),
        Column("version", TEXT, "version of that plugin"),
        Column("stage", TEXT, "as found, as left, or option"),
        Column("step", TEXT, "step of the repair"),
        Column("machine", TEXT, "which of the machines, where there are several"),
        Column("kind", TEXT, "kind of that machine, else of the job"),
        Column("tool", TEXT, "the tool, as the sheet says"),
        Column("part", TEXT, "the part, as the sheet says"),
        Column("verdict", TEXT, "of the check; empty where it has none"),
        Column("decided_by", TEXT, "name of the criterion that decided"),
        Column("name", TEXT, "what the sheet calls the check", names=True),
        Column("removed", TEXT, "what was taken out, as the sheet says", names=True),
        Column("note", TEXT, "note of the sheet", names=True),
    ),
)
CRITERIA = FlatTable(
    "criteria",
    "a criterion of a check",
    (
        _OF_RECORD,
        _OF_CHECK,
        Column("name", TEXT, "name of the criterion; of a group, such as a learner, by its number"),
        Column("provider", TEXT, "plugin, table or rules file that asks for it"),
        Column("origin", TEXT, "standard, maker, practice or house"),
        Column("sense", TEXT, "at least, at most, or in words"),
        Column("actual", NUMBER, "value that was judged: the unkind end of the meter's band"),
        Column("limit_at", NUMBER, "limit"),
        Column("caution_at", NUMBER, "level from which it is marginal"),
        Column("unit", TEXT, "of actual, limit, caution, low, high and margin"),
        Column("low", NUMBER, "low end of the meter's band"),
        Column("high", NUMBER, "high end of the meter's band"),
        Column("margin", NUMBER, "how far inside the limit; negative outside"),
        Column("verdict", TEXT, "of the criterion"),
        Column("reason", TEXT, "why, in words"),
        Column("source", TEXT, "title, edition and place of the limit"),
        Column("confidence", TEXT, "how the limit was confirmed"),
    ),
)
READINGS = FlatTable(
    "readings",
    "an input of a check",
    (
        _OF_RECORD,
        _OF_CHECK,
        Column("name", TEXT, "name of the input"),
        Column("value", NUMBER, "its number, in the unit beside it"),
        Column("words", TEXT, "what it says where it is no number"),
        Column("unit", TEXT, "of value, low and high"),
        Column("low", NUMBER, "low end of the meter's band; empty where no error was given"),
        Column("high", NUMBER, "high end of the meter's band"),
        Column("come_from", TEXT, "sheet, nameplate, assumed, unknown ..."),
        Column("given", TEXT, "as it was typed", names=True),
    ),
)
NOT_TESTED = FlatTable(
    "not_tested",
    "what was not tested",
    (
        _OF_RECORD,
        Column("calculation", TEXT, "the calculation that would have tested it"),
        Column("required", INTEGER, "1 where the kind of job requires it, else 0"),
        Column("step", TEXT, "step of the repair"),
        Column("machine", TEXT, "which of the machines, where there are several"),
        Column("rule", TEXT, "rule that requires it"),
        Column("name", TEXT, "what was not tested, as the sheet says", names=True),
        Column("reason", TEXT, "reason on the sheet", names=True),
    ),
)
TABLES = (RECORDS, CHECKS, CRITERIA, READINGS, NOT_TESTED)
