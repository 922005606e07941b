"""The types of a handbook and of the files the program writes; nothing else.

Enters: nothing. Leaves: frozen types. May not: import any other room, read files, decide.
"""
