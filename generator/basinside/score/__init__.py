"""Scoring: what answers and observed lines are worth, always computed again.

Enters: attempts, observations, opened forms and keys, the current checklist. Leaves: results.
May not: trust a score from anywhere, know HTML, hold a sentence for pages.
"""
