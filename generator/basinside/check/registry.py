"""Every rule, in the order in which they are asked."""

from __future__ import annotations

from typing import Final

from basinside.check.rule import Rule
from basinside.check.rules.decisions.choice_expired import check_choice_expired
from basinside.check.rules.decisions.review_overdue import check_review_overdue
from basinside.check.rules.items.key_contradicts_model import check_key_contradicts_model
from basinside.check.rules.items.one_right_option import check_one_right_option
from basinside.check.rules.pictures.drawing_parts_both_ways import check_drawing_parts_both_ways
from basinside.check.rules.pictures.picture_missing import check_picture_missing
from basinside.check.rules.prints.posted_print_unknown import check_posted_print_unknown
from basinside.check.rules.prints.print_without_place import check_print_without_place
from basinside.check.rules.prints.wall_chart_overflows import check_wall_chart_overflows
from basinside.check.rules.reprocessing.apart_before_clean import check_apart_before_clean
from basinside.check.rules.reprocessing.clean_before_level import check_clean_before_level
from basinside.check.rules.reprocessing.edition_reused import check_edition_reused
from basinside.check.rules.reprocessing.figure_outside_source_limits import (
    check_figure_outside_source_limits,
)
from basinside.check.rules.reprocessing.gauge_wrong_here import check_gauge_wrong_here
from basinside.check.rules.reprocessing.incompatible_agents import check_incompatible_agents
from basinside.check.rules.reprocessing.level_below_contact_class import (
    check_level_below_contact_class,
)
from basinside.check.rules.reprocessing.level_evidence_for_route import (
    check_level_evidence_for_route,
)
from basinside.check.rules.reprocessing.mixed_to_another_strength import (
    check_mixed_to_another_strength,
)
from basinside.check.rules.reprocessing.part_tolerance_decides import check_part_tolerance_decides
from basinside.check.rules.reprocessing.rinse_after_chemical import check_rinse_after_chemical
from basinside.check.rules.reprocessing.single_use_reprocessed import check_single_use_reprocessed
from basinside.check.rules.reprocessing.soiled_clean_processed import check_soiled_clean_processed
from basinside.check.rules.reprocessing.source_missing import check_source_missing
from basinside.check.rules.reprocessing.vessel_cannot_reach import check_vessel_cannot_reach
from basinside.check.rules.reprocessing.worked_out_elsewhere import check_worked_out_elsewhere

RULES: Final[tuple[Rule, ...]] = (
    # which route, for which part
    check_single_use_reprocessed,
    check_level_below_contact_class,
    check_level_evidence_for_route,
    check_part_tolerance_decides,
    check_vessel_cannot_reach,
    # the order of the steps
    check_apart_before_clean,
    check_clean_before_level,
    check_soiled_clean_processed,
    check_rinse_after_chemical,
    check_incompatible_agents,
    # values and their sources
    check_figure_outside_source_limits,
    check_mixed_to_another_strength,
    check_gauge_wrong_here,
    check_worked_out_elsewhere,
    check_source_missing,
    check_edition_reused,
    # questions
    check_one_right_option,
    check_key_contradicts_model,
    # pictures
    check_drawing_parts_both_ways,
    check_picture_missing,
    # what hangs on the wall
    check_wall_chart_overflows,
    check_print_without_place,
    check_posted_print_unknown,
    # only when the day is given
    check_review_overdue,
    check_choice_expired,
)

RULE_BY_ID: Final[dict[str, Rule]] = {each.id: each for each in RULES}
