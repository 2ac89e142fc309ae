"""Exercises made from calculations: a question, its right answer, the slips, and the marks."""
