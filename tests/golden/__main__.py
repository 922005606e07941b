"""Take what the example handbook is built into now as what it should be built into.

``python -m tests.golden accept``; read the difference with ``git diff`` before you commit it.
"""

import sys

from tests.golden.example import GOLDEN, built, differences

USAGE = 2


def main(words: list[str]) -> int:
    """Write the golden folder; return the exit code."""
    if words != ["accept"]:
        print(__doc__)
        return USAGE
    now = built()
    for name in differences(now):
        path = GOLDEN / name
        if name in now:
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(now[name], encoding="utf-8", newline="\n")
            print(f"accepted {name}")
        else:
            path.unlink()
            print(f"removed {name}")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
