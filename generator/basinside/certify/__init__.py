"""Certifying: decide, canonical bytes, sign, examine, the trust list.

Enters: attempts' results, observations, keys in memory, days. Leaves: signed records and
findings. May not: trust a score from a page, read a clock, know HTML, hold a sentence.
"""
