"""What a drill is made from again: topic, level and seed."""

from __future__ import annotations

import re
from typing import NamedTuple

from ..base.errors import BadText

TOGETHER = "+"
CHOOSE, WORK, JUDGE = 1, 2, 3
LEVELS = {
    CHOOSE: "choose among answers",
    WORK: "write value and unit",
    JUDGE: "give the verdict, the error of the meter counted",
}


class Recipe(NamedTuple):
    """A drill: the same for the same recipe, on any machine, for one version of wirecalc.

    `topic` is a calculation, or several of a mixed sheet: drop+pull.
    """

    topic: str
    level: int
    seed: int

    @property
    def topics(self) -> list[str]:
        """The calculations that are asked about, by turns.

        >>> Recipe("drop+pull", 1, 7).topics
        ['drop', 'pull']
        """
        return self.topic.split(TOGETHER)

    @property
    def code(self) -> str:
        """The recipe as it stands on sheets and in a file of answers.

        >>> Recipe("drop", 1, 7).code
        'drop/1/7'
        """
        return f"{self.topic}/{self.level}/{self.seed}"

    def name(self, learner: int, number: int) -> str:
        """Return the name from which one question's numbers are drawn."""
        return f"{self.code}/{learner}/{number}"


def read_recipe(code: str) -> Recipe:
    """Read the code of a drill; raises BadText.

    >>> read_recipe("drop/1/7")
    Recipe(topic='drop', level=1, seed=7)
    """
    match = re.fullmatch(r"([a-z0-9+-]+)/([1-3])/([0-9]{1,9})", code.strip(), re.ASCII)
    if match is None:
        raise BadText(f"{code!r} is no code of a drill", "copy it from the sheet, such as drop/1/7")
    return Recipe(match[1], int(match[2]), int(match[3]))
