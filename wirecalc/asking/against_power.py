"""What stands against putting power on: what was checked without it, and failed or cannot tell.

It is offered to be measured again before power is spoken of, and whenever a sheet is taken up.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from typing import Any, NamedTuple, TypeVar

from ..engine.reserved import CHECK_KEYS
from ..jobs.checks import AS_FOUND, AS_LEFT, STEPS, JobCheck
from ..jobs.job import AGAIN, BENCH, Job
from ..plugging.host import Catalogue
from ..said.verdicts import Verdict
from . import job_work
from .job_question import Question
from .job_state import State, is_check, name_of, stage_of
from .job_work import LATER

POWER, KEY = "power up", "stop"
_BEFORE = STEPS[: STEPS.index(POWER)]
_LIVE = "live readings"
_IN_FULL = 2  # of what stands against it, so that the question fits a small screen
_OF_THE_CASE = ("ground", "insulation")  # at whatever step: read dead, between hand and live part
_STANDS = {
    Verdict.FAIL: "No power before what fails is mended and measured again.",
    Verdict.CANNOT_TELL: "Settle this before power is put on.",
}
_ASKS = "What do you do now?"
_MEASURE, _LEAVE = "measure again: ", "leave the job here"
_ON = {Verdict.FAIL: "go on, power stays off", Verdict.CANNOT_TELL: "go on all the same"}
_ALSO = {  # what people say -> where one choice alone begins so
    **dict.fromkeys(("again", "measured", "remeasure", "mended", "retest"), _MEASURE),
    **dict.fromkeys(("stop", "quit", "exit", "end"), _LEAVE),
    **dict.fromkeys(("continue", "proceed"), "go on"),
}
T = TypeVar("T")


class Bar(NamedTuple):
    """A check that stands against power: its verdict, its place on the sheet, name and reason."""

    verdict: Verdict
    at: int
    name: str
    because: str

    @property
    def short(self) -> str:
        """Its name and verdict."""
        return f"{self.name} {str(self.verdict).upper()}"

    @property
    def line(self) -> str:
        """It in words."""
        return f"{self.short}: {self.because}"


def guarded(asked: T, state: State, job: Callable[[], Job | None]) -> T:
    """Return what is asked; before power with what stands against it: after a fail later is meant.

    `job` returns what the sheet comes to.
    """
    if not isinstance(asked, Question) or asked.step != POWER:
        return asked
    bars = list(against(state, job()))
    names: dict[Verdict, list[str]] = {bar.verdict: [] for bar in bars}
    for bar in bars:
        names[bar.verdict].append(bar.name)
    stops = [f"STOP  {', '.join(of)} {str(v).upper()}. {_STANDS[v]}" for v, of in names.items()]
    guard = asked._replace(stops=stops)
    if LATER in asked.choices and any(bar.verdict is Verdict.FAIL for bar in bars):
        guard = guard._replace(enter=LATER, default=LATER)
    return guard


def questions(state: State, job: Job | None) -> Iterator[Question]:
    """Yield what is asked before power of what stands against it, once for each such reading."""
    bars = list(against(state, job))
    if all(_passed(bar) in state.passed for bar in bars):
        return
    worst = max((bar.verdict for bar in bars), key=lambda verdict: verdict.rank)
    again = dict.fromkeys(f"{_MEASURE}{bar.name}" for bar in bars)
    choices = [*again, _LEAVE, _ON[worst]]
    meant = {word: [c for c in choices if c.startswith(to)] for word, to in _ALSO.items()}
    also = {word: found[0] for word, found in meant.items() if len(found) == 1}
    lines = [bar.line if n < _IN_FULL else bar.short for n, bar in enumerate(bars)]
    stops = [f"STOP  {_STANDS[worst]}", *lines]
    step = _BEFORE[-1]
    yield Question(KEY, _ASKS, (), choices, _LEAVE, _LEAVE, step, also=also, stops=stops)


def take(state: State, catalogue: Catalogue, job: Job | None, values: Sequence[str]) -> None:
    """Take the answer to it: a check is begun anew, the job is left, or it goes on."""
    bars = list(against(state, job))
    named = [bar for bar in bars if f"{_MEASURE}{bar.name}" == values[0]]
    if named:
        _measure_again(state, catalogue, _judged(job, state.checks[named[0].at]), named[0].at)
    elif values[0] == _LEAVE:
        state.is_left = True
    else:
        state.passed |= {_passed(bar) for bar in bars}


def against(state: State, job: Job | None) -> Iterator[Bar]:
    """Yield what fails, or cannot tell, of what was checked without power, or was only begun.

    A fail comes before what cannot tell, and what keeps a person from a live case before the rest.
    """

    def weight(bar: Bar) -> tuple[int, bool]:
        of_the_case = state.checks[bar.at].get("calculation") in _OF_THE_CASE
        return -bar.verdict.rank, not of_the_case

    if state.kind != BENCH:
        yield from sorted(_all(state, job), key=weight)


def _all(state: State, job: Job | None) -> Iterator[Bar]:
    """Yield them as they stand on the sheet.

    What failed as found stays a fail until it is judged again, also where that was begun.
    """
    failed = {
        (c.check.calculation, c.check.name): c.check
        for c in (job.counted if job else ())
        if c.why == AGAIN and c.check
    }
    left = {(str(c["calculation"]), name_of(c)) for c in state.checks if stage_of(c) == AS_LEFT}
    for at, entry in enumerate(state.checks):
        of = (str(entry["calculation"]), name_of(entry))
        is_left = stage_of(entry) == AS_LEFT
        if not _is_dead(entry) or (of in left and not is_left):
            continue
        if of in failed:
            because = f"as found, and not measured again: {_because(failed[of])}"
            yield Bar(Verdict.FAIL, at, of[1], because)
        elif is_left and (check := _judged(job, entry)) is None:
            yield Bar(Verdict.CANNOT_TELL, at, of[1], "not measured yet")
        elif is_left and check and (check.defect or check.verdict in _STANDS):
            yield Bar(check.verdict or Verdict.CANNOT_TELL, at, of[1], _because(check))


def _is_dead(entry: Mapping[str, Any]) -> bool:
    step = entry.get("step", "")
    live = step == _LIVE and stage_of(entry) == AS_FOUND  # it is read again under power
    return (step in _BEFORE and not live) or entry.get("calculation") in _OF_THE_CASE


def _judged(job: Job | None, entry: Mapping[str, Any]) -> JobCheck | None:
    """Return a check as the sheet comes to it; None before it has what it needs."""
    checks = job.checks if job else ()
    of = (entry.get("calculation"), name_of(entry), stage_of(entry))
    return next((c for c in checks if (c.calculation, c.name, c.stage) == of), None)


def _because(check: JobCheck) -> str:
    return check.decided_by.because if check.decided_by else check.defect


def _passed(bar: Bar) -> str:
    return f"{KEY} {bar.line}"


def _measure_again(state: State, catalogue: Catalogue, check: JobCheck | None, at: int) -> None:
    """Begin a check anew; what was read before the mend stays on the sheet, as found."""
    entry = state.checks[at]
    calculation, name = str(entry["calculation"]), name_of(entry)
    finding = check.finding if check else None
    needs = {need for c in finding.criteria for need in c.criterion.needs} if finding else set()
    if stage_of(entry) == AS_LEFT and (check is None or needs):
        for need in needs:  # it was said not to be known
            entry.pop(need, None)
            state.sheet.get("nameplate", {}).pop(need, None)
        state.go_on_with(at)
        return
    own = job_work.own_of(state, catalogue, entry)
    if stage_of(entry) == AS_LEFT and any(
        is_check(c, calculation, name, AS_FOUND) for c in state.checks
    ):
        read = f"before it was mended: {_because(check)}" if check else ""
        note = "; ".join(filter(None, [str(entry.get("note", "")), read]))
        kept = {k: v for k, v in entry.items() if k in CHECK_KEYS}
        entry.clear()  # the first reading stands as found; of this one the words stay
        entry.update({**kept, **own, "note": note})
        state.go_on_with(at)
        return
    if stage_of(entry) == AS_LEFT:
        entry["stage"] = AS_FOUND
        state.closed.add(at)
    state.start(calculation, name, str(entry.get("step", "")), AS_LEFT, own)
