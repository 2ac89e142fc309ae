"""Does it cool, heat and fill again, by temperatures, times, watts and litres."""
