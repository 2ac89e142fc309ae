"""The branch circuit: breaker, wire, receptacle and cord, and all that hangs on it."""
