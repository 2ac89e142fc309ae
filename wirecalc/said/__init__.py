"""What a calculation yields, and the verdict that follows from it."""
