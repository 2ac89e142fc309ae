"""A command at a real terminal: what it prints there, what is typed, and how it ends."""

from __future__ import annotations

import contextlib
import os
import pty
import re
import select
import subprocess
import termios
import time
from collections.abc import Mapping, Sequence
from pathlib import Path
from types import TracebackType

from .conftest import LONGEST_RUN, clean_environment

_CONTROL = re.compile(r"\x1b(\[[0-9;?]*([A-Za-z]|$)|[=>]|$)")


class Terminal:
    """A command whose stdin, stdout and stderr are a terminal, unless stdout goes to a file.

    `size` is its rows and columns.
    """

    def __init__(
        self,
        words: Sequence[str | Path],
        folder: Path,
        env: Mapping[str, str] | None = None,
        stdout: Path | None = None,
        size: tuple[int, int] | None = None,
    ) -> None:
        self._printed = b""
        self._at = 0
        self._master, slave = pty.openpty()
        if size is not None:
            termios.tcsetwinsize(slave, size)
        out = os.open(stdout, os.O_WRONLY | os.O_CREAT) if stdout else slave
        terminal = {"TERM": "dumb", "LC_ALL": "C.UTF-8", "HISTFILE": "", "HOME": str(folder)}
        self._process = subprocess.Popen(
            [str(w) for w in words],
            stdin=slave,
            stdout=out,
            stderr=slave,
            cwd=folder,
            env=clean_environment() | terminal | dict(env or {}),
            start_new_session=True,
            preexec_fn=_control,
        )
        os.close(slave)
        if out != slave:
            os.close(out)

    def __enter__(self) -> Terminal:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        if self._process.poll() is None:
            self._process.kill()
            self._process.wait()
        os.close(self._master)

    @property
    def seen(self) -> str:
        """All that was printed, without what only moves the cursor or changes the letters."""
        return _CONTROL.sub("", self._printed.decode("utf-8", "replace")).replace("\r\n", "\n")

    def wait_for(self, text: str) -> str:
        """Wait until a text is printed that was not waited for before; return all up to it."""
        end = time.monotonic() + LONGEST_RUN
        while text not in self.seen[self._at :]:
            left = end - time.monotonic()
            assert left > 0 and self._more(left), f"no {text!r} in {self.seen!r}"
        start, self._at = self._at, self.seen.index(text, self._at) + len(text)
        return self.seen[start : self._at]

    def wait_for_prompt(self) -> str | None:
        """Wait until it prompts for a line; return what was printed since, None where it ended."""
        end = time.monotonic() + LONGEST_RUN
        while not self.seen[self._at :].endswith("> "):
            left = end - time.monotonic()
            assert left > 0, f"no prompt in {self.seen!r}"
            if not self._more(left):
                return None
        start, self._at = self._at, len(self.seen)
        return self.seen[start:]

    def kill(self) -> None:
        """Kill it at once, as a battery that is empty does."""
        self._process.kill()
        self._process.wait(timeout=LONGEST_RUN)

    def hang_up(self) -> int:
        """Take the terminal away, and return the exit status."""
        os.close(self._master)
        self._master = os.open(os.devnull, os.O_RDWR)
        return self._process.wait(timeout=LONGEST_RUN)

    def type(self, text: str) -> None:
        """Type a text as it stands; a line ends with a carriage return."""
        os.write(self._master, text.encode())

    def leave(self, key: str) -> int:
        """Type Ctrl-C or Ctrl-D, until it ends, and return the exit status.

        Python's `input()` may see a Ctrl-C that comes in the instant after the prompt only with
        the next key.
        """
        for _ in range(LONGEST_RUN):
            self.type(key)
            with contextlib.suppress(subprocess.TimeoutExpired):
                self._process.wait(timeout=1)
                break
        return self.end()

    def end(self) -> int:
        """Wait for the end and return the exit status."""
        end = time.monotonic() + LONGEST_RUN
        while self._more(max(0.0, end - time.monotonic())):
            pass
        return self._process.wait(timeout=LONGEST_RUN)

    def _more(self, seconds: float) -> bool:
        if not select.select([self._master], [], [], seconds)[0]:
            return False
        try:
            read = os.read(self._master, 65536)
        except OSError:  # how Linux says that nobody writes there any more
            return False
        self._printed += read
        return bool(read)


def _control() -> None:
    """Make the terminal the one that Ctrl-C comes from."""
    import fcntl
    import termios

    fcntl.ioctl(0, termios.TIOCSCTTY, 0)
