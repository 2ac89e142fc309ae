"""The command line: a module a command, and what all of them share.

A command is what the first word may be beside the name of a calculation.

Each has a module of its name with `run(words)`, imported when it is asked for.
"""

from __future__ import annotations

import importlib
from collections.abc import Sequence
from itertools import takewhile

from .result import Result
from .usage import FORMATS, METER, OF_BATCH, PARQUET, REPORTS, RESULT, ROWS, Command

COMMANDS = {
    "ask": Command(
        "ask [NAME | job [SHEET]]",
        "ask for the inputs one at a time, and run it; job leads through a repair",
        forms=REPORTS,
        takes=RESULT,
        words=(
            "ask me; questions; step by step; walk me through; wizard; guide me; help me",
            "what should I enter; lead me; interactive; prompt me; new here; first time",
        ),
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
        forms=(*ROWS, PARQUET),
        takes=OF_BATCH,
        words=(
            "many rows; rows of a csv; whole list at once; a csv of values; excel; excel file",
            "spreadsheet of readings; csv; bulk; rows; many at once; all rows; list of readings",
        ),
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
        words=(
            "drill; quiz; exercise; homework; practice questions; worksheet; exam; grade; trainee",
            "trainees; apprentice; apprentices; training; class; test paper; mock exam; marks",
            "marking; mark the class; class results; results of the class; assess; assessment",
            "assignment; score; scores; toolbox talk; handout; worksheets; revision; tutorial",
            "questions for students; quiz for students; answer key; answers; practice sheet",
            "problems to solve; competence; competency; knowledge check; test my learners",
            "pop quiz; lesson; course; induction; train a new hire; pass mark; exercises; teach",
            "trainer; scenario; fault scenario; hard problem; fault case; students behind",
            "progress of a student; roster; learners who are behind",
        ),
    ),
    "explain": Command(
        "explain NAME",
        "question, method, inputs, cautions; --format json for a schema",
        forms=FORMATS,
        words=(
            "explain; how does it work; where does the limit come from; formula; method",
            "why that limit; why this limit; source of the limit; what is behind it",
            "show the formula; how is it worked out; working; which clause; which code",
        ),
    ),
    "instruments": Command(
        "instruments",
        "list the declared instruments; for a calculation, at which values each can still tell",
        {"--for": ("NAME", "the calculation; its inputs may be options, else its example's")},
        forms=(*FORMATS, "html"),
        words=(
            "meter accuracy; accuracy; accuracy of a meter; meter error; my meter; calibration",
            "how accurate is my meter; accurate; accurate meter; how accurate",
            "calibrated; instruments; how good is my meter; uncertainty; certificate",
            "calibration certificate; cal cert; meter certificate; certificate due",
            "certificate expired; calibration due; cal due; overdue; out of cal; due date",
            "cal sticker; which meter; meter spec; meter specification; digits; counts",
            "plus minus digits; resolution; test equipment; test gear; tester certificate",
            "list of meters; our meters; register of meters; clamp meter accuracy; clamp accuracy",
            "multimeter accuracy; declare a meter; add a meter; new meter; equipment register",
            "serial number of the meter; is my meter good enough",
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
        also="ask job",
        words=(
            "job; job sheet; report; repair report; work order; paperwork; checklist; write up",
            "customer report; record of a repair; service report; job card; job ticket; ticket",
            "jobcard; service ticket; work sheet; sheet for a repair; red tag; red tag it",
            "tag out; tag it; tagout; defect tag; defect label; label; do not use",
            "do not use label; condemn; condemned; failed machine; write off; good to go",
            "ready to go; good to use; ok to use; okay to use; put back in service",
            "back in service; put it back; put back; return to service; returned to customer",
            "ready to return to customer; hand back; hand it back; hand over; handover",
            "handing over; sign off; sign it off; signed off; sign out; ok to leave",
            "finish the repair; finished repair; repair done; all done; close out; close the job",
            "before I leave; last checks; final checks; what did I forget; what have I missed",
            "what is left to check; next step; what next; what now; where do I start",
            "where to start; start of a repair; order of work; steps of a repair",
            "repair procedure; procedure; full check; isolate; isolate and lock; isolation",
            "isolation procedure; lock out; lockout; lock off; switch off first; before opening",
            "before I open it; work permit; permit; permit to work; customer copy",
            "paper for the customer; invoice; what to tell the customer; call back; callback",
            "callbacks; came back; comeback; repeat repair; same fault again; warranty",
            "warranty claim; records; keep records; record keeping; keep a record; log book",
            "logbook; archive; past jobs; old jobs; last repair; previous repair; history",
            "history of a tool; history of a crimper; tool history; crimper history",
            "crimper record; tool record; audit; auditor; evidence; proof of repair; insurance",
            "export; export records; statistics of repairs; monthly report; how many passed",
            "not tested; technician name; signature; visit; service call; service visit",
            "service history; refrigerator repair; dryer repair; washer repair; oven repair",
            "dishwasher repair; replace a part; part replaced; will not fill; will not drain",
            "water leak; leaks water; door switch; door interlock",
        ),
    ),
    "new-plugin": Command(
        "new-plugin NAME",
        "write a plugin to change, in ./NAME or the folder of --output",
        words=(
            "own calculation; add a calculation; write a plugin; custom calculation; write my own",
            "own formula; our own calculation; extend",
        ),
    ),
    "plugins": Command(
        "plugins",
        "list the plugins, where they come from and their state",
        forms=FORMATS,
        words=(
            "plugin; add-on; extensions installed; plugins installed; third party; trust a plugin",
            "plugin not loaded",
        ),
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
        words=(
            "phone; on my phone; mobile; tablet; offline; browser; web page; app; iphone; android",
            "smartphone; no internet; no signal; without internet; on site; in the van",
            "take it with me; html file; one file; share with the crew; QR code",
        ),
    ),
    "rules": Command(
        "rules [FILE]",
        "list the house rules in force, or check a rules file",
        forms=FORMATS,
        words=(
            "house rules; shop rules; shop limits; our own limits; stricter limits; policy",
            "shop policy; company policy; shop standard; company standard; company rules",
            "workshop rules; site rules; our standard; our minimum; our own minimum",
            "our own limit; minimum is higher; higher minimum; in-house; in house; house limit",
            "house limits; tighter limit; tighter limits; stricter rules; stricter",
            "always required; required checks; checks we require; must be checked; add a rule",
            "rule file; rules file; change a limit; set our limit; own limit; override a limit",
            "relax a limit; mandatory checks; forbid; block; not allowed; ban a part",
        ),
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
        words=(
            "tables; published tables; reference table; look up a table; wall chart; table of",
            "print a table; printable table; poster; wall poster; chart for the wall; on the wall",
            "print for the wall; cheat sheet; reference chart; reference card; lookup",
            "list of limits; all limits; where are the limits; torque chart; pull force chart",
            "pull force table; ampacity chart; conversion chart; color code chart; standards used",
            "sources; which standard; which edition; published values",
        ),
    ),
}
_TAKES_NO_NAME = ("instruments", "job", "plugins", "pocket", "rules")


def _are_words(said: Sequence[str]) -> bool:
    """Whether words are of letters alone and name no file."""
    if not all(part.isalpha() for word in said for part in word.split()):
        return False
    from pathlib import Path  # needed by no ordinary run

    return not Path(said[0]).exists()


def run(name: str, words: Sequence[str]) -> Result:
    """Run a command on the words behind its name.

    Raises OtherWords where they are words for what is wanted, such as `job card`.
    """
    said = [*takewhile(lambda word: not word.startswith("-"), words)]
    if name in _TAKES_NO_NAME and said and _are_words(said):
        from .suggestions import of_command  # dear: it loads every calculation

        raise of_command(name, said, words, COMMANDS)
    module = importlib.import_module(f"{__name__}.{name.replace('-', '_')}")
    result: Result = module.run(words)
    return result
