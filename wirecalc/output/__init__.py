"""Findings and jobs as a person or a program reads them. Nothing here knows a calculation."""
