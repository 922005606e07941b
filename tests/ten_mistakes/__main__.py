"""Take the page of ten mistakes as it is printed now as the page that authors read.

``python -m tests.ten_mistakes accept``; read the difference with ``git diff`` before you commit it.
"""

import sys

from tests.ten_mistakes.mistaken import PAGE, page

USAGE = 2


def main(words: list[str]) -> int:
    """Write the page; return the exit code."""
    if words != ["accept"]:
        print(__doc__)
        return USAGE
    PAGE.write_text(page(), encoding="utf-8", newline="\n")
    print(f"accepted {PAGE.name}")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
