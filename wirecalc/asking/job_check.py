"""The questions of one check of a sheet."""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple

from ..jobs.sheet.plan import Check
from .conversation import Conversation
from .plates import Offered


class OfCheck(NamedTuple):
    """The questions of one check of the sheet; what other checks were given is offered for it."""

    at: int
    check: Check
    talk: Conversation
    offered: Mapping[str, Offered]
