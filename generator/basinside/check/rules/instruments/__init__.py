"""Rules about instruments, their parts, and how both are tested and kept."""
