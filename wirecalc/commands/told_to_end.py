"""A run that is told to end takes away what it had begun to write, and then ends as told."""

from __future__ import annotations

import contextlib
import os
import signal
import threading
from collections.abc import Iterator
from types import FrameType


class ToldToEnd(KeyboardInterrupt):
    """A signal that ends a process. Like Ctrl-C it is nobody's defect."""

    def __init__(self, number: int) -> None:
        self.number = number
        super().__init__()

    def obey(self) -> None:
        """End as the signal alone would have ended it."""
        signal.signal(self.number, signal.SIG_DFL)
        os.kill(os.getpid(), self.number)


@contextlib.contextmanager
def listening() -> Iterator[None]:
    """Within this, SIGTERM and a closed terminal raise ToldToEnd, where nobody else listens."""
    numbers = [n for name in ("SIGTERM", "SIGHUP") if (n := getattr(signal, name, None))]
    mine = threading.current_thread() is threading.main_thread()
    free = [n for n in numbers if mine and signal.getsignal(n) is signal.SIG_DFL]
    for number in free:
        signal.signal(number, _raise)
    try:
        yield
    finally:
        for number in free:
            signal.signal(number, signal.SIG_DFL)


def _raise(number: int, _: FrameType | None) -> None:
    raise ToldToEnd(number)
