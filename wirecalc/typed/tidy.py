"""Marks that people and their keyboards write in place of plain ones: a text means the same with
either, so it is read with the plain one.

    1/4″, 1/4'', 1/4” are 1/4"      6½ ft is 6 1/2 ft      0.4 sec. is 0.4 sec
"""

from __future__ import annotations

import re

_FRACTIONS = {"½": "1/2", "¼": "1/4", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8"}
_MARKS = str.maketrans(
    {"’": "'", "‘": "'", "′": "'", "”": '"', "“": '"', "″": '"', "\u2009": " ", "º": "°", "˚": "°"}
    | {"℃": "°C", "℉": "°F"}
)
_STOP = re.compile(r"(?<=[a-zA-Z])(?<!\.[a-zA-Z])\.$")  # behind a unit, save in h.p.
_TO_TEN = ("one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")
_WORDS = {word: str(number) for number, word in enumerate(_TO_TEN, 1)}
_WORDS |= {"twelve": "12", "fourteen": "14", "fifteen": "15", "sixteen": "16", "eighteen": "18"}
_WORDS |= {"eleven": "11", "thirteen": "13", "seventeen": "17", "nineteen": "19", "zero": "0"}
_WORDS |= {"quarter": "1/4", "half": "1/2", "once": "1", "twice": "2"}
_TENS = ("twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety")
_WORDS |= {word: str(10 * number) for number, word in enumerate(_TENS, 2)}
_OF_TENS = re.compile(rf"\b({'|'.join(_TENS)})[ -]({'|'.join(_TO_TEN[:9])})\b", re.IGNORECASE)
_HUNDREDS = re.compile(  # one twenty, as volts are spoken
    rf"\b({'|'.join(_TO_TEN[:9])}) (?:hundred(?: and)? )?(ten|{'|'.join(_TENS)}|\d\d)\b",
    re.IGNORECASE,
)


def tidy(text: str) -> str:
    """Return a text with plain marks: quotes, primes, fractions in one letter, a full stop behind.

    >>> tidy("6½ ft."), tidy("1/4''")
    ('6 1/2 ft', '1/4"')
    """
    if not text.isascii():
        text = text.translate(_MARKS)
        for letter, digits in _FRACTIONS.items():
            text = re.sub(rf"(?<=\d){letter}", f" {digits}", text).replace(letter, digits)
    text = text.replace("''", '"').strip()
    return _STOP.sub("", text) if text.endswith(".") else text


def in_digits(text: str) -> str:
    """Return a text with numbers that are spelled out in digits; as it is where there are none.

    >>> in_digits("ten amps"), in_digits("twenty-six"), in_digits("one twenty volts")
    ('10 amps', '26', '120 volts')
    """

    def digits(word: str) -> int:
        return int(_WORDS.get(word.casefold(), word))

    text = re.sub(r"(?i)\bhalf an? ", "0.5 ", text)
    text = _OF_TENS.sub(lambda m: str(digits(m[1]) + digits(m[2])), text)
    text = _HUNDREDS.sub(lambda m: str(100 * digits(m[1]) + digits(m[2])), text)
    return re.sub(r"[a-z]+", lambda m: _WORDS.get(m[0].casefold(), m[0]), text, flags=re.IGNORECASE)
