"""The trade's physics and arithmetic, as pure functions.

In: plain numbers, with the unit in the name of each parameter. Out: plain numbers, with the unit
in the name of the function. Outside the range a source covers, a `ValueError`; never a guess.
This room reads no files, knows no YAML and makes no words for readers.
"""
