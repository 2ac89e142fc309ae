"""From the panel to the plug: volts, drop, dip, and what is bad upstream."""
