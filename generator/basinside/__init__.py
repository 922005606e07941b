"""Basinside: a reprocessing handbook for small clinics, and the training that goes with it."""
