"""What must hold in an item that a calculation or a house rule yields, checked for every one.

A plugin's annotations bind nobody, and an item with a field of another type would come to grief
where nobody knows any more whose it is, and take the rest of the finding along. A class of the
plugin's own in place of a record could answer what it likes, so the records themselves are taken
and none else.
"""

from __future__ import annotations

import math
import sys
from collections.abc import Callable
from typing import Any

from ..base.plain_texts import LONGEST_NAME, LONGEST_TEXT, is_text, wrong_text
from ..published.sources import Confidence, Source
from .criteria import Criterion, Origin
from .items import GRAVITY, Answer, Caution, ChartItem, Figure, Listing, NotChecked

Test = Callable[[Any], bool]
_MOST_SOURCES = 10_000
_right_sources: dict[int, Source] = {}  # those of tables come again in every run
_LARGEST = sys.float_info.max  # an int may be larger than any float
_SENSES = ("at least", "at most", "requires", "cannot tell")


def check(item: Any) -> None:
    """Raise TypeError for what is no item, and ValueError for one that is filled in wrongly."""
    kind = type(item)
    if (kind is Criterion and _plainly_right(item)) or (kind is Figure and _plain_figure(item)):
        return
    tests = _FIELDS.get(kind)
    if tests is None:
        raise TypeError(f"it yields a {type(item).__name__}, which is no item of a finding")
    for test, value, default in zip(tests, item, _DEFAULTS[type(item)], strict=True):
        if value is not default and not test(value):
            raise ValueError(_wrong(item, tests))


def _plainly_right(c: Criterion) -> bool:
    """Whether a criterion is right at a glance, as nearly all are; else it is looked at whole."""
    name, sense, actual, limit, unit, level, source, origin, advisory, holds, *words = c
    says, action, needs, band, better, behind, plain = words
    return (
        type(name) is type(sense) is type(unit) is type(says) is type(action) is str
        and type(better) is type(behind) is type(plain) is str
        and sense in _SENSES
        and (actual is None or _plain_number(actual))
        and (limit is None or _plain_number(limit))
        and (level is None or _plain_number(level))
        and len(name) + len(unit) <= LONGEST_NAME
        and len(says) + len(action) + len(better) + len(behind) + len(plain) <= LONGEST_TEXT
        and (source is None or _right_sources.get(id(source)) is source)
        and type(origin) is Origin
        and (advisory is False or advisory is True)
        and (holds is False or holds is True)
        and _texts(needs)
        and band is None
    )


def _plain_figure(f: Figure) -> bool:
    name, value, unit, source, working, also, toward, band = f
    return (
        type(name) is type(unit) is type(toward) is str
        and len(name) + len(unit) + len(toward) <= LONGEST_NAME
        and _plain_number(value)
        and (source is None or _right_sources.get(id(source)) is source)
        and (working is None or callable(working))
        and _also(also)
        and band is None
    )


def _plain_number(value: Any) -> bool:
    return (type(value) is float or type(value) is int) and -_LARGEST <= value <= _LARGEST


def _wrong(item: Any, tests: tuple[Test, ...]) -> str:
    """Say which field of an item is wrong."""
    for field, test, value in zip(item._fields, tests, item, strict=True):
        if not test(value):
            named = repr(item[0]) if is_text(item[0], LONGEST_NAME) else f"a {type(item).__name__}"
            wrong = f"{named} is {value}" if _infinite(value) else ""
            wrong = wrong or f"{field} of {named} {_what_it_is(test, value)}"
            return f"{wrong}; {_would_do(test, value)}"
    raise AssertionError


def _what_it_is(test: Test, value: Any) -> str:
    """Say what stands in a field, without asking it where it could answer what it likes."""
    parts = value if type(value) is tuple else (value,)
    cells = (c for part in parts for c in (part if type(part) is tuple else (part,)))
    texts = [one for one in cells if isinstance(one, str)]
    odd = [said for text in texts if (said := wrong_text(text, _MOST.get(test, LONGEST_TEXT)))]
    return odd[0] if odd else f"is {value!r}"


