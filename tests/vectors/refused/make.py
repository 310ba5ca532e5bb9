"""Writes the refused jobs beside this file from base.json. See ../README.md.

    python3 tests/vectors/refused/make.py
"""

from pathlib import Path

HERE = Path(__file__).parent

# A limit for some of the cylinders.
OWN_TAPER = '"bore_taper": {"max": "0.018 mm", "origin": "invented sheet", "reference_temperature": "20 C", "clamping": ["caps_torqued"]}'

# A window at 65 mm, around one end of the pin axis.
PORT = '{"from_depth": "55 mm", "to_depth": "70 mm", "from_angle": "250 deg", "to_angle": "290 deg", "what": "transfer port"}'

# A choke of 0.05 mm over the upper 30 mm.
CHOKE = ('{"state": "cold", "rows": [{"depth": "0 mm", "deviation": "-0.05 mm"}, {"depth": "30 mm", "deviation": "0 mm"}, '
         '{"depth": "80 mm", "deviation": "0 mm"}], "origin": "invented"}')

# An answer about a finding.
OILY = '{"question": "oily", "answer": "no"}'

# Shims, as a stack.
SHIMS = ('{"name": "end float", "contributors": [{"name": "shim", "nominal": 0.5, "lower": -0.02, "upper": 0.02, '
         '"distribution": {"uniform_within_limits": {}}}]}')

