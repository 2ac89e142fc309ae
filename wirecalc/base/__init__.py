"""What everything stands on: words of failure, rounding as shown, files read and written whole."""
