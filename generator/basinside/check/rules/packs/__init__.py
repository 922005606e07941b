"""Rules about packs: wrap, indicators, labels, records and tests of loads."""
