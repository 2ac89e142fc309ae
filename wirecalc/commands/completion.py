"""`wirecalc completion SHELL`: the code with which a shell completes command lines."""

from __future__ import annotations

from collections.abc import Sequence

from ..base.errors import BadInput, Problem
from ..base.extras import install
from . import COMMANDS
from .options import split
from .result import Result

SHELLS = ("bash", "zsh", "fish")


def run(words: Sequence[str]) -> Result:
    """Print the code for one shell; raises BadInput where the extra is not installed."""
    options = split(words, COMMANDS["completion"], most_words=1)
    options.refuse()
    shell = options.words[0] if options.words else ""
    if shell not in SHELLS:
        wrong = f"there is no code for {shell!r}" if shell else "needs the name of a shell"
        raise BadInput([Problem("completion", wrong, f"write {', '.join(SHELLS)}")])
    try:
        from argcomplete.shell_integration import shellcode
    except ImportError:
        do = install("completion")
        raise BadInput([Problem("completion", "needs argcomplete", do)]) from None
    # nothing of the shell's own where there is no word to offer: a file's name is no quantity
    code = shellcode(["wirecalc"], shell=shell, complete_arguments=["-o", "nospace"])
    return Result(code.strip("\n"), output=options.output)
