/*
 * gaugepoint for C++17: the functions of gaugepoint.h with exceptions, owners and records in place of statuses, frees and out parameters.
 *
 * Every function of C is called by its own name, so nothing here must follow the header:
 *
 *   double clearance = gaugepoint::value(gaugepoint_bench_clearance_mm, 96.017, 95.9495);
 *   GaugepointSample sample = gaugepoint::value(gaugepoint_sample, readings);
 *   std::string report = gaugepoint::text(gaugepoint_job_assess, job, 0);
 *   gaugepoint::Report report(gaugepoint_report_new, GAUGEPOINT_DOCUMENT_JOB, job, 0);
 *   gaugepoint::call(gaugepoint_decide_mm, clearance, 0.005, 1, 0.06, 1, 0.15, GAUGEPOINT_RULE_PROVEN, 0.95, &result, &probability);
 *
 * Arguments stand as in the header. A string, vector, array or anything else with data() and size() is passed as pointer and count; a handle,
 * or anything else with get(), as its pointer. The error is left out, and so is what the call gives: by `value` the one result, by `text` the
 * text and its length, by a handle the pointer to it. Several results, and arrays of results, are passed to `call`: `value` has room for one. That no
 * array is written there, `value` refuses to compile for a function that takes a count and gives anything but a record.
 *
 * A status is thrown as gaugepoint::Error. Everything else, units above all, is as gaugepoint.h says.
 */
#ifndef GAUGEPOINT_HPP
#define GAUGEPOINT_HPP

#include <gaugepoint.h>

#include <cstddef>
#include <cstdint>
#include <exception>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <tuple>
#include <type_traits>
#include <utility>

namespace gaugepoint {

/* A refusal, with its data. Texts live as long as the exception. */
class Error : public std::exception {
 public:
  Error(std::int32_t status, const GaugepointError &error) noexcept : status_(status), error_(error) {}

  /* All of it in one line. */
  const char *what() const noexcept override { return error_.message[0] != '\0' ? error_.message : gaugepoint_status_text(status_); }
  /* A GaugepointStatus; treat one that you do not know as a failure. */
  std::int32_t status() const noexcept { return status_; }
  /* Stable name of the status: "out_of_range". */
  std::string_view name() const noexcept { return gaugepoint_status_name(status_); }
  /* The parameter, or the JSON Pointer of the field; empty when it is the whole text. */
  std::string_view field() const noexcept { return error_.field; }
  /* What was refused, as it was given. */
  std::string_view refused() const noexcept { return error_.refused; }
  std::string_view reason() const noexcept { return error_.reason; }
  /* What was probably meant; empty when no slip explains it. */
  std::string_view did_you_mean() const noexcept { return error_.did_you_mean; }
  /* Unit of the three numbers. */
  std::string_view unit() const noexcept { return error_.unit; }
  std::optional<double> value() const noexcept { return given(error_.has_value, error_.value); }
  std::optional<double> lower() const noexcept { return given(error_.has_lower, error_.lower); }
  std::optional<double> upper() const noexcept { return given(error_.has_upper, error_.upper); }

 private:
  static std::optional<double> given(std::int32_t has, double number) noexcept {
    return has != 0 ? std::optional<double>(number) : std::nullopt;
  }

