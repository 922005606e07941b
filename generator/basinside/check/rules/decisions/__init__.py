"""Rules that depend on the day; they run only when a day is given."""