# Most documents are base.json with one piece of its text replaced; the piece stands in it exactly once.
# Several replacements of one document follow one another.
REPLACED = {
    # what the number is
    "unit_unknown": ('"nominal": "48 mm"', '"nominal": "48 furlong"'),
    "unit_in_capitals": ('"nominal": "48 mm"', '"nominal": "48 MM"'),
    "unit_of_two_meanings": ('"resolution": "0.001 mm"', '"resolution": "0.04 mil"'),
    "unit_of_temperature_for_length": ('"nominal": "48 mm"', '"nominal": "48 C"'),
    "unit_of_length_for_temperature": ('{"temperature": "22 C"', '{"temperature": "22 mm"'),
    "unit_for_pure_number": ('"coverage_factor": 2,', '"coverage_factor": "2 mm",'),
    "radians": ('"axis": "90 deg", "repeats": ["0.013 mm"]', '"axis": "1.57 rad", "repeats": ["0.013 mm"]'),
    "kelvin_as_temperature": ('{"temperature": "22 C"', '{"temperature": "295.15 K"'),
    "difference_as_temperature": ('{"temperature": "22 C"', '{"temperature": "22 delta C"'),
    "temperature_as_difference": ('"permissible_error": "0.5 K"', '"permissible_error": "0.5 C"'),
    "ppm_alone": ('"value": "11.5 ppm/K"', '"value": "11.5 ppm"'),
    "unit_missing_in_text": ('"nominal": "48 mm"', '"nominal": "48"'),
    "unit_missing_in_number": ('"nominal": "48 mm"', '"nominal": 48'),
    "unit_missing_of_temperature": ('{"temperature": "22 C"', '{"temperature": 22'),
    "unit_missing_of_coefficient": ('"value": "11.4e-6 /K"', '"value": 11.4e-6'),
    # slips of unit
    "fahrenheit_as_celsius": ('{"temperature": "22 C"', '{"temperature": "80.6 C"'),
    "celsius_as_fahrenheit": ('{"temperature": "22 C"', '{"temperature": "22 F"'),
    "kelvin_as_celsius": ('{"temperature": "22 C"', '{"temperature": "295.15 C"'),
    "inch_as_mm": ('"nominal": "48 mm"', '"nominal": "1.89 mm"'),
    "micrometre_as_mm": ('"thickness_per_side": "11 um"', '"thickness_per_side": "11 mm"'),
    "micrometre_as_mm_on_the_dial": ('"repeats": ["0.013 mm"]', '"repeats": ["13 mm"]'),
    "thou_as_mm": ('"max": "0.100 mm"', '"max": "4 mm"'),
    "coefficient_without_its_factor": ('"value": "11.4e-6 /K"', '"value": "11.4 /K"'),
    "percentage_without_its_sign": ('"at_least": "95 %"', '"at_least": 95'),
    # findings
    "question_twice": ('"cause": "short trips"', f'"answers": [{OILY}, {OILY}]'),
    "answer_against_the_record": (
        '"cause": "short trips"', '"answers": [{"question": "forged", "answer": "yes"}]',
        '"state": "new",', '"state": "new", "record": {"make": "cast"},'),
    # stacks
    "stack_twice": ('"at_least": "95 %"}', f'"at_least": "95 %"}}, "stacks": [{SHIMS}, {SHIMS}]'),
    "stack_in_disorder": ('"at_least": "95 %"}', f'"at_least": "95 %"}}, "stacks": [{SHIMS.replace(": 0.02", ": -0.05")}]'),
    "stack_of_a_document": ('"at_least": "95 %"}', f'"at_least": "95 %"}}, "stacks": [{{"version": 1, {SHIMS[1:]}]'),
    # how the number is written
    "decimal_comma": ('"47.968 mm"', '"47,968 mm"'),
    "comma_of_two_meanings": ('"length": "80 mm"', '"length": "1,250 mm"'),
    "fraction": ('"nominal": "48 mm"', '"nominal": "1 57/64 in"'),
    "fraction_sign": ('"nominal": "47.95 mm"', '"nominal": "1\u215e in"'),
    "spoken_too_many_tenths": ('"1 in 888 thou 5 tenths"', '"1 in 888 thou 12 tenths"'),
    "spoken_too_many_thou": ('"1 in 888 thou 5 tenths"', '"1 in 1888 thou"'),
    "spoken_out_of_order": ('"1 in 888 thou 5 tenths"', '"888 thou 1 in"'),
    "spoken_without_last_unit": ('"1 in 888 thou 5 tenths"', '"1 in 888 thou 5"'),
    "spoken_decimal": ('"1 in 888 thou 5 tenths"', '"1 in 888.5 thou"'),
    "spoken_unit": ('"1 in 888 thou 5 tenths"', '"1 in 888 Thou"'),
    "nan_text": ('"nominal": "48 mm"', '"nominal": "NaN mm"'),
    "infinity_text": ('{"temperature": "22 C"', '{"temperature": "-Infinity C"'),
    "overflow_text": ('"nominal": "48 mm"', '"nominal": "1e999 mm"'),
    "nan_json": ('"coverage_factor": 2,', '"coverage_factor": NaN,'),
    "infinity_json": ('"coverage_factor": 2,', '"coverage_factor": -Infinity,'),
    "overflow_json": ('"coverage_factor": 2,', '"coverage_factor": 1e999,'),
    "huge_length": ('"nominal": "48 mm"', '"nominal": "48000000000000 mm"'),
    "huge_number": ('"coverage_factor": 2,', '"coverage_factor": 1e30,'),
    "huge_exponent": ('"coverage_factor": 2,', '"coverage_factor": 1e300,'),
    "huge_count": ('"cylinders": "1"', '"cylinders": 99999999999'),
    "too_many_digits_text": ('"nominal": "48 mm"', '"nominal": "48.000000000000001 mm"'),
    "too_many_digits_number": ('"coverage_factor": 2,', '"coverage_factor": 2.0000000000000000001,'),
    "too_many_decimals": ('"nominal": "48 mm"', '"nominal": "48.0000000000001 mm"'),
    "exponent_of_length": ('"nominal": "48 mm"', '"nominal": "4.8e1 mm"'),
    "point_without_digit": ('"nominal": "48 mm"', '"nominal": "48. mm"'),
    "two_points": ('"nominal": "48 mm"', '"nominal": "4.8.0 mm"'),
    "space_within_number": ('"nominal": "48 mm"', '"nominal": "4 8 mm"'),
    "digits_of_another_script": ('"nominal": "48 mm"', '"nominal": "\u0664\u0668 mm"'),
    "word_for_number": ('"nominal": "48 mm"', '"nominal": "std"'),
    "quantity_empty": ('"nominal": "48 mm"', '"nominal": ""'),
    "quantity_of_65_characters": ('"nominal": "48 mm"', '"nominal": "48' + 61 * " " + 'mm"'),
    "half_a_cylinder": ('"cylinders": "1"', '"cylinders": 1.5'),
    "day_before_month": ('"date": "2026-05-11"', '"date": "21.5.2026"'),
    "day_or_month": ('"date": "2026-05-11"', '"date": "5/11/2026"'),
    "no_such_day": ('"date": "2026-05-11"', '"date": "2026-02-30"'),
    # what is possible
    "diameter_negative": ('"nominal": "48 mm"', '"nominal": "-48 mm"'),
    "diameter_zero": ('"nominal": "47.95 mm"', '"nominal": "0 mm"'),
    "angle_beyond_a_turn": ('"axis": "90 deg", "repeats": ["0.013 mm"]', '"axis": "450 deg", "repeats": ["0.013 mm"]'),
    "probability_too_low": ('"at_least": "95 %"', '"at_least": "0.3"'),
    "cylinder_beyond_count": ('"number": 1', '"number": 2'),
    "cylinder_zero": ('"number": 1', '"number": 0'),
    "depth_outside_bore": ('"depth": "65 mm", "axis": "0 deg"', '"depth": "85 mm", "axis": "0 deg"'),
    "size_at_outside_bore": ('"size": "largest"', '"size": {"at": {"depth": "85 mm"}}'),
    "repeats_half_a_turn_apart": ('"0.017 mm"', '"0.516 mm"'),
    "oversize_piston": ('"47.968 mm"', '"48.968 mm"'),
    "oversize_bore": ('"repeats": ["0.013 mm"]', '"repeats": ["1.013 mm"]'),
    "ring_of_another_size": ('"size": "48.0006 mm"', '"size": "50.0006 mm"'),
    "zero_half_a_turn_off": ('"reading": "25.001 mm"', '"reading": "25.501 mm"'),
    "ring_outside_law": ('"temperature": "22.5 C"', '"temperature": "45 C"'),
    "running_outside_law": ('"max": "140 C"', '"max": "205 C"'),
    "law_without_20_c": ('"from": "10 C"', '"from": "21 C"'),
    # what goes together
    "limit_min_above_max": ('"max": "48.040 mm"', '"max": "47.990 mm"'),
    "limit_min_equals_max": ('"max": "48.040 mm"', '"max": "48.000 mm"'),
    "running_min_above_max": ('"max": "140 C"', '"max": "85 C"'),
    "law_from_above_to": ('"from": "0 C"', '"from": "190 C"'),
    "rows_out_of_order": ('{"to": "100 C"', '{"to": "10 C"'),
    "rows_none": (
        '[{"to": "20 C", "value": "19.2e-6 /K"}, {"to": "100 C", "value": "20.0e-6 /K"}, {"to": "200 C", "value": "21.0e-6 /K"}]', "[]"),
    "due_before_calibrated": ('"calibration_due": "2027-01-10"', '"calibration_due": "2025-01-10"'),
    "calibrated_after_job": ('"calibrated": "2026-01-10"', '"calibrated": "2026-06-01"'),
    "cylinder_twice": (
        '"cylinders": "1"', '"cylinders": 2', '"cylinders": [\n    {', '"cylinders": [\n    {"number": "1"},\n    {'),
    "gauge_twice": ('"name": "bore gauge 35-60"', '"name": "mic 25-50"'),
    "material_twice": ('"name": "piston alloy"', '"name": " grey iron"'),
    "place_twice_in_bore": ('"axis": "90 deg", "repeats": ["0.013 mm"]', '"axis": "0.0 deg", "repeats": ["0.013 mm"]'),
    "diameter_by_both_ends": ('"axis": "90 deg", "repeats": ["0.013 mm"]', '"axis": "180 deg", "repeats": ["0.013 mm"]'),
    "place_twice_on_piston": (
        '"1 in 888 thou 5 tenths"]}',
        '"1 in 888 thou 5 tenths"]},\n          {"gauge": "mic 25-50", "height": "1.2 cm", "datum": "skirt_bottom", '
        '"angle": "0 deg", "over": "coating", "temperature": "23 C", "repeats": ["47.967 mm"]}'),
    "piston_diameter_by_both_ends": (
        '"1 in 888 thou 5 tenths"]}',
        '"1 in 888 thou 5 tenths"]},\n          {"gauge": "mic 25-50", "height": "12 mm", "datum": "skirt_bottom", '
        '"angle": "360 deg", "over": "coating", "temperature": "23 C", "repeats": ["47.9 mm"]}'),
    "gauge_unknown": ('{"gauge": "mic 25-50"', '{"gauge": "mic 25-5O"'),
    "material_unknown": ('"length": "80 mm", "material": "grey iron"', '"length": "80 mm", "material": "gray iron"'),
    "material_far_from_known": ('"length": "80 mm", "material": "grey iron"', '"length": "80 mm", "material": "brass"'),
    "bore_read_with_micrometer": ('"gauge": "bore gauge 35-60"', '"gauge": "mic 25-50"'),
    "piston_read_with_bore_gauge": ('{"gauge": "mic 25-50"', '{"gauge": "bore gauge 35-60"'),
    "bore_gauge_with_zero_check": (
        '"setting": {',
        '"zero_check": {"standard": "rod 25", "size": "25.0004 mm", "expanded_uncertainty": "0.8 um", "coverage_factor": 2, '
        '"material": "gauge steel", "reading": "25.001 mm", "temperature": "21.5 C"},\n      "setting": {'),
    "bore_gauge_without_setting": (
        ',\n      "setting": {"ring": {"name": "ring 48", "size": "48.0006 mm", "expanded_uncertainty": "1.2 um", "coverage_factor": 2.0, '
        '"material": "gauge steel", "temperature": "22.5 C"}}', ""),
    "bore_gauge_with_faces": ('"repeatability": "0.0014 mm"', '"face_parallelism": "0.0016 mm", "repeatability": "0.0014 mm"'),
    "caliper_with_faces": ('"outside_micrometer"', '"caliper"'),
    "micrometer_with_setting": ('"kind": "bore_gauge"', '"kind": "outside_micrometer"'),
    "setting_on_a_bore_gauge": (
        '{"ring": {"name": "ring 48", "size": "48.0006 mm", "expanded_uncertainty": "1.2 um", "coverage_factor": 2.0, "material": "gauge steel",',
        '{"micrometer": {"gauge": "bore gauge 35-60", "reading": "48 mm",'),
    "setting_with_two_choices": (
        '"setting": {', '"setting": {"micrometer": {"gauge": "mic 25-50", "reading": "48 mm", "temperature": "22 C"}, '),
    "choice_without_contents": (
        '{"mean_coefficient": {"base": "20 C", "value": "11.4e-6 /K", "from": "0 C", "to": "180 C"}}', '"mean_coefficient"'),
    "coating_on_bare_metal": ('"over": "coating"', '"over": "bare_metal"'),
    "at_least_with_another_rule": ('"conformance_probability"', '"proven"'),
    "ratio_with_another_rule": ('"at_least": "95 %"', '"ratio_at_least": 4'),
    "guard_with_another_rule": ('"at_least": "95 %"', '"acceptance_guard": 0.5'),
    "ratio_below_one": (
        '{"rule": "conformance_probability", "at_least": "95 %"}', '{"rule": "simple_acceptance_by_ratio", "ratio_at_least": 0.25}'),
    "guard_in_percent": (
        '{"rule": "conformance_probability", "at_least": "95 %"}', '{"rule": "expanded_guard_band", "rejection_guard": 50}'),
    "guards_overlap": (
        '{"rule": "conformance_probability", "at_least": "95 %"}',
        '{"rule": "expanded_guard_band", "acceptance_guard": 0.5, "rejection_guard": -0.75}'),
    "dof_below_one": ('"repeatability": "0.0014 mm"', '"repeatability": "0.0014 mm", "repeatability_dof": 0.5'),
    "dof_of_no_repeatability": ('"repeatability": "0.0014 mm"', '"repeatability_dof": 9'),
    "repeatability_of_single_readings": (
        '      "repeatability": "0.0014 mm",\n', "", '["0.016 mm", "0.017 mm"]', '["0.016 mm"]'),
    "relative_uncertainty_in_percent": (
        '{"permissible_error": "0.5 K"', '{"permissible_error": "0.5 K", "permissible_error_relative_uncertainty": 25'),
    "taper_with_min": ('{"max": "0.020 mm"', '{"min": "0.001 mm", "max": "0.020 mm"'),
    "taper_without_max": ('{"max": "0.020 mm", ', "{"),
    "limit_without_min_and_max": ('"min": "48.000 mm", "max": "48.040 mm", ', ""),
    "over_missing": ('fit", "reference_temperature": "20 C", "over": "bare_metal",', 'fit", "reference_temperature": "20 C",'),
    "over_on_bore": ('sheet, bore"', 'sheet, bore", "over": "bare_metal"'),
    "states_missing": ('"over": "bare_metal", "piston_states": ["new"]', '"over": "bare_metal"'),
    "states_empty": ('"piston_states": ["new"]', '"piston_states": []'),
    "clamping_missing": ('round", "reference_temperature": "20 C", "clamping": ["caps_torqued"]', 'round", "reference_temperature": "20 C"'),
    "clamping_on_piston": ('"piston_states": ["new"]', '"piston_states": ["new"], "clamping": ["bare"]'),
    # limits of some cylinders
    "own_limits_twice": (
        '"reduction": {', '"limits_by_cylinder": [{"cylinders": [1], "limits": {' + OWN_TAPER + '}}, {"cylinders": ["1"], "limits": {' + OWN_TAPER
        + '}}],\n    "reduction": {'),
    "own_limits_of_no_cylinder": (
        '"reduction": {', '"limits_by_cylinder": [{"cylinders": [], "limits": {' + OWN_TAPER + '}}],\n    "reduction": {'),
    "own_limits_beyond_count": (
        '"reduction": {', '"limits_by_cylinder": [{"cylinders": [1, 2], "limits": {' + OWN_TAPER + '}}],\n    "reduction": {'),
    "own_limits_without_limit": ('"reduction": {', '"limits_by_cylinder": [{"cylinders": [1], "limits": {}}],\n    "reduction": {'),
    # a target profile
    "profile_out_of_order": (
        '"length": "80 mm", "material": "grey iron"', '"length": "80 mm", "material": "grey iron", "target_profile": ' + CHOKE.replace('"30 mm"', '"0 mm"')),
    "profile_of_one_row": (
        '"length": "80 mm", "material": "grey iron"', '"length": "80 mm", "material": "grey iron", "target_profile": '
        '{"state": "cold", "rows": [{"depth": "0 mm", "deviation": "-0.05 mm"}], "origin": "invented"}'),
    "profile_ends_above_a_reading": (
        '"length": "80 mm", "material": "grey iron"', '"length": "80 mm", "material": "grey iron", "target_profile": ' + CHOKE.replace('"80 mm"', '"60 mm"')),
    "size_within_the_choke": (
        '"length": "80 mm", "material": "grey iron"', '"length": "80 mm", "material": "grey iron", "target_profile": ' + CHOKE,
        '"size": "largest"', '"size": {"at": {"depth": "10 mm"}}'),
    # windows, and materials by height
    "reading_on_a_window": (
        '"length": "80 mm", "material": "grey iron"', '"length": "80 mm", "material": "grey iron", "windows": [' + PORT + ']'),
    "size_on_a_window": (
        '"length": "80 mm", "material": "grey iron"', '"length": "80 mm", "material": "grey iron", "windows": [' + PORT + ']',
        '"size": "largest"', '"size": {"at": {"depth": "60 mm", "axis": "90 deg"}}'),
    "window_upside_down": (
        '"length": "80 mm", "material": "grey iron"', '"length": "80 mm", "material": "grey iron", "windows": ['
        + PORT.replace('"70 mm"', '"50 mm"') + ']'),
    "window_without_width": (
        '"length": "80 mm", "material": "grey iron"', '"length": "80 mm", "material": "grey iron", "windows": ['
        + PORT.replace('"290 deg"', '"250 deg"') + ']'),
    "material_above_its_end": (
        '"nominal": "47.95 mm", "material": "piston alloy"', '"nominal": "47.95 mm", "material": "piston alloy", "materials_by_height": '
        '[{"from": "30 mm", "to": "0 mm", "material": "piston alloy"}]'),
    "materials_overlap": (
        '"nominal": "47.95 mm", "material": "piston alloy"', '"nominal": "47.95 mm", "material": "piston alloy", "materials_by_height": '
        '[{"from": "0 mm", "to": "30 mm", "material": "piston alloy"}, {"from": "29 mm", "to": "40 mm", "material": "gauge steel"}]'),
    "gauge_point_of_another_material": (
        '"nominal": "47.95 mm", "material": "piston alloy"', '"nominal": "47.95 mm", "material": "piston alloy", "materials_by_height": '
        '[{"from": "0 mm", "to": "30 mm", "material": "gauge steel"}]'),
    "gauge_point_of_no_material": (
        '"nominal": "47.95 mm", "material": "piston alloy"', '"nominal": "47.95 mm", "material": "piston alloy", "materials_by_height": '
        '[{"from": "14 mm", "to": "30 mm", "material": "piston alloy"}]'),
    "reading_of_no_material": (
        '"nominal": "47.95 mm", "material": "piston alloy"', '"nominal": "47.95 mm", "material": "piston alloy", "materials_by_height": '
        '[{"from": "0 mm", "to": "30 mm", "material": "piston alloy"}]', '{"gauge": "mic 25-50", "height": "12 mm"', '{"gauge": "mic 25-50", "height": "32 mm"'),
    "reading_on_a_joint": (
        '"nominal": "47.95 mm", "material": "piston alloy"', '"nominal": "47.95 mm", "material": "piston alloy", "materials_by_height": '
        '[{"from": "0 mm", "to": "30 mm", "material": "piston alloy"}, {"from": "30 mm", "to": "40 mm", "material": "gauge steel"}]',
        '{"gauge": "mic 25-50", "height": "12 mm"', '{"gauge": "mic 25-50", "height": "30 mm"'),
    # fields
    "field_unknown": ('{"permissible_error": "0.5 K"', '{"permisible_error": "0.5 K"'),
    "field_far_from_known": ('"note": "dry"', '"colour": "grey"'),
    "field_to_be_escaped": ('"note": "dry"', '"a/b~c": "grey"'),
    "field_missing": ('{"temperature": "22 C", ', "{"),
    "field_repeated": ('"id": "refused-base"', '"id": "refused-base", "id": "refused-base"'),
    "field_repeated_at_the_top": ('"version": 1,', '"version": 1,\n  "version": 1,'),
    "choice_repeated": ('{"rule": "conformance_probability", "at_least": "95 %"}', '{"rule": "proven", "rule": "proven"}'),
    "setting_repeated": (
        '"setting": {',
        '"setting": {"ring": {"name": "ring 48", "size": "48.0006 mm", "expanded_uncertainty": "1.2 um", "coverage_factor": 2.0, '
        '"material": "gauge steel", "temperature": "22.5 C"}, '),
    "choice_unknown": ('"outside_micrometer"', '"outside micrometer"'),
    "choice_far_from_known": ('"state": "new"', '"state": "shiny"'),
    "choice_empty": ('"state": "new"', '"state": ""'),
    "law_unknown": ('{"mean_coefficient": {"base": "20 C", "value": "11.4e-6 /K"', '{"straight": {"base": "20 C", "value": "11.4e-6 /K"'),
    "null_for_text": ('"note": "Invented: no such engine, gauge or reading exists."', '"note": null'),
    "null_for_object": ('"running": {', '"running": null,\n  "walking": {'),
    "bool_for_text": ('"id": "refused-base"', '"id": true'),
    "number_for_text": ('"id": "refused-base"', '"id": 7'),
    "number_for_date": ('"date": "2026-05-11"', '"date": 20260511'),
    "object_for_text": ('"id": "refused-base"', '"id": {"name": "refused-base"}'),
    "list_for_text": ('"nominal": "48 mm"', '"nominal": ["48 mm"]'),
    "list_for_object": ('"thermometer": {"permissible_error": "0.5 K"}', '"thermometer": ["0.5 K"]'),
    "number_for_object": ('"thermometer": {"permissible_error": "0.5 K"}', '"thermometer": 0.5'),
    "text_for_object": ('"thermometer": {"permissible_error": "0.5 K"}', '"thermometer": "0.5 K"'),
    "text_for_list": ('"repeats": ["0.013 mm"]', '"repeats": "0.013 mm"'),
    "object_for_list": ('"findings": [{"place": "crown", "what": "carbon", "severity": "light", "note": "dry", "cause": "short trips"}]', '"findings": {}'),
    "number_for_choice": ('"state": "new"', '"state": 1'),
    "format_of_the_report": ('"gaugepoint-job"', '"gaugepoint-report"'),
    "version_2": ('"version": 1', '"version": 2'),
    # names and notes
    "name_empty": ('"name": "bore gauge 35-60"', '"name": ""'),
    "name_blank": ('"name": "bore gauge 35-60"', '"name": " \u00a0 "'),
    "note_blank": ('"note": "dry"', '"note": "  "'),
    "name_of_1001_characters": ('"name": "bore gauge 35-60"', '"name": "' + 1001 * "x" + '"'),
    "repeats_1001": ('["0.013 mm"]', '["0.013 mm"' + 1000 * ', "0.013 mm"' + "]"),
    "findings_1001": ('"findings": [', '"findings": [' + 1000 * '{"place": "crown", "what": "carbon", "severity": "light"}, '),
    "control_character_in_name": ('"name": "mic 25-50"', '"name": "mic\\u000725-50"'),
    "escape_sequence_in_note": ('"note": "Invented: no such engine, gauge or reading exists."', '"note": "\\u001b[2J"'),
    "line_feed_in_origin": ('"origin": "invented temperatures"', '"origin": "invented\\nVERDICT: reuse"'),
    "line_separator_in_origin": ('"origin": "invented temperatures"', '"origin": "invented\u2028temperatures"'),
    "text_turned_around": ('"note": "dry"', '"note": "\u202edry"'),
    "line_feed_unescaped": ('"origin": "invented temperatures"', '"origin": "invented\ntemperatures"'),
    "half_a_surrogate_pair": ('"note": "dry"', '"note": "\\ud83d"'),
    # the text as a whole
    "trailing_comma": ('"at_least": "95 %"}', '"at_least": "95 %",}'),
    "comment": ('"version": 1,', '"version": 1, // the first'),
    "single_quotes": ('"version": 1,', "'version': 1,"),
    "comma_in_number": ('"coverage_factor": 2,', '"coverage_factor": 2,5,'),
    "plus_before_number": ('"coverage_factor": 2,', '"coverage_factor": +2,'),
}


def replaced(base, pieces):
    """The text with every first piece of a pair replaced by the second."""
    for old, new in zip(pieces[::2], pieces[1::2], strict=True):
        assert base.count(old) == 1, old
        base = base.replace(old, new)
    return base


def documents(base):
    """Name and bytes of every document."""
    yield from ((name, replaced(base, pieces).encode()) for name, pieces in REPLACED.items())
    yield "empty", b""
    yield "white_space", b" \n"
    yield "truncated", base[:len(base) // 2].encode()
    yield "trailing_text", (base + "{}\n").encode()
    yield "top_level_list", f"[{base.rstrip()}]\n".encode()
    yield "top_level_text", b'"gaugepoint-job"\n'
    yield "byte_order_mark", b"\xef\xbb\xbf" + base.encode()
    yield "utf_16", base.encode("utf-16-le")
    yield "not_utf8", base.replace("no such engine", "no such engine \u00d8").encode("latin-1")


def main():
    base = (HERE / "base.json").read_text(encoding="utf-8")
    for name, content in documents(base):
        (HERE / f"{name}.json").write_bytes(content)


if __name__ == "__main__":
    main()
