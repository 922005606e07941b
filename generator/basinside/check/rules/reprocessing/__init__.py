"""Rules about instruments, procedures and values."""
