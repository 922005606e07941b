"""Rules about running a pressure vessel."""
