#include "care/day_spans.hpp"

#include <algorithm>

namespace sparewell::care {

DaySpans united(std::vector<DaySpan> spans) {
  std::erase_if(spans, [](const DaySpan& span) { return span.until <= span.from; });
  std::ranges::sort(spans, {}, &DaySpan::from);
  DaySpans made;
  for (const DaySpan& span : spans) {
    if (made.empty() || span.from > made.back().until) {
      made.push_back(span);
    } else {
      made.back().until = std::max(made.back().until, span.until);
    }
  }
  return made;
}

DaySpans common(std::span<const DaySpan> a, std::span<const DaySpan> b) {
  DaySpans made;
  for (const DaySpan& one : a) {
    for (const DaySpan& other : b) {
      const DaySpan both{std::max(one.from, other.from), std::min(one.until, other.until)};
      if (both.from < both.until) made.push_back(both);
    }
  }
  return united(std::move(made));
}

DaySpans without(std::span<const DaySpan> spans, std::span<const DaySpan> taken) {
  DaySpans left{spans.begin(), spans.end()};
  for (const DaySpan& gone : taken) {
    DaySpans rest;
    for (const DaySpan& span : left) {
      rest.push_back({span.from, std::min(span.until, gone.from)});
      rest.push_back({std::max(span.from, gone.until), span.until});
    }
    left = united(std::move(rest));
  }
  return left;
}

int day_count(std::span<const DaySpan> spans) {
  int count = 0;
  for (const DaySpan& span : spans) count += days_between(span.from, span.until);
  return count;
}

bool holds(std::span<const DaySpan> spans, Date day) {
  return std::ranges::any_of(
      spans, [&](const DaySpan& span) { return span.from <= day && day < span.until; });
}

}  // namespace sparewell::care
