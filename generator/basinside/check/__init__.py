"""Model and what follows from it to problems: what an experienced lead would object to.

Enters: the model. Leaves: problems, waived ones marked with who waived them. May not: change
anything, read files, know the day unless it is given. Each rule is one file below ``rules/``; its
docstring is the page that authors read, and ``registry.py`` is the whole list.
"""
