"""What stands here is a command with needs of its own (the extra `mutation`), and no test."""

collect_ignore_glob = ["*.py"]
