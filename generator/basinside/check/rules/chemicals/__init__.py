"""Rules about chemicals: baths, strength, vapour, waste, and what they do to parts and people."""
