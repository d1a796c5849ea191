/// Sets of days as stretches of days.
#pragma once

#include <span>
#include <vector>

#include "clinic/date.hpp"

namespace sparewell::care {

/// The days from `from` on, `until` not included.
struct DaySpan {
  Date from;
  Date until;

  friend bool operator==(const DaySpan&, const DaySpan&) = default;
};

/// Days in stretches that are in order, not empty, and do not touch.
using DaySpans = std::vector<DaySpan>;

/// Every day that is in one of the spans, which may be in any order, overlap or be empty.
[[nodiscard]] DaySpans united(std::vector<DaySpan> spans);

/// The days that are in both.
[[nodiscard]] DaySpans common(std::span<const DaySpan> a, std::span<const DaySpan> b);

/// The days of `spans` that are not in `taken`.
[[nodiscard]] DaySpans without(std::span<const DaySpan> spans, std::span<const DaySpan> taken);

[[nodiscard]] int day_count(std::span<const DaySpan> spans);
[[nodiscard]] bool holds(std::span<const DaySpan> spans, Date day);

}  // namespace sparewell::care
