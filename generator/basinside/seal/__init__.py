"""Sealing: forms, keys and private keys into envelopes, and back by a code or a phrase.

Enters: plain values, codes, and a function that gives random bytes. Leaves: sealed files and the
codes that open them. May not: know HTML, draw randomness by itself, read files.
"""
