"""Plugins are found, loaded and called; a broken one harms itself alone."""
