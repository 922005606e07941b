"""Rules about what nothing covers: questions, observations, procedures, cards."""
