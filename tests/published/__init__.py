"""Published checks: every value against a named source, or an independent computation."""
