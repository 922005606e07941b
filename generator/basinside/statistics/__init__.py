"""Statistics: what counts of answers, and the length of a test, let one say; one a file.

Enters: marks, counts, shares, ratings. Leaves: estimates, with what they cannot say left out. May
not: print, know YAML, or give a number where too few people stand behind it.
"""
