"""Many findings: the sheet of a job, its record and history, a batch of rows."""
