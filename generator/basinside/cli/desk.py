"""The desk's commands, in the order in which they are needed."""

from __future__ import annotations

from basinside.cli.evidence import enter_attempt, enter_observation, score
from basinside.cli.form_report import form_report, standard
from basinside.cli.forms import form, seal
from basinside.cli.keys import key, trust
from basinside.cli.signing import examine, sign

DESK_COMMANDS = (
    form_report,
    standard,
    seal,
    form,
    enter_attempt,
    enter_observation,
    score,
    key,
    trust,
    sign,
    examine,
)
