"""Every rule, in the order in which they are asked."""

from __future__ import annotations

from typing import Final

from basinside.check.item_rules import ITEM_RULES
from basinside.check.rule import Rule
from basinside.check.rules.chemicals.bath_labelled import check_bath_labelled
from basinside.check.rules.chemicals.bath_life_whichever_first import (
    check_bath_life_whichever_first,
)
from basinside.check.rules.chemicals.bath_temperature_stated import check_bath_temperature_stated
from basinside.check.rules.chemicals.boiling_is_not_sterilization import (
    check_boiling_is_not_sterilization,
)
from basinside.check.rules.chemicals.container_fits import check_container_fits
from basinside.check.rules.chemicals.fill_line_fits import check_fill_line_fits
from basinside.check.rules.chemicals.making_up_complete import check_making_up_complete
from basinside.check.rules.chemicals.measure_with_what_we_have import (
    check_measure_with_what_we_have,
)
from basinside.check.rules.chemicals.metal_in_chlorine import check_metal_in_chlorine
from basinside.check.rules.chemicals.needles_reprocessed import check_needles_reprocessed
from basinside.check.rules.chemicals.poured_away_was_mixed import check_poured_away_was_mixed
from basinside.check.rules.chemicals.single_patient_shared import check_single_patient_shared
from basinside.check.rules.chemicals.spent_liquid_and_waste_route import (
    check_spent_liquid_and_waste_route,
)
from basinside.check.rules.chemicals.stock_aged import check_stock_aged
from basinside.check.rules.chemicals.strength_checked import check_strength_checked
from basinside.check.rules.chemicals.strength_words_exact import check_strength_words_exact
from basinside.check.rules.chemicals.water_named_for_use import check_water_named_for_use
from basinside.check.rules.coverage.agent_without_card import check_agent_without_card
from basinside.check.rules.coverage.competency_scope_impossible import (
    check_competency_scope_impossible,
)
from basinside.check.rules.coverage.figure_unused import check_figure_unused
from basinside.check.rules.coverage.instrument_without_procedure import (
    check_instrument_without_procedure,
)
from basinside.check.rules.coverage.procedure_unobserved import check_procedure_unobserved
from basinside.check.rules.coverage.route_without_procedure import check_route_without_procedure
from basinside.check.rules.coverage.safety_step_untested import check_safety_step_untested
from basinside.check.rules.coverage.source_unused import check_source_unused
from basinside.check.rules.decisions.choice_expired import check_choice_expired
from basinside.check.rules.decisions.review_overdue import check_review_overdue
from basinside.check.rules.instruments.function_test_after_assembly import (
    check_function_test_after_assembly,
)
from basinside.check.rules.instruments.lubricant_fits import check_lubricant_fits
from basinside.check.rules.instruments.lubricate_where_asked import check_lubricate_where_asked
from basinside.check.rules.instruments.model_told_apart import check_model_told_apart
from basinside.check.rules.instruments.never_under_survives import check_never_under_survives
from basinside.check.rules.instruments.test_before_use_complete import (
    check_test_before_use_complete,
)
from basinside.check.rules.instruments.test_fits_parts import check_test_fits_parts
from basinside.check.rules.instruments.use_limit_counted import check_use_limit_counted
from basinside.check.rules.instruments.variant_mixed import check_variant_mixed
from basinside.check.rules.order.assembled_again import check_assembled_again
from basinside.check.rules.order.bench_wiped_between import check_bench_wiped_between
from basinside.check.rules.order.cool_before_handling import check_cool_before_handling
from basinside.check.rules.order.detergent_rinsed_before_level import (
    check_detergent_rinsed_before_level,
)
from basinside.check.rules.order.dry_before_assembly import check_dry_before_assembly
from basinside.check.rules.order.dry_before_bath import check_dry_before_bath
from basinside.check.rules.order.dry_before_pack import check_dry_before_pack
from basinside.check.rules.order.dry_before_store import check_dry_before_store
from basinside.check.rules.order.hands_and_tools_after_level import (
    check_hands_and_tools_after_level,
)
from basinside.check.rules.order.hold_has_longest import check_hold_has_longest
from basinside.check.rules.order.hold_interrupted_stated import check_hold_interrupted_stated
from basinside.check.rules.order.holding_time_before_cleaning import (
    check_holding_time_before_cleaning,
)
from basinside.check.rules.order.immersion_stated import check_immersion_stated
from basinside.check.rules.order.inspect_before_pack import check_inspect_before_pack
from basinside.check.rules.order.loaded_before_time import check_loaded_before_time
from basinside.check.rules.order.moist_until_cleaned import check_moist_until_cleaned
from basinside.check.rules.order.no_pointed_tool import check_no_pointed_tool
from basinside.check.rules.order.nothing_added_after_start import check_nothing_added_after_start
from basinside.check.rules.order.openings_free import check_openings_free
from basinside.check.rules.order.parts_counted import check_parts_counted
from basinside.check.rules.order.point_of_use_liquid import check_point_of_use_liquid
from basinside.check.rules.order.processed_container import check_processed_container
from basinside.check.rules.order.recorded_after_it_happened import check_recorded_after_it_happened
from basinside.check.rules.order.sharps_out_first import check_sharps_out_first
from basinside.check.rules.order.soak_before_brushing import check_soak_before_brushing
from basinside.check.rules.order.stages_complete import check_stages_complete
from basinside.check.rules.order.taken_out_after_time import check_taken_out_after_time
from basinside.check.rules.order.tested_before_kept import check_tested_before_kept
from basinside.check.rules.order.timing_start_stated import check_timing_start_stated
from basinside.check.rules.organisation.brushes_and_basins_processed import (
    check_brushes_and_basins_processed,
)
from basinside.check.rules.organisation.contacts_present import check_contacts_present
from basinside.check.rules.organisation.dirty_clean_apart import check_dirty_clean_apart
from basinside.check.rules.organisation.emergency_route_stated import check_emergency_route_stated
from basinside.check.rules.organisation.ready_reserve_stated import check_ready_reserve_stated
from basinside.check.rules.organisation.recall_and_failure_procedure_present import (
    check_recall_and_failure_procedure_present,
)
from basinside.check.rules.organisation.soiled_box_washed import check_soiled_box_washed
from basinside.check.rules.organisation.tools_cleaned_and_dried import check_tools_cleaned_and_dried
from basinside.check.rules.organisation.vessel_emptied import check_vessel_emptied
from basinside.check.rules.packs.air_removal_test_only_where_vacuum import (
    check_air_removal_test_only_where_vacuum,
)
from basinside.check.rules.packs.biological_indicator_schedule import (
    check_biological_indicator_schedule,
)
from basinside.check.rules.packs.failed_load_told import check_failed_load_told
from basinside.check.rules.packs.indicator_inside_pack import check_indicator_inside_pack
from basinside.check.rules.packs.indicator_read_and_recorded_before_release import (
    check_indicator_read_and_recorded_before_release,
)
from basinside.check.rules.packs.level_recorded import check_level_recorded
from basinside.check.rules.packs.load_record import check_load_record
from basinside.check.rules.packs.pack_traceable import check_pack_traceable
from basinside.check.rules.packs.released_last import check_released_last
from basinside.check.rules.packs.wet_or_torn_pack_rejected import check_wet_or_torn_pack_rejected
from basinside.check.rules.packs.wrap_fits_route import check_wrap_fits_route
from basinside.check.rules.people.caution_for_hazard import check_caution_for_hazard
from basinside.check.rules.people.eye_flush_place_and_water import check_eye_flush_place_and_water
from basinside.check.rules.people.first_aid_for_agent import check_first_aid_for_agent
from basinside.check.rules.people.hand_hygiene_and_ppe_off import check_hand_hygiene_and_ppe_off
from basinside.check.rules.people.ppe_for_hazard import check_ppe_for_hazard
from basinside.check.rules.people.protection_kept_on import check_protection_kept_on
from basinside.check.rules.people.protection_put_on_first import check_protection_put_on_first
from basinside.check.rules.people.ventilation_for_agent import check_ventilation_for_agent
from basinside.check.rules.people.who_must_not import check_who_must_not
from basinside.check.rules.pictures.drawing_parts_both_ways import check_drawing_parts_both_ways
from basinside.check.rules.pictures.picture_missing import check_picture_missing
from basinside.check.rules.prints.posted_print_unknown import check_posted_print_unknown
from basinside.check.rules.prints.print_without_place import check_print_without_place
from basinside.check.rules.prints.wall_chart_overflows import check_wall_chart_overflows
from basinside.check.rules.prose.avoided_word import check_avoided_word
from basinside.check.rules.prose.reading_level import check_reading_level
from basinside.check.rules.prose.sentence_too_long import check_sentence_too_long
from basinside.check.rules.prose.undefined_abbreviation import check_undefined_abbreviation
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
from basinside.check.rules.steam.air_out_first import check_air_out_first
from basinside.check.rules.steam.drying_phase_stated import check_drying_phase_stated
from basinside.check.rules.steam.loading_stated import check_loading_stated
from basinside.check.rules.steam.lumens_not_in_short_cycle import check_lumens_not_in_short_cycle
from basinside.check.rules.steam.pressure_zero_before_opening import (
    check_pressure_zero_before_opening,
)
from basinside.check.rules.steam.regulator_never_altered import check_regulator_never_altered
from basinside.check.rules.steam.safety_valve_and_gasket_checked import (
    check_safety_valve_and_gasket_checked,
)
from basinside.check.rules.steam.vessel_ready_before_load import check_vessel_ready_before_load
from basinside.check.rules.steam.water_in_vessel import check_water_in_vessel
from basinside.check.rules.steam.wrapped_time_for_wrapped import check_wrapped_time_for_wrapped
from basinside.check.rules.storage.at_use_state_stated import check_at_use_state_stated
from basinside.check.rules.storage.carried_closed_to_cleaning import (
    check_carried_closed_to_cleaning,
)
from basinside.check.rules.storage.label_until_when import check_label_until_when
from basinside.check.rules.storage.storage_conditions_stated import check_storage_conditions_stated
from basinside.check.rules.storage.storage_life_stated import check_storage_life_stated
from basinside.check.rules.storage.transport_closed_and_labelled import (
    check_transport_closed_and_labelled,
)
from basinside.check.rules.values.checked_too_long_ago import check_checked_too_long_ago
from basinside.check.rules.values.choice_by_one_person import check_choice_by_one_person
from basinside.check.rules.values.choice_for_another_altitude import (
    check_choice_for_another_altitude,
)
from basinside.check.rules.values.choice_unmade import check_choice_unmade
from basinside.check.rules.values.instructions_held import check_instructions_held
from basinside.check.rules.values.invented_maker_teaches_science import (
    check_invented_maker_teaches_science,
)
from basinside.check.rules.values.local_policy_weaker_than_instructions import (
    check_local_policy_weaker_than_instructions,
)
from basinside.check.rules.values.loose_figure import check_loose_figure
from basinside.check.rules.values.product_label_time_beats_general import (
    check_product_label_time_beats_general,
)
from basinside.check.rules.values.source_superseded import check_source_superseded
from basinside.check.rules.values.unlikely_size import check_unlikely_size

