"""System tests: the command as people and scripts use it."""
