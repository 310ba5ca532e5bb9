// What the test programs in C++ share. They use the header for C++ and the library only.
#ifndef CHECK_HPP
#define CHECK_HPP

#include <gaugepoint.hpp>

#include <fstream>
#include <iostream>
#include <iterator>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

inline int checks = 0, failures = 0;
// what is being checked, for the message
inline std::string row;

#define CHECK(condition) \
  do { \
    checks++; \
    if (!(condition) && failures++ < 20) { \
      std::cerr << __FILE__ << ':' << __LINE__ << ": " << row << ": " << #condition << '\n'; \
    } \
  } while (false)

// The last line of every program; the driver reads the count, so that a program that checks nothing fails.
inline int finish() {
  std::cout << "checks " << checks << " failures " << failures << '\n';
  return failures == 0 ? 0 : 1;
}

inline std::string file_text(const std::string &path) {
  std::ifstream file(path, std::ios::binary);
  if (!file) {
    throw std::runtime_error(path + " cannot be opened");
  }
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

// Cuts at every `separator`.
inline std::vector<std::string> parts(const std::string &text, char separator) {
  std::vector<std::string> found(1);
  for (const char c : text) {
    if (c == separator) {
      found.emplace_back();
    } else {
      found.back() += c;
    }
  }
  return found;
}

// The rows of a table without comments and the names of the columns; the last of `count` columns takes the rest.
inline std::vector<std::vector<std::string>> rows(const std::string &path, std::size_t count) {
  std::vector<std::vector<std::string>> found;
  bool names = true;
  for (const std::string &line : parts(file_text(path), '\n')) {
    if (line.empty() || line[0] == '#' || std::exchange(names, false)) {
      continue;
    }
    std::vector<std::string> cells = parts(line, ',');
    if (cells.size() < count) {
      throw std::runtime_error(path + ": " + line);
    }
    while (cells.size() > count) {
      cells[count - 1] += ',' + cells[count];
      cells.erase(cells.begin() + static_cast<std::ptrdiff_t>(count));
    }
    found.push_back(cells);
  }
  return found;
}

// What a call refuses; a call that refuses nothing is a failure.
template <class Call>
gaugepoint::Error refusal(Call call) {
  gaugepoint::Error refused(GAUGEPOINT_STATUS_OK, gaugepoint::record<GaugepointError>());
  try {
    call();
  } catch (const gaugepoint::Error &error) {
    refused = error;
  }
  CHECK(refused.status() != GAUGEPOINT_STATUS_OK);
  return refused;
}

#endif
