"""Model to what follows from it: levels, routes, states, plans, forms, digests, changes.

Enters: the model. Leaves: frozen values. Total: a gap in the model stays a gap and never an
exception. May not: touch disk, make words for readers.
"""
