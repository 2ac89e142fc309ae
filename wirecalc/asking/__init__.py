"""Questions, one after another: which comes next, what no longer matters, what is settled.

Nothing here reads or prints: what asks may be a terminal, a page or a test.
"""
