// misuse JOB: the owners, records and callbacks of the layer for C++, and what a mistaken caller makes of them.
#include "check.hpp"

#include <cmath>
#include <cstring>
#include <thread>

using namespace std::string_view_literals;

namespace {

template <class T>
constexpr bool owns = !std::is_copy_constructible_v<T> && !std::is_copy_assignable_v<T> && std::is_nothrow_move_constructible_v<T> &&
                      std::is_nothrow_move_assignable_v<T> && sizeof(T) == sizeof(void *);
static_assert(owns<gaugepoint::Text> && owns<gaugepoint::Expansion> && owns<gaugepoint::Function> && owns<gaugepoint::HotFit> &&
              owns<gaugepoint::HotPiston> && owns<gaugepoint::HotBore> &&
              owns<gaugepoint::Report> && owns<gaugepoint::Stack>);
// an exception that is thrown on must not throw
static_assert(std::is_nothrow_copy_constructible_v<gaugepoint::Error> && std::is_nothrow_copy_assignable_v<gaugepoint::Error>);

// centre and half-width of the deviations
const double deviations[] = {0.0, 0.01};

GaugepointContributor contributor(std::string_view name, double nominal) {
  return {name.data(), name.size(), nominal, -0.01, 0.01, 1.0, 1, GAUGEPOINT_VARIATION_RECTANGULAR, 0, deviations, 2};
}

const std::vector<GaugepointContributor> contributors = {contributor("bore", 86.03), contributor("piston", 85.98)};

void records() {
  row = "records";
  const auto sample = gaugepoint::record<GaugepointSample>();
  CHECK(sample.struct_size == sizeof sample && sample.count == 0 && sample.mean == 0.0);
  const auto error = gaugepoint::record<GaugepointError>();
  const GaugepointError init = GAUGEPOINT_ERROR_INIT;
  CHECK(std::memcmp(&error, &init, sizeof error) == 0);
  const std::vector<double> readings = {1.0, 2.0, 4.0};
  CHECK(gaugepoint::value(gaugepoint_sample, readings).count == 3);
  CHECK(std::fabs(gaugepoint::value(gaugepoint_sample, readings).mean - 7.0 / 3.0) < 1e-15);
  CHECK(gaugepoint::value(gaugepoint_sample, readings.data(), std::size_t{2}).mean == 1.5);
}

void errors() {
  row = "errors";
  const gaugepoint::Error none = refusal([] { gaugepoint::value(gaugepoint_sample, std::vector<double>{}); });
  CHECK(!none.value() && none.field() == "values");
  const gaugepoint::Error e = refusal([] { gaugepoint::value(gaugepoint_size_at_20_mm, 86.0, 0.0, 80.6, 11.5e-6, 27.0, 19.4e-6); });
  CHECK(e.status() == GAUGEPOINT_STATUS_OUT_OF_RANGE && e.name() == "out_of_range" && e.field() == "gauge_temperature_c");
  // the limits are those of the header: -5 C to 60 C
  CHECK(e.value() == 80.6 && e.lower() == -5.0 && e.upper() == 60.0 && e.unit() == "C");
  CHECK(e.did_you_mean().find("27 C") != std::string_view::npos);
  const std::exception &base = e;
  CHECK(std::string_view(base.what()).find("27 C") != std::string_view::npos);
  // a status without a text says at least what it is
  auto one_sided = gaugepoint::record<GaugepointError>();
  one_sided.has_lower = 1;
  one_sided.lower = 7.0;
  const gaugepoint::Error lower_only(GAUGEPOINT_STATUS_OUT_OF_RANGE, one_sided);
  CHECK(lower_only.lower() == 7.0 && !lower_only.upper() && !lower_only.value());
  const gaugepoint::Error bare(GAUGEPOINT_STATUS_PANIC, gaugepoint::record<GaugepointError>());
  CHECK(std::string_view(bare.what()) == gaugepoint_status_text(GAUGEPOINT_STATUS_PANIC));
  std::int32_t result = 77;
  double probability = 77.0;
  refusal([&] { gaugepoint::call(gaugepoint_decide_mm, 1.0, -1.0, 1, 0.0, 1, 2.0, GAUGEPOINT_RULE_PROVEN, 0.95, &result, &probability); });
  CHECK(result == GAUGEPOINT_CONFORMITY_NOT_JUDGED && std::isnan(probability));
}

void texts(const std::string &job) {
  row = "texts";
  CHECK(refusal([] { gaugepoint::text(gaugepoint_job_assess, ""sv, 0); }).status() == GAUGEPOINT_STATUS_SYNTAX);
  CHECK(refusal([] { gaugepoint::text(gaugepoint_job_assess, std::string_view(), 0); }).status() == GAUGEPOINT_STATUS_NULL_POINTER);
  CHECK(refusal([] { gaugepoint::text(gaugepoint_job_assess, "{\xff}"sv, 0); }).status() == GAUGEPOINT_STATUS_NOT_UTF8);
  CHECK(refusal([&] { gaugepoint::text(gaugepoint_job_assess, job + '\0', 0); }).status() == GAUGEPOINT_STATUS_SYNTAX);
  CHECK(refusal([&] { gaugepoint::text(gaugepoint_job_assess, job, 2); }).field() == "with_working");
  CHECK(gaugepoint::text(gaugepoint_job_assess, std::vector<char>(job.begin(), job.end()), 0) == gaugepoint::text(gaugepoint_job_assess, job, 0));
  CHECK(gaugepoint::text(gaugepoint_presets).size() > 2);
}

void reports(const std::string &job) {
  row = "reports";
  gaugepoint::Report report(gaugepoint_report_new, GAUGEPOINT_DOCUMENT_JOB, job, 0);
  const auto verdict = gaugepoint::value(gaugepoint_report_job, report);
  CHECK(verdict.cylinder_count > 0 && gaugepoint::value(gaugepoint_report_cylinder, report, std::size_t{0}).number == 1);
  CHECK(!gaugepoint::text(gaugepoint_report_line, report, GAUGEPOINT_LINES_CAUTIONS, std::size_t{0}, std::size_t{0}).empty());
  CHECK(refusal([&] { gaugepoint::value(gaugepoint_report_cylinder, report, verdict.cylinder_count); }).field() == "cylinder");

  gaugepoint::Report moved(std::move(report));
  CHECK(report.get() == nullptr && gaugepoint::value(gaugepoint_report_job, moved).cylinder_count == verdict.cylinder_count);
  CHECK(refusal([&] { gaugepoint::value(gaugepoint_report_job, report); }).status() == GAUGEPOINT_STATUS_NULL_POINTER);
  // what it held is freed, and moving onto itself keeps it
  gaugepoint::Report other(gaugepoint_report_new, GAUGEPOINT_DOCUMENT_JOB, job, 0);
  other = std::move(moved);
  gaugepoint::Report &same = other;
  other = std::move(same);
  CHECK(gaugepoint::value(gaugepoint_report_job, other).cylinder_count == verdict.cylinder_count);
  CHECK(refusal([&] { gaugepoint::Report(gaugepoint_report_new, 77, job, 0); }).field() == "kind");
}

void handles() {
  row = "handles";
  gaugepoint::Stack stack(gaugepoint_stack_new, contributors);
  const auto third = contributor("gasket", 1.2);
  gaugepoint::call(gaugepoint_stack_add, stack, &third);
  std::size_t count = 0, causes = 77;
  gaugepoint::call(gaugepoint_stack_count, stack, &count, &causes);
  CHECK(count == 3 && causes == 0);
  // equal limits of all: a third of the variance each, by hand
  std::vector<GaugepointShare> shares(8);
  gaugepoint::call(gaugepoint_stack_shares, stack, shares, &count);
  CHECK(count == 3 && std::fabs(shares[0].share - 1.0 / 3.0) < 1e-12 && std::fabs(shares[2].share - 1.0 / 3.0) < 1e-12);
  CHECK(refusal([&] { gaugepoint::call(gaugepoint_stack_add, stack, &third); }).status() == GAUGEPOINT_STATUS_REPEATED);
  CHECK(refusal([&] { gaugepoint::call(gaugepoint_stack_add, stack, nullptr); }).status() == GAUGEPOINT_STATUS_NULL_POINTER);
  gaugepoint::Stack taken(std::move(stack));
  CHECK(refusal([&] { gaugepoint::value(gaugepoint_stack_forms, stack); }).status() == GAUGEPOINT_STATUS_NULL_POINTER);

  const gaugepoint::Function function(gaugepoint_function_from_formula, contributors, "bore - piston"sv, nullptr, nullptr);
  CHECK(std::fabs(gaugepoint::value(gaugepoint_function_nominal, function) - 0.05) < 1e-13);

  auto law = gaugepoint::record<GaugepointLaw>();
  law.form = GAUGEPOINT_LAW_FORM_MEAN_COEFFICIENT;
  law.base_c = 20.0;
  law.mean_per_k = 11.5e-6;
  law.from_c = 0.0;
  law.to_c = 100.0;
  const gaugepoint::Expansion expansion(gaugepoint_expansion_new, &law);
  CHECK(std::fabs(gaugepoint::value(gaugepoint_expansion_mean_per_k, expansion, 20.0, 80.0) - 11.5e-6) < 1e-17);
  CHECK(refusal([&] { gaugepoint::value(gaugepoint_expansion_at, expansion, 101.0); }).status() == GAUGEPOINT_STATUS_OUTSIDE_LAW);
  std::vector<double> strains(2);
  gaugepoint::call(gaugepoint_expansion_strains, expansion, std::vector<double>{20.0, 30.0}, strains.data());
  CHECK(strains[0] == 0.0 && std::fabs(strains[1] - 11.5e-5) < 1e-17);
  refusal([] { gaugepoint::HotFit(gaugepoint_hot_fit_new, nullptr); });
}

struct Own : std::runtime_error {
  using std::runtime_error::runtime_error;
};

// Twice the clearance, or what this thread throws.
thread_local int fault = 0;

double law(const gaugepoint::Sizes &sizes) {
  switch (fault) {
    case 1: throw Own("mine");
    case 2: throw 42;
    case 3: return gaugepoint::value(gaugepoint_bench_clearance_mm, sizes[0], -1.0);
    case 4: return NAN;
    default: return 2.0 * gaugepoint::value(gaugepoint_bench_clearance_mm, sizes[0], sizes[1]);
  }
}

// A law in C that fails by itself.
std::int32_t failing(void *, const double *, std::size_t, std::size_t, double *) { return 9; }

template <class Thrown, class Call>
bool throws(Call call) {
  try {
    call();
  } catch (const Thrown &) {
    return true;
  } catch (...) {
  }
  return false;
}

void callbacks() {
  row = "callbacks";
  gaugepoint::Called first(contributors, law);
  auto called = std::move(first);
  CHECK(refusal([&] { gaugepoint::value(gaugepoint_function_nominal, first); }).status() == GAUGEPOINT_STATUS_NULL_POINTER);
  const auto nominal = [&] { return gaugepoint::value(gaugepoint_function_nominal, called); };
  CHECK(std::fabs(nominal() - 0.1) < 1e-13);
  const gaugepoint::Called held(contributors, [factor = std::make_unique<double>(3.0)](const gaugepoint::Sizes &s) {
    return s.size() == 2 ? *factor * (s[0] - s[1]) : 0.0;
  });
  CHECK(std::fabs(gaugepoint::value(gaugepoint_function_nominal, held) - 0.15) < 1e-13);

  fault = 1;
  CHECK(throws<Own>(nominal));
  std::vector<double> values(1000, 7.0);
  auto run = gaugepoint::record<GaugepointRun>();
  run.points = GAUGEPOINT_POINTS_RANDOM;
  CHECK(throws<Own>([&] { gaugepoint::call(gaugepoint_function_trials, called, &run, values); }));
  fault = 2;
  CHECK(throws<int>(nominal));
  // a refusal within the law is that refusal
  fault = 3;
  CHECK(refusal(nominal).field() == "piston_mm");
  fault = 4;
  CHECK(refusal(nominal).status() == GAUGEPOINT_STATUS_NOT_FINITE);
  // what one call threw is not what another failed by
  fault = 1;
  double value = 0.0;
  CHECK(gaugepoint_function_nominal(called.get(), &value, nullptr) == GAUGEPOINT_STATUS_CALLBACK_FAILED && std::isnan(value));
  const gaugepoint::Function other(gaugepoint_function_of_callback, contributors, failing, nullptr);
  CHECK(refusal([&] { gaugepoint::value(gaugepoint_function_nominal, other); }).status() == GAUGEPOINT_STATUS_CALLBACK_FAILED);
  fault = 0;
  CHECK(std::fabs(nominal() - 0.1) < 1e-13);
  gaugepoint::call(gaugepoint_function_trials, called, &run, values);
  for (const double trial : values) {
    // within what the limits allow: 2 (0.05 +- 0.02)
    CHECK(trial >= 0.06 - 1e-12 && trial <= 0.14 + 1e-12);
  }
  CHECK(values.front() != values.back());
}

// Calls that throw and calls that do not, side by side.
void threads() {
  row = "threads";
  const gaugepoint::Called called(contributors, law);
  std::vector<int> good(8, 0);
  std::vector<std::thread> at_work;
  for (std::size_t t = 0; t < good.size(); t++) {
    at_work.emplace_back([&, t] {
      fault = t % 2 == 0 ? 0 : 1;
      for (int k = 0; k < 1000; k++) {
        const bool threw = throws<Own>([&] { gaugepoint::value(gaugepoint_function_nominal, called); });
        good[t] += threw == (fault == 1) ? 1 : 0;
      }
    });
  }
  for (std::thread &one : at_work) {
    one.join();
  }
  for (const int one : good) {
    CHECK(one == 1000);
  }
}

}  // namespace

int main(int count, char **words) {
  if (count != 2) {
    return 2;
  }
  const std::string job = file_text(words[1]);
  records();
  errors();
  texts(job);
  reports(job);
  handles();
  callbacks();
  threads();
  return finish();
}
