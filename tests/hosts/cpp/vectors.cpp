// vectors FOLDER: the flat functions against flat.csv and the refused jobs against refused.csv, through the layer for C++.
// vectors FILE KIND: the report on a document, KIND as in GaugepointDocument, once by its function and once by a handle, to standard output.
#include "check.hpp"

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <functional>
#include <map>

namespace {

using Numbers = std::vector<double>;

template <class... P, std::size_t... I>
double spread(std::int32_t (*function)(P...), const Numbers &x, std::index_sequence<I...>) {
  return gaugepoint::value(function, x.at(I)...);
}

// A flat function of as many numbers as it has parameters before the result and the error.
template <class... P>
double flat(std::int32_t (*function)(P...), const Numbers &x) {
  constexpr std::size_t count = sizeof...(P) - 2;
  CHECK(x.size() == count);
  return spread(function, x, std::make_index_sequence<count>{});
}

#define FLAT(name) \
  { #name, [](const Numbers &x) { return flat(gaugepoint_##name, x); } }

const std::map<std::string, std::function<double(const Numbers &)>> functions = {
// FLAT(name), for every name in flat.csv; written before this is compiled
#include "flat_functions.inc"
};

bool starts(std::string_view text, std::string_view with) { return text.substr(0, with.size()) == with; }
bool contains(std::string_view text, std::string_view part) { return text.find(part) != std::string_view::npos; }

// Not std::stod, which takes a number below the smallest normal one for an overflow.
double read(const std::string &text) {
  char *end = nullptr;
  const double found = std::strtod(text.c_str(), &end);
  CHECK(!text.empty() && *end == '\0');
  return found;
}

void flat_row(const std::vector<std::string> &cells) {
  Numbers x;
  for (const std::string &cell : parts(cells[2], ';')) {
    x.push_back(read(cell));
  }
  const auto &function = functions.at(cells[1]);
  if (starts(cells[3], "error:")) {
    const gaugepoint::Error error = refusal([&] { function(x); });
    CHECK(error.name() == cells[3].substr(6));
    CHECK(!error.field().empty() && !error.reason().empty());
    CHECK(starts(error.what(), error.field()) && contains(error.what(), error.reason()));
    return;
  }
  const double found = function(x);
  CHECK(std::fabs(found - read(cells[3])) <= read(cells[4]));
  // the bits, for the comparison with C
  std::printf("%s %.17g\n", row.c_str(), found);
}

enum Column { ID, FILE_NAME, PREFIX, UNIT, COUNT, SUFFIX, KIND, PATH, REFUSED, VALUE, LOWER, UPPER, LIMITS_UNIT, MEANT, COLUMNS };

std::string decoded(const std::string &cell) {
  std::string text;
  for (std::size_t k = 0; k < cell.size(); k++) {
    if (cell[k] == '%') {
      text += static_cast<char>(std::stoi(cell.substr(k + 1, 2), nullptr, 16));
      k += 2;
    } else {
      text += cell[k];
    }
  }
  return text;
}

std::string repeated(const std::vector<std::string> &cells) {
  std::string text = cells[PREFIX];
  for (int k = std::atoi(cells[COUNT].c_str()); k > 0; k--) {
    text += cells[UNIT];
  }
  return text + cells[SUFFIX];
}

// Within 1e-9 of its size, or absent.
bool number_is(std::optional<double> number, const std::string &expected) {
  if (expected.empty() || !number) {
    return expected.empty() && !number;
  }
  const double wanted = read(expected);
  return std::fabs(*number - wanted) <= 1e-9 * std::fabs(wanted);
}

// A text of the error, or as much of it as has room.
bool text_is(std::string_view text, std::size_t room, std::string_view expected) {
  return text.size() + 4 < room ? text == expected : starts(expected, text);
}

void refused_row(const std::string &folder, const std::vector<std::string> &cells) {
  const std::string job = cells[FILE_NAME].empty() ? repeated(cells) : file_text(folder + "/refused/" + cells[FILE_NAME]);
  const gaugepoint::Error error = refusal([&] { gaugepoint::text(gaugepoint_job_assess, job, 0); });
  const gaugepoint::Error again = refusal([&] { gaugepoint::Report(gaugepoint_report_new, GAUGEPOINT_DOCUMENT_JOB, job, 0); });
  CHECK(error.name() == cells[KIND] && again.status() == error.status() && std::string(again.what()) == error.what());
  CHECK(text_is(error.field(), sizeof GaugepointError::field, cells[PATH]));
  CHECK(text_is(error.refused(), sizeof GaugepointError::refused, cells[REFUSED]));
  CHECK(number_is(error.value(), cells[VALUE]));
  CHECK(number_is(error.lower(), cells[LOWER]));
  CHECK(number_is(error.upper(), cells[UPPER]));
  CHECK(error.unit() == cells[LIMITS_UNIT]);
  CHECK(cells[MEANT].empty() ? error.did_you_mean().empty() : contains(error.did_you_mean(), cells[MEANT]));
  CHECK(!error.reason().empty() && contains(error.what(), error.reason()));
}

int vectors(const std::string &folder) {
  const auto flat_rows = rows(folder + "/flat.csv", 6);
  for (const auto &cells : flat_rows) {
    row = cells[0];
    flat_row(cells);
  }
  std::printf("rows %zu\n", flat_rows.size());
  const auto refused_rows = rows(folder + "/refused.csv", COLUMNS);
  for (auto cells : refused_rows) {
    row = cells[ID];
    for (std::string &cell : cells) {
      cell = decoded(cell);
    }
    refused_row(folder, cells);
  }
  std::printf("rows %zu\n", refused_rows.size());
  std::fflush(stdout);
  return finish();
}

std::string by_function(const std::string &document, int kind) {
  switch (kind) {
    case GAUGEPOINT_DOCUMENT_JOB: return gaugepoint::text(gaugepoint_job_assess, document, 0);
    case GAUGEPOINT_DOCUMENT_SHEET: return gaugepoint::text(gaugepoint_sheet_check, document);
    case GAUGEPOINT_DOCUMENT_MEASUREMENT: return gaugepoint::text(gaugepoint_measure, document, 0);
    case GAUGEPOINT_DOCUMENT_FIT: return gaugepoint::text(gaugepoint_fit, document, 0);
    case GAUGEPOINT_DOCUMENT_STACK: return gaugepoint::text(gaugepoint_stack_evaluate, document, 0);
    case GAUGEPOINT_DOCUMENT_BUDGET: return gaugepoint::text(gaugepoint_budget_evaluate, document);
    case GAUGEPOINT_DOCUMENT_REVISIT: return gaugepoint::text(gaugepoint_revisit, document);
    case GAUGEPOINT_DOCUMENT_WHAT_IF: return gaugepoint::text(gaugepoint_what_if, document);
    default: throw std::runtime_error("no such kind of document");
  }
}

int report(const std::string &path, int kind) {
  const std::string document = file_text(path);
  const gaugepoint::Report report(gaugepoint_report_new, kind, document, 0);
  const std::string text = by_function(document, kind);
  std::cout << text;
  return text == gaugepoint::text(gaugepoint_report_text, report, GAUGEPOINT_FORMAT_JSON) ? 0 : 1;
}

}  // namespace

int main(int count, char **words) {
  try {
    if (count == 2) {
      return vectors(words[1]);
    }
    return count == 3 ? report(words[1], std::atoi(words[2])) : 2;
  } catch (const std::exception &error) {
    std::cerr << row << ": " << error.what() << '\n';
    return 2;
  }
}
