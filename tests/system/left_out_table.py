"""Write docs/left-out.md from the declarations: what leaving each optional input out comes to.

.venv/bin/python tests/system/left_out_table.py
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import wirecalc
from wirecalc.engine.inputs import Input

PAGE = Path(__file__).parents[2] / "docs" / "left-out.md"
HEAD = """# What leaving an input out comes to

Made from the declarations by `tests/system/left_out_table.py`; do not edit it by hand. What is
needed is not listed. *Asked*: left out is *cannot tell*, as `unknown` is. *Assumed*: what is
plausible beside the default is tried too, and what rests on the default alone is *cannot tell*.
*May be left out*: the verdict stands without it.
"""


def page() -> str:
    """Return the whole page."""
    return "\n".join([HEAD, *_sections()])


def _sections() -> Iterator[str]:
    for name, provided in sorted(wirecalc.build(bundled_only=True).calculations.items()):
        optional = [i for i in provided.calculation.inputs if not i.required]
        if not optional:
            continue
        yield f"## {name}\n\n| input | what it is | left out |\n| --- | --- | --- |"
        for declared in optional:
            yield _row(declared)
        yield ""


def _row(declared: Input) -> str:
    goes = f" (with `{declared.kind.goes_with}`)" if declared.kind.goes_with else ""
    cells = (f"`{declared.name}`{goes}", declared.kind.text, declared.need)
    return f"| {' | '.join(cell.replace('|', '/') for cell in cells)} |"


if __name__ == "__main__":
    PAGE.write_text(page(), encoding="utf-8")
