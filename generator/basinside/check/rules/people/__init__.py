"""Rules about the people who do the work: what they wear, wash, breathe and are told."""
