"""Sensors of temperature and what switches by it."""
