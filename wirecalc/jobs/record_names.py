"""What could name a person in a recorded check, replaced: groups of readings, and files."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

_FILE = re.compile(r"[^/\\]+\.[A-Za-z]\w{0,7}$")  # the name of a file at the end of a path
_GROUP = re.compile(r"(.+?): ")  # what stands before a criterion of one group, such as a learner


def unnamed(check: Mapping[str, Any]) -> dict[str, Any]:
    """Return a check, as it stands in its JSON, with numbers for groups and no names of files.

    A criterion of one group has its name in front, as in "learner 1: lowest pull": it is "group 1:
    lowest pull" then, wherever it is named.
    """
    finding = check["finding"]
    if not finding:
        return dict(check)
    criteria = finding.get("criteria") or ()
    said = (_GROUP.match(str(c["name"])) for c in criteria)
    groups = list(dict.fromkeys(found[1] for found in said if found))
    numbered = {group: f"group {number}" for number, group in enumerate(groups, start=1)}
    own = {
        "criteria": [
            {
                **c,
                "name": _in_words(c["name"], numbered),
                "reason": _in_words(c["reason"], numbered),
            }
            for c in criteria
        ],
        "decided_by": _in_words(finding.get("decided_by"), numbered),
        "inputs": [{**i, "value": _without_file(i)} for i in finding.get("inputs") or ()],
    }
    return {**check, "finding": {**finding, **own}}


def _in_words(text: Any, numbered: Mapping[str, str]) -> Any:
    """Return a text with numbers in place of the names of groups."""
    if not isinstance(text, str) or not numbered:
        return text
    names = sorted(numbered, key=len, reverse=True)
    whole = rf"(?<!\w)({'|'.join(map(re.escape, names))})(?!\w)"
    return re.sub(whole, lambda found: numbered[found[1]], text)


def _without_file(given: Mapping[str, Any]) -> Any:
    """Return the value of an input; what it says of a file stays, but for its name."""
    value, named = given["value"], _FILE.search(str(given.get("given") or ""))
    if named is None or not isinstance(value, str):
        return value
    return value.replace(named[0], "file")
