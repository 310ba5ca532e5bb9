/* The layout that every program and every host with a copy of this structure relies on, on a 64-bit system. */
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

/* the macros expand in every dialect */
GaugepointError error = GAUGEPOINT_ERROR_INIT;
int version[] = {GAUGEPOINT_VERSION_MAJOR, GAUGEPOINT_VERSION_MINOR, GAUGEPOINT_VERSION_PATCH, GAUGEPOINT_ABI};
