"""Rules about questions."""
