"""Take what is said of the clinics that are wrong in every way as what should be said.

``python -m tests.wrong accept``; read the whole report before you commit it.
"""

import sys

from tests.wrong.reports import CLINICS, kept, report

USAGE = 2


def main(words: list[str]) -> int:
    """Write the reports; return the exit code."""
    if words != ["accept"]:
        print(__doc__)
        return USAGE
    for clinic in CLINICS:
        kept(clinic).write_text(report(clinic), encoding="utf-8", newline="\n")
        print(f"accepted {kept(clinic).name}")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
