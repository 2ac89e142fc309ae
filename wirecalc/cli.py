"""The command line: what was asked for, where the result goes, and the exit status.

Exit: 0 pass, marginal or plain figures; 1 fail; 2 the command or an input was wrong; 3 cannot
tell; 4 a defect of the plugin asked for, or of the core. 130 on Ctrl-C.
"""

from __future__ import annotations

import contextlib
import os
import sys
from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from .base.errors import BadInput, OtherWords, PluginDefect, TableError
from .commands import COMMANDS, process
from .commands import run as run_command
from .commands.result import DEFECT, WRONG, Result
from .output import terminal_width
from .output.layout import printable, rule, visible, wrap
from .version import VERSION

if TYPE_CHECKING:
    from typing import TextIO

    from .commands.result import Stream

INTERRUPTED = 130


def main(argv: Sequence[str] | None = None) -> int:
    """Run the command line and return its exit status. Nobody sees a traceback.

    Without words it is the installed command, whose process is its own.
    """
    if "_ARGCOMPLETE" in os.environ:  # a shell wants to complete a line
        from .commands.shell_completion import complete

        complete()
    if argv is not None:
        return _shown(list(argv))
    process.take_over()
    return process.end(_shown(sys.argv[1:]))


def _shown(words: list[str]) -> int:
    with terminal_width.shown_on(terminal_width.looked_at(sys.stdout)):
        return _run(words)


def _run(words: list[str]) -> int:
    try:
        with contextlib.redirect_stdout(sys.stderr):  # what a plugin prints is no result
            result = _dispatch(words)
        return _emit(result)
    except OtherWords as error:
        _complain(str(error), before="")
        return WRONG
    except BadInput as error:
        _complain(str(error))
        return WRONG
    except PluginDefect as error:
        _complain(str(error))
        return DEFECT
    except KeyboardInterrupt as interrupt:
        from .commands.told_to_end import ToldToEnd

        if isinstance(interrupt, ToldToEnd):
            interrupt.obey()
        return INTERRUPTED
    except BaseException as error:  # Python's own exit status would be 1, which is a fail
        from .base.blame import TRACEBACK, described, show_traceback

        show_traceback(error)
        what = "a table is damaged" if isinstance(error, TableError) else "a defect of wirecalc"
        _complain(f"{what}: {described(error)} ({TRACEBACK}=1 shows where)")
        return DEFECT


def _dispatch(words: list[str]) -> Result:
    name, rest = (words[0], words[1:]) if words else ("", [])
    if name in ("--version", "version"):
        return Result(f"wirecalc {VERSION}")
    from .commands import calculate, listing

    if name in ("--help", "-h", "help"):
        return listing.show_help(rest, COMMANDS)
    if not words or name.startswith("--"):
        return listing.list_all(words, COMMANDS)
    if "--help" in rest or "-h" in rest:
        return listing.show_help([name, *rest], COMMANDS)
    if name in COMMANDS:
        return run_command(name, rest)
    return calculate.run(name, rest, COMMANDS)


def _emit(result: Result) -> int:
    """Print the result or write it to its file, and what is said before and after it."""
    for line in result.warnings:
        _complain(line)
    try:
        return _deliver(result)
    finally:
        if result.closing and sys.stderr is not None:
            with contextlib.suppress(OSError):
                _print(result.closing, sys.stderr)


def _deliver(result: Result) -> int:
    """Print the result or write it to its file; a closed pipe ends quietly."""
    if result.output is not None:
        from .base.files import encoded, whole
        from .base.unfinished import growing
        from .commands.told_to_end import listening

        behind = result.grows_behind
        opened = whole(result.output) if behind is None else growing(result.output, behind)
        with listening(), opened as file:
            for text in _texts(result):
                file.write(encoded(f"{text}\n"))
        return _status(result)
    if sys.stdout is None:
        _complain("the output cannot be written (it is closed)")
        return WRONG
    try:
        for text in _texts(result):
            _print(text, sys.stdout)
        if result.again and _scrolled(result.text):
            _print(f"\n{rule()}\n{result.again}", sys.stdout)
        sys.stdout.flush()
    except BrokenPipeError:
        _drop_stdout()
    except OSError as error:
        _drop_stdout()
        _complain(f"the output cannot be written ({error.strerror or error})")
        return WRONG
    return _status(result)


def _scrolled(text: str | Stream) -> bool:
    """Return whether the first lines of a printed text have left the terminal it went to."""
    if not isinstance(text, str) or not sys.stdout.isatty():
        return False
    import shutil

    return text.count("\n") + 2 > shutil.get_terminal_size().lines  # with the shell's prompt


def _texts(result: Result) -> Iterator[str]:
    """Yield what is to be printed, at once or as it comes."""
    if isinstance(result.text, str):
        yield result.text
        return
    while True:
        with contextlib.redirect_stdout(sys.stderr):  # what a plugin prints is no result
            text = next(result.text.lines, None)
        if text is None:
            return
        yield text


def _status(result: Result) -> int:
    return result.status if isinstance(result.text, str) else result.text.status()


def _drop_stdout() -> None:
    """Send what is still buffered nowhere, so that Python's own exit stays quiet."""
    os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


def _print(text: str, stream: TextIO) -> None:
    if stream is sys.stdout and terminal_width.now().colour:
        text = terminal_width.coloured(text)
    print(printable(text, stream.encoding or "ascii"), file=stream)


def _complain(text: str, before: str = "wirecalc: ") -> None:
    """Print to stderr; where nobody can read it the exit status still says it."""
    if sys.stderr is None:
        return
    for line in _laid_out(text, before):
        try:
            _print(line, sys.stderr)
            sys.stderr.flush()
        except ValueError:  # a plugin closed it
            return
        except OSError:
            os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stderr.fileno())
            return


def _laid_out(text: str, before: str) -> Iterator[str]:
    """Yield the lines of a complaint: as wide as the terminal, else each on one line, as a log.

    Where nothing goes `before` them they are laid out already.
    """
    wide = terminal_width.looked_at(sys.stderr)
    for line in map(visible, text.splitlines()):
        if before and (wide.terminal or terminal_width.said_columns()):
            with terminal_width.shown_on(wide):
                yield from wrap(f"{before}{line}", indent="    ")
        else:
            yield f"{before}{line}"
