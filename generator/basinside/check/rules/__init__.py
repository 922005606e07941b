"""One rule one file; the list is ``check/registry.py``."""
