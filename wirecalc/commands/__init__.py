"""The command line: a module a command, and what all of them share.

A command is what the first word may be beside the name of a calculation.

Each has a module of its name with `run(words)`, imported when it is asked for.
"""

from __future__ import annotations

import importlib
from collections.abc import Sequence

from .result import Result
from .usage import FORMATS, METER, OF_BATCH, REPORTS, RESULT, ROWS, Command

COMMANDS = {
    "ask": Command(
        "ask [NAME | job [SHEET]]",
        "ask for the inputs one at a time, and run it; job leads through a repair",
        forms=REPORTS,
        takes=RESULT,
        words=("ask me; questions; step by step; walk me through; wizard; guide me",),
    ),
    "batch": Command(
        "batch NAME FILE",
        "run a calculation on each row of a CSV; inputs that all rows share may be options",
        {
            "--label": ("COLUMN", "the column that names the rows"),
            "--keep": ("COLUMNS", 'columns to pass through unread, such as "tool; learner"'),
            "--cells-decimal-comma": ("", "numbers in the cells have decimal commas"),
            "--criteria": ("", "in csv and markdown a line a criterion, not one a row"),
            "--summary": ("FILE", "write there, as JSON, what the rows came to together"),
            "--resume": ("", "go on where a run with the same --output was broken off"),
            "--jobs": ("N", "work the rows out by so many processes; 1 unless said"),
            **METER,
        },
        forms=ROWS,
        takes=OF_BATCH,
        words=("many rows; rows of a csv; whole list at once; a csv of values",),
    ),
    "completion": Command(
        "completion SHELL",
        'print what completes lines in bash, zsh or fish: eval "$(wirecalc completion bash)"',
    ),
    "drill": Command(
        "drill TOPIC ...",
        "make exercises of calculations: sheets and a key, or marks of a class",
        {
            "--level": ("N", "1 choose (unless said), 2 write the value, 3 give the verdict"),
            "--number": ("N", "questions a sheet; 5 unless said"),
            "--seed": ("N", "what the numbers are drawn from; 1 unless said"),
            "--learners": ("N", "sheets, each with numbers of its own; 1 unless said"),
            "--key": ("", "print the key in place of the sheets"),
            "--grade": ("FILE", "mark the answers of a class, a CSV; takes no topic"),
            "--tolerance": ("N %", "how far off a right value may be; 1 % unless said"),
        },
        forms=("text", "markdown", "html", "csv"),
        takes=("--output", "--chart"),
        words=("drill; quiz; exercise; homework; practice questions; worksheet; exam; grade",),
    ),
    "explain": Command(
        "explain NAME",
        "question, method, inputs, cautions; --format json for a schema",
        forms=FORMATS,
        words=("explain; how does it work; where does the limit come from; formula; method",),
    ),
    "instruments": Command(
        "instruments",
        "list the declared instruments; for a calculation, at which values each can still tell",
        {"--for": ("NAME", "the calculation; its inputs may be options, else its example's")},
        forms=(*FORMATS, "html"),
        words=(
            "meter accuracy; accuracy; accuracy of a meter; meter error; my meter; calibration",
            "calibrated; instruments; how good is my meter; uncertainty",
        ),
    ),
    "job": Command(
        "job FILE",
        "evaluate a job sheet",
        {
            "--new": ("KIND", "write a sheet to fill in for a kind of job; alone: the kinds"),
            "--check-only": ("", "say only what is missing on the sheet"),
            "--record": ("FOLDER", "keep sheet, job and report there as one record"),
            "--history": ("FOLDER", "tell what the records there tell together; takes no sheet"),
            "--chart": ("FILE", "beside --history: draw the pulls of a tool over time"),
            "--tool": ("NAME", "which tool, where the records have several"),
            "--export": ("FOLDER", "write the records there as tables; takes no sheet"),
            "--with-names": ("", "the tables have names of people, titles, notes too"),
        },
        forms=REPORTS,
        takes=OF_BATCH,
        words=(
            "job; job sheet; report; repair report; work order; paperwork; checklist; write up",
            "customer report; record of a repair; service report",
        ),
    ),
    "new-plugin": Command(
        "new-plugin NAME",
        "write a plugin to change, in ./NAME or the folder of --output",
        words=("own calculation; add a calculation; write a plugin",),
    ),
    "plugins": Command(
        "plugins",
        "list the plugins, where they come from and their state",
        forms=FORMATS,
        words=("plugin; add-on; extensions installed",),
    ),
    "pocket": Command(
        "pocket",
        "write all of it as one file for a browser, such as a phone's",
        {
            "--runtime": (
                "PATH",
                "Python for a browser, from its npm package: the .tgz or its folder",
            ),
            "--stock": ("FILE", "the shop's stock list, to choose from"),
            "--last-day": ("DATE", "after it the file computes nothing"),
            "--serve-worker": ("", "beside it what makes a web address work without a network"),
        },
        words=("phone; on my phone; mobile; tablet; offline; browser; web page; app; iphone",),
    ),
    "rules": Command(
        "rules [FILE]",
        "list the house rules in force, or check a rules file",
        forms=FORMATS,
        words=("house rules; shop rules; shop limits; our own limits; stricter limits",),
    ),
    "schema": Command(
        "schema NAME",
        "print a JSON schema: finding, job, history, refused, batch, plugins, sought",
        forms=("json",),
    ),
    "tables": Command(
        "tables [NAME]",
        "list the published tables, or print one; html is a page for the wall",
        {"--where": ("COLUMN=VALUE", "only the rows that have it; repeat it for more")},
        forms=REPORTS,
        repeated=("--where",),
        words=("tables; published tables; reference table; look up a table; wall chart",),
    ),
}


def run(name: str, words: Sequence[str]) -> Result:
    """Run a command on the words behind its name."""
    module = importlib.import_module(f"{__name__}.{name.replace('-', '_')}")
    result: Result = module.run(words)
    return result
