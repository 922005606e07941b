"""Text to model: what an author wrote, typed, with every problem of its form.

Enters: the bytes of files. Leaves: the model and problems with their places. May not: decide
whether content is right, read folders, know HTML.
"""
