"""``make mutate``: 500 mistakes in the demonstration handbook, and who notices each.

Prints, for each kind of mistake, how many were caught by a rule that should, how many only by
others, which are harmless and why, and which nobody noticed. Ends with 1 when fewer than 95 % of
those that are not harmless were caught by the rule one expects, or one was missed.
"""

from __future__ import annotations

import sys
from collections import Counter

from tests.mutations.drawn import DRAWN, drawn
from tests.mutations.judged import Judge, Verdict

HELD = 0.95


def main() -> None:
    """Judge the drawn mistakes and print what came of each kind."""
    judge = Judge()
    verdicts = [judge.judge(each) for each in drawn(judge.text, DRAWN)]
    print(f"{len(verdicts)} mistakes in the demonstration handbook\n")
    print(f"{'mistake':<18}{'drawn':>7}{'caught':>8}{'otherwise':>11}{'harmless':>10}{'missed':>8}")
    for kind in dict.fromkeys(each.mutation.kind for each in verdicts):
        counts = Counter(each.outcome for each in verdicts if each.mutation.kind == kind)
        row = (counts[name] for name in ("caught", "otherwise", "harmless", "missed"))
        print(f"{kind:<18}{counts.total():>7}" + "{:>8}{:>11}{:>10}{:>8}".format(*row))
    _each("Noticed by another rule than the one expected", verdicts, "otherwise")
    _each("Harmless, and why", verdicts, "harmless")
    _each("Missed", verdicts, "missed")
    outcomes = Counter(each.outcome for each in verdicts)
    counted = len(verdicts) - outcomes["harmless"]
    rate = outcomes["caught"] / counted
    print(f"\ncaught by the rule one expects: {rate:.1%} of {counted} (held: {HELD:.0%})")
    print(f"noticed by any rule: {1 - outcomes['missed'] / counted:.1%}")
    sys.exit(rate < HELD or outcomes["missed"] > 0)


def _each(title: str, verdicts: list[Verdict], outcome: str) -> None:
    some = [each for each in verdicts if each.outcome == outcome]
    if some:
        print(f"\n{title}:")
    for each in some:
        said = each.why or ", ".join(sorted(each.rules))
        where = each.mutation.file.rsplit("/", 1)[-1]
        print(
            f"  {each.mutation.kind}: {where}: {each.mutation.what}" + (f" ({said})" * bool(said))
        )


if __name__ == "__main__":
    main()
