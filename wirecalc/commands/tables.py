"""`wirecalc tables [NAME]`: the published values, with where each comes from."""

from __future__ import annotations

from collections.abc import Sequence

from ..base.errors import DamagedTable, Problem, TableError
from ..output import tables as table_output
from ..published import tables
from ..published.shop_tables import Overlaid, over
from . import COMMANDS
from .load_plugins import catalogue, warnings
from .options import MOST_WORDS, split
from .result import Result
from .table_rows import OPTION, chosen
from .usage import FORMATS


def run(words: Sequence[str]) -> Result:
    """List the published tables, or print one."""
    options = split(words, COMMANDS["tables"], most_words=MOST_WORDS)
    if not options.words and options.format not in FORMATS:
        wrong = f"the list of tables is not written as {options.format}"
        options.problems.append(Problem("--format", wrong, "write text or json, or name a table"))
    wanted = options.repeated["where"]
    if wanted and not options.words:
        options.problems.append(Problem(OPTION, "asks for rows of a table", "name the table first"))
    options.refuse()
    loaded = catalogue(words)  # plugins may add tables
    name = " ".join(options.words)
    damaged: list[str] = []
    try:
        shops = over([name]) if name else []
        text = _one(name, options.format, shops, wanted) if name else _all(options.format, damaged)
    except DamagedTable:
        raise
    except TableError as error:
        if not name or name in tables.names():
            raise
        from .suggestions import suggested_table

        raise suggested_table(name) from error
    said = [f"a row of the shop is not used: {why}" for s in shops for why in (*s.milder, *s.lost)]
    if options.format in ("text", "json"):  # they show it themselves
        said = []
    return Result(text, output=options.output, warnings=[*warnings(loaded), *said, *damaged])


def _one(name: str, form: str, shops: Sequence[Overlaid], wanted: Sequence[str]) -> str:
    table, shops = chosen(tables.load(name), shops, wanted)
    if form == "html":
        from ..output.table_page import table_page

        return table_page(table, shops, wanted)
    return table_output.render(table, form, shops, wanted)


def _all(form: str, damaged: list[str]) -> str:
    """List all tables; those of a shop that are damaged are named apart."""
    loaded = []
    for name in tables.names():
        try:
            loaded.append(tables.load(name))
        except DamagedTable as error:
            damaged.append(str(error))
    if form == "json":
        from ..output.json import dump

        return dump(table_output.overview_object(loaded))
    return table_output.overview(loaded)
