"""What the pages say in plain Markdown, as the built book needs it: contents and links."""

from __future__ import annotations

import re
from pathlib import Path

_LINK = re.compile(r"^- \[[^\]]+\]\(([^)#]+)\.md\)", re.MULTILINE)
_MADE = re.compile(r"<!-- made: (\S+) (.+) -->")
_ANY = re.compile(r"\[([^\]]+)\]\(([^):#]+)(?:#[^)]*)?\)")
_HEADING = re.compile(r"(?=^## )", re.MULTILINE)


def front_page(text: str) -> str:
    """Return the front page as it is built.

    A comment `<!-- made: PAGE TITLE -->` becomes a link to a page that is made when the book is
    built, and behind each heading its links become a part of the table of contents.
    """
    linked = _MADE.sub(lambda made: f"- [{made[2]}]({made[1]}.md)", text)
    head, *parts = _HEADING.split(linked)
    return head + "".join(map(_with_contents, parts))


def _with_contents(part: str) -> str:
    pages = _LINK.findall(part)
    if not pages:
        return part
    title = part.partition("\n")[0].removeprefix("## ")
    tree = ["```{toctree}", ":hidden:", f":caption: {title}", "", *pages, "```"]
    return "\n".join([part.rstrip(), "", *tree, "", ""])


def within(text: str, folder: Path) -> str:
    """Return a page with only the words of a link that leads to what the book cannot hold.

    That is a folder, and a page of Markdown outside of the `folder` that the book is made of.
    """
    return _ANY.sub(lambda link: link[1] if _is_outside(folder / link[2]) else link[0], text)


def _is_outside(target: Path) -> bool:
    outside = target.suffix == ".md" and ".." in target.parts
    return target.is_dir() or (outside and target.is_file())
