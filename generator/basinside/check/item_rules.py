"""The rules about questions, assessments and what is watched, in their order."""

from __future__ import annotations

from typing import Final

from basinside.check.rule import Rule
from basinside.check.rules.items.abbreviation_undefined import check_abbreviation_undefined
from basinside.check.rules.items.absolutes_in_distractors import check_absolutes_in_distractors
from basinside.check.rules.items.article_gives_key_away import check_article_gives_key_away
from basinside.check.rules.items.asked_twice import check_asked_twice
from basinside.check.rules.items.asks_for_another_number import check_asks_for_another_number
from basinside.check.rules.items.asks_for_opinion import check_asks_for_opinion
from basinside.check.rules.items.attempts_exceed_forms import check_attempts_exceed_forms
from basinside.check.rules.items.belief_not_named import check_belief_not_named
from basinside.check.rules.items.blank_in_the_middle import check_blank_in_the_middle
from basinside.check.rules.items.blueprint_unfillable import check_blueprint_unfillable
from basinside.check.rules.items.colour_alone import check_colour_alone
from basinside.check.rules.items.critical_order_says_what_matters import (
    check_critical_order_says_what_matters,
)
from basinside.check.rules.items.critical_topic_never_asked import check_critical_topic_never_asked
from basinside.check.rules.items.cut_unreachable import check_cut_unreachable
from basinside.check.rules.items.disputed_figure_as_key import check_disputed_figure_as_key
from basinside.check.rules.items.double_negative import check_double_negative
from basinside.check.rules.items.feedback_leads_nowhere import check_feedback_leads_nowhere
from basinside.check.rules.items.form_time_too_short import check_form_time_too_short
from basinside.check.rules.items.item_cues_another import check_item_cues_another
from basinside.check.rules.items.item_hard_to_read import check_item_hard_to_read
from basinside.check.rules.items.item_rests_on_nothing import check_item_rests_on_nothing
from basinside.check.rules.items.key_contradicts_model import check_key_contradicts_model
from basinside.check.rules.items.key_echoes_stem import check_key_echoes_stem
from basinside.check.rules.items.longest_option_is_right import check_longest_option_is_right
from basinside.check.rules.items.longest_too_often_right import check_longest_too_often_right
from basinside.check.rules.items.negative_unmarked import check_negative_unmarked
from basinside.check.rules.items.none_of_these import check_none_of_these
from basinside.check.rules.items.number_recall_share import check_number_recall_share
from basinside.check.rules.items.number_without_tolerance import check_number_without_tolerance
from basinside.check.rules.items.numbers_out_of_order import check_numbers_out_of_order
from basinside.check.rules.items.numeric_tolerance_on_unsafe_side import (
    check_numeric_tolerance_on_unsafe_side,
)
from basinside.check.rules.items.observer_line_not_observable import (
    check_observer_line_not_observable,
)
from basinside.check.rules.items.one_right_option import check_one_right_option
from basinside.check.rules.items.option_names_other_options import check_option_names_other_options
from basinside.check.rules.items.option_said_twice import check_option_said_twice
from basinside.check.rules.items.option_without_reason import check_option_without_reason
from basinside.check.rules.items.options_not_parallel import check_options_not_parallel
from basinside.check.rules.items.options_three_to_five import check_options_three_to_five
from basinside.check.rules.items.picture_without_words import check_picture_without_words
from basinside.check.rules.items.question_about_what_we_do_not_own import (
    check_question_about_what_we_do_not_own,
)
from basinside.check.rules.items.ranges_overlap import check_ranges_overlap
from basinside.check.rules.items.right_option_same_place import check_right_option_same_place
from basinside.check.rules.items.source_changed_since_read import check_source_changed_since_read
from basinside.check.rules.items.stem_without_question import check_stem_without_question
from basinside.check.rules.items.true_too_often import check_true_too_often
from basinside.check.rules.items.unsafe_option_rewarded import check_unsafe_option_rewarded
from basinside.check.rules.items.vague_frequency import check_vague_frequency

ITEM_RULES: Final[tuple[Rule, ...]] = (
    # what a question is, and how it is told
    check_one_right_option,
    check_option_said_twice,
    check_options_three_to_five,
    check_option_names_other_options,
    check_none_of_these,
    check_negative_unmarked,
    check_double_negative,
    check_stem_without_question,
    check_blank_in_the_middle,
    check_item_hard_to_read,
    check_vague_frequency,
    check_asks_for_opinion,
    check_abbreviation_undefined,
    check_picture_without_words,
    check_colour_alone,
    check_asked_twice,
    check_item_cues_another,
    # what gives the right option away
    check_absolutes_in_distractors,
    check_longest_option_is_right,
    check_longest_too_often_right,
    check_right_option_same_place,
    check_numbers_out_of_order,
    check_ranges_overlap,
    check_key_echoes_stem,
    check_article_gives_key_away,
    check_options_not_parallel,
    check_true_too_often,
    check_asks_for_another_number,
    # what a key rests on, and what it rewards
    check_key_contradicts_model,
    check_item_rests_on_nothing,
    check_source_changed_since_read,
    check_disputed_figure_as_key,
    check_question_about_what_we_do_not_own,
    check_number_recall_share,
    check_number_without_tolerance,
    check_numeric_tolerance_on_unsafe_side,
    check_unsafe_option_rewarded,
    check_critical_order_says_what_matters,
    check_option_without_reason,
    check_belief_not_named,
    check_feedback_leads_nowhere,
    # assessments and what is watched
    check_blueprint_unfillable,
    check_critical_topic_never_asked,
    check_attempts_exceed_forms,
    check_cut_unreachable,
    check_form_time_too_short,
    check_observer_line_not_observable,
)
