"""A reading taken by a meter that was declared once has that meter's error without being typed."""
