"""Change the program in small ways, one at a time, and see whether a test notices.

    .venv/bin/python tests/mutation/run.py said --count 100 --seed 16 --state FOLDER

The folder keeps a copy of the tree, which lines each test runs, and what came of each mutant: a
run that is ended goes on where it was. The copy of the program stays as it was at first; the tests
are copied anew, so `--again` shows what new tests kill.
"""

from __future__ import annotations

import argparse
import compileall
import difflib
import itertools
import shutil
import subprocess
import time
from collections import Counter
from collections.abc import Sequence
from pathlib import Path

import forked
import operators
from cosmic_ray.work_db import WorkDB, use_db
from cosmic_ray.work_item import MutationSpec, TestOutcome, WorkerOutcome, WorkItem, WorkResult
from covering import covered, covering
from sample import drawn, mutants, mutated

ROOT = Path(__file__).parents[2]
BUNDLED = "bundled"  # the bundled calculations, sampled as one
FIRST = 25  # tests that are tried before all the others: most mutants live no longer
LEAST, TIMES = 60.0, 8.0  # seconds, and times the tests' own seconds, until a mutant counts as hung


def main() -> None:
    """Read the words, and do it."""
    words = argparse.ArgumentParser(description=__doc__.splitlines()[0] if __doc__ else None)
    words.add_argument("room", help="a room of wirecalc/, or `bundled`")
    words.add_argument("--count", type=int, default=100)
    words.add_argument("--seed", type=int, default=16)
    words.add_argument("--state", type=Path, required=True, help="a folder outside the tree")
    words.add_argument("--tests", default="", help="only files of tests that match this")
    words.add_argument("--again", action="store_true", help="try those that lived once more")
    words.add_argument("--most", type=float, default=240, help="seconds of tests a mutant")
    words.add_argument("--minutes", type=float, default=1e6, help="stop after so long")
    said = words.parse_args()
    state: Path = said.state.resolve()
    tree = _copied(state)
    forked.load_heavy()
    if said.room == BUNDLED:
        operators.register()
    with use_db(state / f"{said.room}-{said.seed}.sqlite", WorkDB.Mode.create) as kept:
        if not kept.num_work_items:
            kept.add_work_items(_chosen(said.room, tree, said.count, said.seed))
        tests = covered(tree, said.tests)
        lived = {job for job, result in kept.results if _is_open(result)}
        untried = {item.job_id for item in kept.pending_work_items}
        until = time.monotonic() + 60 * said.minutes
        for item in kept.work_items:
            if item.job_id in untried | (lived if said.again else set()):
                if time.monotonic() > until:
                    break
                result = _tried(item.mutations[0], tree, tests, said.most)
                kept.set_result(item.job_id, result)
                print(_line(item, result, tree), flush=True)
        _report(kept, tree)


def _is_open(result: WorkResult) -> bool:
    """Whether a mutant lived, or died of something that no test said."""
    return not result.is_killed or str(result.output).startswith("pytest ended")


def _copied(state: Path) -> Path:
    """Return a copy of the tree: the program as it was at first, the tests as they are now."""
    clean, tree = state / "clean", state / "tree"
    fresh = not clean.exists()
    listed = subprocess.run(
        ["git", "ls-files", "--cached", "--others", "--exclude-standard"],
        cwd=ROOT, capture_output=True, text=True, check=True,
    )  # fmt: skip
    for name in listed.stdout.splitlines():
        if fresh or name.startswith("tests/"):
            (clean / name).parent.mkdir(parents=True, exist_ok=True)
            shutil.copy2(ROOT / name, clean / name)
    shutil.copytree(clean, tree, dirs_exist_ok=True)  # whatever a run that was ended left in it
    compileall.compile_dir(tree, quiet=1)  # no child writes what it compiles: a mutant would stay
    return tree


def _chosen(room: str, tree: Path, count: int, seed: int) -> list[WorkItem]:
    """Return the sample of a room."""
    folder = tree / ("plugins/wirecalc_plugins" if room == BUNDLED else f"wirecalc/{room}")
    files = [path.relative_to(tree) for path in folder.rglob("*.py")]
    weight = _weight if room == BUNDLED else lambda mutation: 1.0
    return drawn(list(mutants(files, tree)), count, seed, weight)


def _weight(mutation: MutationSpec) -> float:
    """Limits, constants and cautions are three times as likely as the rest."""
    heavy = ("Number", "Compar", "trade/")
    return 3.0 if any(part in mutation.operator_name for part in heavy) else 1.0


def _tried(mutation: MutationSpec, tree: Path, tests: forked.Covered, most: float) -> WorkResult:
    """Put a mutant in its place, run the tests that run its lines, and put the source back."""
    path = mutation.module_path
    file, source = str(path.relative_to(tree)), path.read_text(encoding="utf-8")
    changed = mutated(source, mutation)
    if changed is None or changed == source:
        return WorkResult(WorkerOutcome.NO_TEST)
    chosen = covering(tests, tree, file, mutation.start_pos[0])
    compiled = list((path.parent / "__pycache__").glob(f"{path.stem}.*.pyc"))
    try:
        path.write_text(changed, encoding="utf-8")
        for old in compiled:
            old.unlink()
        killer = _killer(chosen, tree, tests, most)
    finally:
        path.write_text(source, encoding="utf-8")
        compileall.compile_file(path, quiet=1, force=True)
    outcome = TestOutcome.KILLED if killer else TestOutcome.SURVIVED
    diff = "\n".join(
        difflib.unified_diff(source.split("\n"), changed.split("\n"), n=2, lineterm="")
    )
    return WorkResult(WorkerOutcome.NORMAL, killer or f"{len(chosen)} tests pass", outcome, diff)


def _killer(chosen: Sequence[str], tree: Path, tests: forked.Covered, most: float) -> str:
    """Return the test that fails first, or what else came of it; empty if all pass."""
    summed = itertools.accumulate(tests[test][0] for test in chosen)
    quick = [test for test, seconds in zip(chosen, summed, strict=True) if seconds < most]
    for part in (quick[:FIRST], quick[FIRST:]):
        if part:
            seconds = sum(tests[test][0] for test in part)
            limit = LEAST + TIMES * seconds
            failed = forked.in_child(lambda p=part: forked.first_failure(p), tree, limit)
            if failed is None:
                return "it hung"
            if failed:
                return str(failed[0])
    return ""


def _line(item: WorkItem, result: WorkResult, tree: Path) -> str:
    (m,) = item.mutations
    outcome = result.test_outcome.value if result.test_outcome else "no mutant"
    where = f"{m.module_path.relative_to(tree)}:{m.start_pos[0]}"
    return f"{outcome:9} {where} {m.operator_name.partition('/')[2]}: {result.output}"


def _report(kept: WorkDB, tree: Path) -> None:
    """Print the survivors and the score."""
    counted: Counter[str] = Counter()
    for item, result in kept.completed_work_items:
        counted[result.test_outcome.value if result.test_outcome else "no mutant"] += 1
        if result.test_outcome == TestOutcome.SURVIVED:
            print(f"\n{_line(item, result, tree)}\n{result.diff}")
    print(f"\n{kept.num_results} of {kept.num_work_items} tried: {dict(counted)}")


if __name__ == "__main__":
    main()