  std::int32_t status_;
  GaugepointError error_;
};

namespace detail {

template <class T, class = void>
struct has_size : std::false_type {};
template <class T>
struct has_size<T, std::void_t<decltype(T::struct_size)>> : std::true_type {};

template <class T, class = void>
struct is_many : std::false_type {};
template <class T>
struct is_many<T, std::void_t<decltype(std::declval<T &>().data()), decltype(std::declval<T &>().size())>> : std::true_type {};

template <class T, class = void>
struct is_owner : std::false_type {};
template <class T>
struct is_owner<T, std::void_t<decltype(std::declval<T &>().get())>> : std::true_type {};

/* An argument as C takes it. */
template <class T>
auto plain(T &&given) {
  using Bare = std::remove_reference_t<T>;
  if constexpr (is_many<Bare>::value) {
    return std::make_tuple(given.data(), given.size());
  } else if constexpr (is_owner<Bare>::value) {
    return std::make_tuple(given.get());
  } else {
    return std::make_tuple(given);
  }
}

/* What a callback threw on this thread, on its way past C. */
inline std::exception_ptr &thrown() noexcept {
  thread_local std::exception_ptr exception;
  return exception;
}

[[noreturn]] inline void raise(std::int32_t status, const GaugepointError &error) {
  if (status == GAUGEPOINT_STATUS_CALLBACK_FAILED && thrown()) {
    std::rethrow_exception(std::exchange(thrown(), nullptr));
  }
  throw Error(status, error);
}

/* The type that the parameter `back` places before the error points to. */
template <std::size_t back, class... P>
using pointed = std::remove_pointer_t<std::tuple_element_t<sizeof...(P) - 1 - back, std::tuple<P...>>>;

}  // namespace detail

/* A record as the header wants it: zeroed, with struct_size set where it has one. */
template <class T>
T record() noexcept {
  T made{};
  if constexpr (detail::has_size<T>::value) {
    made.struct_size = sizeof(T);
  }
  return made;
}

/* Calls a function of C with all arguments but the error, and throws what it refuses. */
template <class... P, class... A>
void call(std::int32_t (*function)(P...), A &&...arguments) {
  auto given = std::tuple_cat(detail::plain(arguments)...);
  static_assert(std::tuple_size_v<decltype(given)> + 1 == sizeof...(P), "the arguments are those of the header but the error");
  auto error = record<GaugepointError>();
  detail::thrown() = nullptr;
  const std::int32_t status = std::apply([&](auto... each) { return function(each..., &error); }, given);
  if (status != GAUGEPOINT_STATUS_OK) {
    detail::raise(status, error);
  }
}

/* The one result of a function: a number, or a record. Of a function that takes a count a record only: a pointer to numbers may be an array. */
template <class... P, class... A>
auto value(std::int32_t (*function)(P...), A &&...arguments) {
  using Out = detail::pointed<1, P...>;
  static_assert(!std::is_const_v<Out> && !std::is_pointer_v<Out>, "the last parameter before the error is no result");
  static_assert(detail::has_size<Out>::value || !(std::is_same_v<P, std::size_t> || ...), "its results may be an array: pass it to gaugepoint::call");
  auto out = record<Out>();
  call(function, std::forward<A>(arguments)..., &out);
  return out;
}

/* Owns what a function of C made, and frees it once. Moves; what was moved from holds nothing, and is refused when it is used. */
template <class T, void (*Free)(T *)>
class Handle {
 public:
  /* Calls a function of C that makes one, with all arguments but the handle and the error. */
  template <class... P, class... A>
  explicit Handle(std::int32_t (*make)(P...), A &&...arguments) {
    T *made = nullptr;
    call(make, std::forward<A>(arguments)..., &made);
    held_.reset(made);
  }
  /* Owns what was made elsewhere. */
  explicit Handle(T *made) noexcept : held_(made) {}

  T *get() const noexcept { return held_.get(); }

 private:
  struct Freed {
    void operator()(T *made) const noexcept { Free(made); }
  };
  std::unique_ptr<T, Freed> held_;
};

using Text = Handle<char, gaugepoint_text_free>;
using Expansion = Handle<GaugepointExpansion, gaugepoint_expansion_free>;
using Function = Handle<GaugepointFunction, gaugepoint_function_free>;
using HotBore = Handle<GaugepointHotBore, gaugepoint_hot_bore_free>;
using HotFit = Handle<GaugepointHotFit, gaugepoint_hot_fit_free>;
using HotPiston = Handle<GaugepointHotPiston, gaugepoint_hot_piston_free>;
using Report = Handle<GaugepointReport, gaugepoint_report_free>;
using Stack = Handle<GaugepointStack, gaugepoint_stack_free>;

/* The text that a function gives. */
template <class... P, class... A>
std::string text(std::int32_t (*function)(P...), A &&...arguments) {
  char *out = nullptr;
  std::size_t length = 0;
  call(function, std::forward<A>(arguments)..., &out, &length);
  const Text owned(out);
  return std::string(out, length);
}

/* The sizes of one trial, by the place of the contributor. */
class Sizes {
 public:
  Sizes(const double *sizes, std::size_t contributors, std::size_t trials) noexcept
      : sizes_(sizes), contributors_(contributors), trials_(trials) {}
  double operator[](std::size_t contributor) const noexcept { return sizes_[contributor * trials_]; }
  std::size_t size() const noexcept { return contributors_; }

 private:
  const double *sizes_;
  std::size_t contributors_;
  std::size_t trials_;
};

/*
 * A function of contributors that is written in C++: `double law(const gaugepoint::Sizes &sizes)`. It is passed to C like a Function.
 *
 * What the law throws ends the call that it serves and is thrown from there. The law is called from several threads at once when several call.
 */
template <class Law>
class Called {
 public:
  template <class Contributors>
  Called(const Contributors &contributors, Law law)
      : law_(std::make_unique<const Law>(std::move(law))),
        function_(gaugepoint_function_of_callback, contributors, &Called::columns, const_cast<Law *>(law_.get())) {}

  GaugepointFunction *get() const noexcept { return function_.get(); }

 private:
  static std::int32_t columns(void *law, const double *sizes, std::size_t contributors, std::size_t trials, double *values) noexcept {
    try {
      for (std::size_t trial = 0; trial < trials; trial++) {
        values[trial] = (*static_cast<const Law *>(law))(Sizes(sizes + trial, contributors, trials));
      }
      return 0;
    } catch (...) {
      detail::thrown() = std::current_exception();
      return 1;
    }
  }

  /* at an address that stays when this moves; freed after the function that calls it */
  std::unique_ptr<const Law> law_;
  Function function_;
};

}  // namespace gaugepoint

#endif
