"""Rules about storage, transport and the state at use."""
