"""Rules about what hangs on the wall."""
