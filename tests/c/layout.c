/* The layout that every program and every host with a copy of these structures relies on, on a 64-bit system. */
#include <gaugepoint.h>
#include <gaugepoint.h>

#define PIN(name, condition) typedef char pin_##name[(condition) ? 1 : -1]

PIN(pointers, sizeof(void *) == 8 && sizeof(size_t) == 8);
PIN(struct_size, offsetof(GaugepointError, struct_size) == 0);
PIN(status, offsetof(GaugepointError, status) == 8);
PIN(has_value, offsetof(GaugepointError, has_value) == 12);
PIN(has_lower, offsetof(GaugepointError, has_lower) == 16);
PIN(has_upper, offsetof(GaugepointError, has_upper) == 20);
PIN(value, offsetof(GaugepointError, value) == 24);
PIN(lower, offsetof(GaugepointError, lower) == 32);
PIN(upper, offsetof(GaugepointError, upper) == 40);
PIN(unit, offsetof(GaugepointError, unit) == 48);
PIN(field, offsetof(GaugepointError, field) == 64);
PIN(refused, offsetof(GaugepointError, refused) == 320);
PIN(reason, offsetof(GaugepointError, reason) == 656);
PIN(did_you_mean, offsetof(GaugepointError, did_you_mean) == 1168);
PIN(message, offsetof(GaugepointError, message) == 1296);
PIN(size, sizeof(GaugepointError) == 2320);
PIN(rules, GAUGEPOINT_RULE_SIMPLE_ACCEPTANCE == 1 && GAUGEPOINT_RULE_PROVEN == 2 &&
           GAUGEPOINT_RULE_CONFORMANCE_PROBABILITY == 3);
PIN(results, GAUGEPOINT_CONFORMITY_CONFORMS == 1 && GAUGEPOINT_CONFORMITY_DOES_NOT_CONFORM == 2 &&
             GAUGEPOINT_CONFORMITY_NOT_PROVEN == 3 && GAUGEPOINT_CONFORMITY_NOT_JUDGED == 4);
