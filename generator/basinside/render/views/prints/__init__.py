"""The words of Monday's paper: cards, charts, logs, labels and tallies, one sheet each."""
