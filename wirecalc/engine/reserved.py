"""Words that no calculation and no input can take: the command line, batch and sheet have them."""

from __future__ import annotations

import re

from ..base.errors import DeclarationError

COMMANDS = (
    "job",
    "batch",
    "ask",
    "completion",
    "explain",
    "instruments",
    "plugins",
    "pocket",
    "tables",
    "rules",
    "schema",
    "new-plugin",
    "drill",
    "help",
    "version",
)
OPTIONS = (
    "format",
    "output",
    "brief",
    "working",
    "chart",
    "help",
    "version",
    "bundled_only",
    "only_plugins",
    "strict",
    "no_marginal",
    "full",
    "short",
    "target",
    "target_alone",
    "meter",
)
BATCH_OPTIONS = ("label", "keep", "cells_decimal_comma", "criteria", "summary", "jobs", "resume")
CHECK_KEYS = (  # of a check on a job sheet
    "calculation",
    "name",
    "stage",
    "step",
    "machine",
    "uses",
    "note",
    "tool",
    "part",
    "removed",
    "meter",
)
NOT_TESTED_KEYS = ("name", "required", "reason", "step", "machine", "calculation")
DOES_NOT_APPLY_KEYS = ("calculation", "reason", "machine")
LONGEST = 60  # letters of the name of a calculation or an input
RESERVED_NAMES = frozenset(COMMANDS)  # words that no calculation can take
# words that no input can take
RESERVED_INPUTS = frozenset((*OPTIONS, *BATCH_OPTIONS, *CHECK_KEYS, *NOT_TESTED_KEYS))


def check_name(name: str) -> None:
    """Raise DeclarationError for a name that no calculation can have.

    Look-alikes of other alphabets and capitals would pass for another calculation in a listing.
    """
    if len(name) > LONGEST:
        raise DeclarationError(f"the name {name[:LONGEST]}... is longer than {LONGEST} letters")
    if not re.fullmatch(r"[a-z][a-z0-9]*(-[a-z0-9]+)*", name):
        raise DeclarationError(
            f"{name!r} is no name of a calculation; name the function in lower-case English "
            "letters, digits and single underscores, a letter first"
        )
    if name in RESERVED_NAMES:
        raise DeclarationError(f"{name} is a reserved word of the command line")
