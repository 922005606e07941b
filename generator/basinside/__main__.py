"""``python -m basinside`` is the same as ``basinside``."""

from basinside.cli import main

main(prog_name="basinside")
