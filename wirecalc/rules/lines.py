"""Where an entry of a rules file, or a key of it, stands; tomllib does not say."""

from __future__ import annotations

import re

_CURLY = "“”„‟‘’‚«»"


class Lines:
    """Finds the line in which an entry or a key of it stands."""

    def __init__(self, text: str) -> None:
        blank = re.compile(r'"""(?s:.*?)"""|' + r"'''(?s:.*?)'''")
        plain = blank.sub(lambda m: "\n" * m[0].count("\n"), text)
        self.lines = plain.splitlines()
        self.heads = [
            (number, match[1])
            for number, line in enumerate(self.lines, start=1)
            if (match := re.match(r"""\s*\[\[\s*["']?(\w+)["']?\s*\]\]""", line))
        ]

    def of_entry(self, section: str, number: int) -> int:
        """Return the line of the so manieth `[[section]]`, from 0; 1 where it is not found."""
        heads = [line for line, name in self.heads if name == section]
        return heads[number] if number < len(heads) else 1

    def of_key(self, key: str, start: int) -> int:
        """Return the line of a key of the entry that begins in a line."""
        end = next((line for line, _ in self.heads if line > start), len(self.lines) + 1)
        named = rf"""["']?{re.escape(key)}["']?\s*[=\].]"""
        at = self._search(rf"^\s*\[*\s*(rule\.)?{named}", start, end)
        return at if at != start else self._search(rf"(^|[\s{{,\[.]){named}", start, end)

    def of_section(self, key: str) -> int:
        """Return the line of a section, or of a key outside of all."""
        return self._search(rf"""^\s*\[*\s*["']?{re.escape(key)}\b""", 1, len(self.lines) + 1)

    def _search(self, pattern: str, start: int, end: int) -> int:
        for number in range(start, end):
            if re.search(pattern, self.lines[number - 1].partition("#")[0]):
                return number
        return start


def of_toml(text: str, error: str) -> tuple[int, str]:
    """Return the line of what tomllib cannot read, from its words, and what would do there."""
    lines = text.splitlines()
    named = re.search(r"at line (\d+)", error)
    number = int(named[1]) if named else max(len(lines), 1)  # else it ends too early
    line = lines[number - 1] if number <= len(lines) else ""
    if re.match(r"\s*\[", line):
        word = re.search(r"\w+", line)
        return number, f"a section has two brackets on each side: [[{word[0] if word else 'rule'}]]"
    if comma := re.search(r"=\s*([-+]?\d+),(\d+)", line):
        return number, f"a decimal has a point: write {comma[1]}.{comma[2]}"
    word = re.search(r"[=\[,]\s*([^\s=\[\],\"']+)", line)
    example = word[1].strip(_CURLY) if word else "ring"
    return number, f'texts stand in straight quotes, as "{example}"'
