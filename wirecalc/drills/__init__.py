"""A question for a learner: drawn from a seed, answered by the calculation, marked by its slips."""