RULES: Final[tuple[Rule, ...]] = (
    # which route, for which part
    check_single_use_reprocessed,
    check_single_patient_shared,
    check_needles_reprocessed,
    check_level_below_contact_class,
    check_level_evidence_for_route,
    check_part_tolerance_decides,
    check_vessel_cannot_reach,
    # the order of the steps
    check_stages_complete,
    check_sharps_out_first,
    check_moist_until_cleaned,
    check_point_of_use_liquid,
    check_holding_time_before_cleaning,
    check_apart_before_clean,
    check_parts_counted,
    check_clean_before_level,
    check_soak_before_brushing,
    check_detergent_rinsed_before_level,
    check_inspect_before_pack,
    check_dry_before_bath,
    check_dry_before_pack,
    check_dry_before_assembly,
    check_openings_free,
    check_immersion_stated,
    check_loaded_before_time,
    check_soiled_clean_processed,
    check_rinse_after_chemical,
    check_incompatible_agents,
    check_hands_and_tools_after_level,
    check_bench_wiped_between,
    check_processed_container,
    check_cool_before_handling,
    check_dry_before_store,
    check_assembled_again,
    check_tested_before_kept,
    check_recorded_after_it_happened,
    # times that are held
    check_timing_start_stated,
    check_nothing_added_after_start,
    check_taken_out_after_time,
    check_hold_has_longest,
    check_hold_interrupted_stated,
    # instruments and their parts
    check_variant_mixed,
    check_model_told_apart,
    check_never_under_survives,
    check_no_pointed_tool,
    check_function_test_after_assembly,
    check_test_before_use_complete,
    check_test_fits_parts,
    check_lubricate_where_asked,
    check_lubricant_fits,
    check_use_limit_counted,
    # values and their sources
    check_figure_outside_source_limits,
    check_unlikely_size,
    check_mixed_to_another_strength,
    check_gauge_wrong_here,
    check_worked_out_elsewhere,
    check_product_label_time_beats_general,
    check_local_policy_weaker_than_instructions,
    check_loose_figure,
    check_source_missing,
    check_source_superseded,
    check_invented_maker_teaches_science,
    check_instructions_held,
    check_choice_unmade,
    check_choice_for_another_altitude,
    check_choice_by_one_person,
    check_edition_reused,
    # chemicals: baths, strength and what they do
    check_boiling_is_not_sterilization,
    check_bath_temperature_stated,
    check_bath_life_whichever_first,
    check_bath_labelled,
    check_making_up_complete,
    check_poured_away_was_mixed,
    check_strength_checked,
    check_strength_words_exact,
    check_measure_with_what_we_have,
    check_water_named_for_use,
    check_container_fits,
    check_fill_line_fits,
    check_spent_liquid_and_waste_route,
    check_stock_aged,
    check_metal_in_chlorine,
    # who does the work
    check_ventilation_for_agent,
    check_ppe_for_hazard,
    check_protection_put_on_first,
    check_protection_kept_on,
    check_caution_for_hazard,
    check_first_aid_for_agent,
    check_eye_flush_place_and_water,
    check_who_must_not,
    check_hand_hygiene_and_ppe_off,
    # how a steam vessel is run
    check_regulator_never_altered,
    check_safety_valve_and_gasket_checked,
    check_water_in_vessel,
    check_vessel_ready_before_load,
    check_loading_stated,
    check_air_out_first,
    check_wrapped_time_for_wrapped,
    check_lumens_not_in_short_cycle,
    check_pressure_zero_before_opening,
    check_drying_phase_stated,
    # packs, indicators and records
    check_wrap_fits_route,
    check_indicator_inside_pack,
    check_wet_or_torn_pack_rejected,
    check_indicator_read_and_recorded_before_release,
    check_released_last,
    check_failed_load_told,
    check_pack_traceable,
    check_load_record,
    check_level_recorded,
    check_biological_indicator_schedule,
    check_air_removal_test_only_where_vacuum,
    # storage, transport and use
    check_transport_closed_and_labelled,
    check_carried_closed_to_cleaning,
    check_storage_conditions_stated,
    check_storage_life_stated,
    check_label_until_when,
    check_at_use_state_stated,
    # what a clinic has ready
    check_contacts_present,
    check_recall_and_failure_procedure_present,
    check_emergency_route_stated,
    check_ready_reserve_stated,
    check_dirty_clean_apart,
    check_brushes_and_basins_processed,
    check_tools_cleaned_and_dried,
    check_soiled_box_washed,
    check_vessel_emptied,
    # what nothing covers
    check_instrument_without_procedure,
    check_route_without_procedure,
    check_agent_without_card,
    check_procedure_unobserved,
    check_safety_step_untested,
    check_competency_scope_impossible,
    check_figure_unused,
    check_source_unused,
    *ITEM_RULES,
    # how sentences are written
    check_reading_level,
    check_sentence_too_long,
    check_undefined_abbreviation,
    check_avoided_word,
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
    check_checked_too_long_ago,
)

RULE_BY_ID: Final[dict[str, Rule]] = {each.id: each for each in RULES}
