"""Rules about the order of the steps, and what each of them leaves for the next."""