PIN(sample_struct_size, offsetof(GaugepointSample, struct_size) == 0);
PIN(sample_count, offsetof(GaugepointSample, count) == 8);
PIN(sample_mean, offsetof(GaugepointSample, mean) == 16);
PIN(sample_standard_deviation, offsetof(GaugepointSample, standard_deviation) == 24);
PIN(sample_deviation_of_mean, offsetof(GaugepointSample, deviation_of_mean) == 32);
PIN(sample_lag_1_correlation, offsetof(GaugepointSample, lag_1_correlation) == 40);
PIN(sample, sizeof(GaugepointSample) == 48);
PIN(one_way_struct_size, offsetof(GaugepointOneWay, struct_size) == 0);
PIN(one_way_has_f, offsetof(GaugepointOneWay, has_f) == 8);
PIN(one_way_has_r_squared, offsetof(GaugepointOneWay, has_r_squared) == 12);
PIN(one_way_between, offsetof(GaugepointOneWay, between) == 16);
PIN(one_way_between_dof, offsetof(GaugepointOneWay, between_dof) == 24);
PIN(one_way_within, offsetof(GaugepointOneWay, within) == 32);
PIN(one_way_within_dof, offsetof(GaugepointOneWay, within_dof) == 40);
PIN(one_way_f, offsetof(GaugepointOneWay, f) == 48);
PIN(one_way_r_squared, offsetof(GaugepointOneWay, r_squared) == 56);
PIN(one_way_pooled_deviation, offsetof(GaugepointOneWay, pooled_deviation) == 64);
PIN(one_way, sizeof(GaugepointOneWay) == 72);
PIN(component_deviation, offsetof(GaugepointComponent, deviation) == 0);
PIN(component_of_total, offsetof(GaugepointComponent, of_total) == 8);
PIN(component_lower, offsetof(GaugepointComponent, lower) == 16);
PIN(component_upper, offsetof(GaugepointComponent, upper) == 24);
PIN(component, sizeof(GaugepointComponent) == 32);
PIN(line_squares, offsetof(GaugepointLine, squares) == 0);
PIN(line_dof, offsetof(GaugepointLine, dof) == 8);
PIN(line_mean, offsetof(GaugepointLine, mean) == 16);
PIN(line_f, offsetof(GaugepointLine, f) == 24);
PIN(line_p, offsetof(GaugepointLine, p) == 32);
PIN(line, sizeof(GaugepointLine) == 40);
PIN(study_struct_size, offsetof(GaugepointStudy, struct_size) == 0);
PIN(study_has_categories, offsetof(GaugepointStudy, has_categories) == 8);
PIN(study_has_repeatability_interval, offsetof(GaugepointStudy, has_repeatability_interval) == 12);
PIN(study_has_reproducibility_interval, offsetof(GaugepointStudy, has_reproducibility_interval) == 16);
PIN(study_has_gauge_interval, offsetof(GaugepointStudy, has_gauge_interval) == 20);
PIN(study_has_part_interval, offsetof(GaugepointStudy, has_part_interval) == 24);
PIN(study_has_table, offsetof(GaugepointStudy, has_table) == 28);
PIN(study_has_ratios, offsetof(GaugepointStudy, has_ratios) == 32);
PIN(study_pooled, offsetof(GaugepointStudy, pooled) == 36);
PIN(study_repeatability, offsetof(GaugepointStudy, repeatability) == 40);
PIN(study_reproducibility, offsetof(GaugepointStudy, reproducibility) == 72);
PIN(study_gauge, offsetof(GaugepointStudy, gauge) == 104);
PIN(study_part, offsetof(GaugepointStudy, part) == 136);
PIN(study_total, offsetof(GaugepointStudy, total) == 168);
PIN(study_categories, offsetof(GaugepointStudy, categories) == 176);
PIN(study_appraiser, offsetof(GaugepointStudy, appraiser) == 184);
PIN(study_parts, offsetof(GaugepointStudy, parts) == 224);
PIN(study_interaction, offsetof(GaugepointStudy, interaction) == 264);
PIN(study_equipment, offsetof(GaugepointStudy, equipment) == 304);
PIN(study_total_squares, offsetof(GaugepointStudy, total_squares) == 344);
PIN(study, sizeof(GaugepointStudy) == 352);
PIN(items_distribution, offsetof(GaugepointItems, distribution) == 0);
PIN(items_has_third, offsetof(GaugepointItems, has_third) == 4);
PIN(items_first, offsetof(GaugepointItems, first) == 8);
PIN(items_second, offsetof(GaugepointItems, second) == 16);
PIN(items_third, offsetof(GaugepointItems, third) == 24);
PIN(items, sizeof(GaugepointItems) == 32);
PIN(interval_has_lower, offsetof(GaugepointInterval, has_lower) == 0);
PIN(interval_has_upper, offsetof(GaugepointInterval, has_upper) == 4);
PIN(interval_lower, offsetof(GaugepointInterval, lower) == 8);
PIN(interval_upper, offsetof(GaugepointInterval, upper) == 16);
PIN(interval, sizeof(GaugepointInterval) == 24);
PIN(risks_struct_size, offsetof(GaugepointRisks, struct_size) == 0);
PIN(risks_conforming, offsetof(GaugepointRisks, conforming) == 8);
PIN(risks_consumer, offsetof(GaugepointRisks, consumer) == 16);
PIN(risks_producer, offsetof(GaugepointRisks, producer) == 24);
PIN(risks, sizeof(GaugepointRisks) == 32);
PIN(capability_struct_size, offsetof(GaugepointCapability, struct_size) == 0);
PIN(capability_cpk, offsetof(GaugepointCapability, cpk) == 8);
PIN(capability_outside, offsetof(GaugepointCapability, outside) == 16);
PIN(capability, sizeof(GaugepointCapability) == 24);
PIN(poolings, GAUGEPOINT_POOLING_NEVER == 1 && GAUGEPOINT_POOLING_ALWAYS == 2 && GAUGEPOINT_POOLING_ABOVE == 3);
PIN(distributions, GAUGEPOINT_DISTRIBUTION_NORMAL == 1 && GAUGEPOINT_DISTRIBUTION_UNIFORM == 2 &&
                   GAUGEPOINT_DISTRIBUTION_TRIANGULAR == 3 && GAUGEPOINT_DISTRIBUTION_GAMMA == 4);
PIN(guards, GAUGEPOINT_GUARD_PROVEN == 1 && GAUGEPOINT_GUARD_STRINGENT == 2 && GAUGEPOINT_GUARD_RELAXED == 3 &&
            GAUGEPOINT_GUARD_RATIO_AT_LEAST == 4);
PIN(most_values, GAUGEPOINT_MOST_VALUES == 16777216);

/* the macros expand in every dialect */
GaugepointError error = GAUGEPOINT_ERROR_INIT;
int version[] = {GAUGEPOINT_VERSION_MAJOR, GAUGEPOINT_VERSION_MINOR, GAUGEPOINT_VERSION_PATCH, GAUGEPOINT_ABI};
