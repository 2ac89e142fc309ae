"""What a calculation hands over to be called later, when it is shown: workings and charts.

They are a plugin's code, called where nobody thinks of plugins any more: what fails there is said
in its place, or is a defect of that plugin.
"""

from __future__ import annotations

from collections.abc import Callable

from ..base.blame import Blamed
from ..base.errors import PluginDefect
from ..said.charts import Chart, ChartMaker
from ..said.findings import BandFigure
from ..said.item_checks import check
from ..said.items import Listing


def worked(banded: BandFigure) -> BandFigure:
    """Return a figure that shows its working, or why it has none: that takes no verdict along."""
    working = banded.figure.working
    if working is None:
        return banded

    def shown() -> str:
        try:
            with Blamed("not shown, its working failed"):
                return "".join([working()])
        except PluginDefect as error:
            return str(error)

    return banded._replace(figure=banded.figure._replace(working=shown))


def listed(whose: str) -> Callable[[Listing], Listing]:
    """Return what makes the rows of a listing; it raises PluginDefect where that fails."""

    def whole(one: Listing) -> Listing:
        with Blamed(f"the listing {one.title!r} of {whose} failed"):
            made = one.whole()
            if made is not one:
                check(made)
            return made

    return whole


def drawn(whose: str, build: ChartMaker) -> ChartMaker:
    """Return what builds a chart; it raises PluginDefect where that fails."""

    def built() -> Chart:
        with Blamed(f"the chart of {whose} failed"):
            made = build()
            if not isinstance(made, Chart):
                raise TypeError(f"{made!r} is no Chart")
            return made

    return built
