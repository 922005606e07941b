"""Every word of the handbook is made here; templates only place what these functions return."""
