"""Every number has its source: published tables, and a shop's own."""
