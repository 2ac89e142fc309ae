"""A recorded current; imported when a recording is asked about."""

from __future__ import annotations

from collections.abc import Sequence

from wirecalc import Deferred, deferred, hookimpl


@hookimpl
def wirecalc_calculations() -> Sequence[Deferred]:
    """Provide the recorded current."""
    return [
        deferred(
            "wirecalc_plugins.trace_calculation:trace",
            part="motor and start",
            question="How did it start, where did it settle, and when was it on?",
        )
    ]
