"""Files of readings, of any length, in little memory."""
