"""What stands beside the file at a web address, so that it opens there without a network."""

from __future__ import annotations

from importlib import resources
from urllib.parse import quote


def files_beside(page: str) -> list[tuple[str, str]]:
    """Return name and content of the service worker, and of the page that puts it to work.

    `page` is the name of the file itself.
    """
    package = resources.files(__package__)
    own = [("serve.js", "serve.js"), ("install.html", "index.html")]
    texts = [(to, package.joinpath(name).read_text(encoding="utf-8")) for name, to in own]
    return [(name, text.replace("PAGE", quote(page))) for name, text in texts]
