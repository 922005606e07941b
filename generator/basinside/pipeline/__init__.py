"""The only place that knows the order in which the rooms do their work.

``build``: files to model to problems to pages. ``desk``: attempt and observation to results,
decision and record. ``editions``: closing an edition and comparing two. Nobody else joins rooms.
"""
