"""Many findings: the sheet of a job, its record, history and tables, a batch of rows."""
