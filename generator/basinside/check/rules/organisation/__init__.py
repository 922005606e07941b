"""Rules about what a clinic has ready: papers, people, places and reserves."""
