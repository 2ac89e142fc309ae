"""What runs inside the one file for a browser: questions as JSON, answers as JSON and pages.

The page asks `asked.Page.do`; the findings are those of the command line.
"""
