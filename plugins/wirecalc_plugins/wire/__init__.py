"""The wire itself: which size it is, what it carries, what may replace it."""
