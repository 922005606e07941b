"""Rules about values, their sources, and who chose between sources."""
