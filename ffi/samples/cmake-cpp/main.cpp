// The clearance of every cylinder: which go back? The engine, its limits and every reading are invented.
#include <gaugepoint.hpp>

#include <cstdint>
#include <cstdio>
#include <vector>

struct Cylinder {
  double bore_mm;                  // at 20 C
  std::vector<double> piston_mm;   // as it was read, at 27 C
};

// Size at 20 C of what a micrometer of steel read.
double size_at_20_mm(const std::vector<double> &readings, double temperature_c) {
  const GaugepointSample sample = gaugepoint::value(gaugepoint_sample, readings);
  return gaugepoint::value(gaugepoint_size_at_20_mm, sample.mean, 0.0023, temperature_c, 11.5e-6, temperature_c, 19.4e-6);
}

const char *verdict(double clearance_mm) {
  std::int32_t result = GAUGEPOINT_CONFORMITY_NOT_JUDGED;
  double probability = 0.0;
  gaugepoint::call(gaugepoint_decide_mm, clearance_mm, 0.005, 1, 0.060, 1, 0.150, GAUGEPOINT_RULE_PROVEN, 0.95, &result, &probability);
  switch (result) {
    case GAUGEPOINT_CONFORMITY_CONFORMS: return "conforms";
    case GAUGEPOINT_CONFORMITY_DOES_NOT_CONFORM: return "does not conform";
    default: return "not proven";
  }
}

int main() {
  const std::vector<Cylinder> cylinders = {
      {96.0375, {95.9570, 95.9575, 95.9565}},
      {96.0170, {95.9571, 95.9569, 95.9573}},
      {96.1150, {95.9562, 95.9566, 95.9561}},
  };
  for (const Cylinder &cylinder : cylinders) {
    const double clearance = gaugepoint::value(gaugepoint_bench_clearance_mm, cylinder.bore_mm, size_at_20_mm(cylinder.piston_mm, 27.0));
    std::printf("clearance %.4f mm: %s\n", clearance, verdict(clearance));
  }
  try {
    size_at_20_mm(cylinders[0].piston_mm, 80.6);
  } catch (const gaugepoint::Error &error) {
    std::printf("%s\n", error.what());
    return error.did_you_mean().empty() ? 1 : 0;
  }
  return 1;
}
