"""Rules about drawings."""
