"""How the book is built: `sphinx-build -W docs build/book`."""

import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent))

project = "wirecalc"
author = "the authors of wirecalc"
extensions = ["myst_parser", "book.building"]
source_suffix = {".md": "markdown"}
smartquotes = False  # an option begins with two dashes, and a command has straight quotes
exclude_patterns = ["examples"]
html_theme = "alabaster"  # comes with the generator, and fetches nothing
html_static_path = ["_static"]
html_css_files = ["book.css"]
html_title = "wirecalc"
html_show_sphinx = False
html_copy_source = False
html_show_search_summary = False  # it would be fetched, which no browser does from disk
html_theme_options = {
    "description": "Electrical safety and wiring repair, worked out",
    "fixed_sidebar": False,
    "font_family": "system-ui, sans-serif",
    "head_font_family": "system-ui, sans-serif",
    "page_width": "1100px",
    "sidebar_width": "240px",
    "show_powered_by": False,
    "sidebar_collapse": True,
}
html_sidebars = {"**": ["about.html", "searchfield.html", "navigation.html"]}
myst_heading_anchors = 4
myst_enable_extensions: list[str] = []