def _would_do(test: Test, value: Any) -> str:
    if _infinite(value):
        return "refuse the inputs that lead there, or yield cannot_tell"
    if isinstance(value, bool):
        return "write a number; what must hold is yielded with requires"
    return _WRITE.get(test, "see its docstring for what it takes")


def _infinite(value: Any) -> bool:
    return isinstance(value, float) and not math.isfinite(value)


def _text(value: Any) -> bool:
    return is_text(value)


def _name(value: Any) -> bool:
    return is_text(value, LONGEST_NAME)


def _words(value: Any) -> bool:
    return is_text(value) and bool(value.strip())


def _texts(value: Any) -> bool:
    return type(value) is tuple and all(map(is_text, value))


def _yes(value: Any) -> bool:
    return value is True or value is False


def _number(value: Any) -> bool:
    is_one = isinstance(value, float | int) and not isinstance(value, bool)
    return is_one and -_LARGEST <= value <= _LARGEST


def _number_or_none(value: Any) -> bool:
    return value is None or _number(value)


def _band(value: Any) -> bool:
    return value is None or (type(value) is tuple and len(value) == 2 and all(map(_number, value)))


def _source(value: Any) -> bool:
    if value is None or _right_sources.get(id(value)) is value:
        return True
    if type(value) is not Source:
        return False
    if not all(test(v) for test, v in zip(_IN_SOURCE, value, strict=True)):
        return False
    if len(_right_sources) >= _MOST_SOURCES:  # of a plugin that makes new ones in every run
        _right_sources.clear()
    _right_sources[id(value)] = value  # a record never changes; kept, its id is no other's
    return True


def _callable_or_none(value: Any) -> bool:
    return value is None or callable(value)


def _also(value: Any) -> bool:
    return type(value) is tuple and all(_number(v) and _text(unit) for v, unit in value)


def _cells(value: Any) -> bool:
    return type(value) is tuple and all(
        type(row) is tuple
        and all(c is None or isinstance(c, float | int) or is_text(c) for c in row)
        for row in value
    )


def _among(*known: str) -> Test:
    return lambda value: type(value) is str and value in known


def _is(kind: type) -> Test:
    return lambda value: type(value) is kind


_IN_SOURCE: tuple[Test, ...] = (_text, _text, _text, _text, _is(Confidence), _is(int), _text)
_FIELDS: dict[type[Any], tuple[Test, ...]] = {  # what each field of a record may be, in its order
    Figure: (_name, _number, _name, _source, _callable_or_none, _also, _text, _band),
    Answer: (_name, _text, _texts, _texts, _yes),
    Criterion: (
        *(_name, _among(*_SENSES)),
        *(_number_or_none, _number_or_none, _name, _number_or_none),
        *(_source, _is(Origin), _yes, _yes),
        *(_text, _text, _texts, _band, _text, _text, _text),
    ),
    Caution: (_words, _words, _text, _among(*GRAVITY), _text, _source, _text),
    Listing: (_text, _texts, _cells, _yes, _callable_or_none),
    NotChecked: (_text, _text),
    ChartItem: (callable,),
}
_MOST: dict[Test, int] = {_name: LONGEST_NAME}
_WRITE: dict[Test, str] = {
    **dict.fromkeys((_number, _number_or_none), "write a number"),
    **dict.fromkeys((_text, _words, _name), "write a text"),
    _texts: "write a tuple of texts",
    _yes: "write True or False",
    _source: "give a Source",
    _band: "write its low and high, two numbers",
}
_NONE = object()  # what no field can be
_DEFAULTS: dict[type, tuple[object, ...]] = {  # most fields of most items are left as they are
    kind: tuple(kind._field_defaults.get(name, _NONE) for name in kind._fields) for kind in _FIELDS
}
