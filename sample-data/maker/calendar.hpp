/// The clinic's working days: Monday to Friday.
#pragma once

#include "clinic/date.hpp"

namespace sparewell::sample {

inline bool is_working_day(Date day) {
  return std::chrono::weekday{day}.iso_encoding() <= 5;
}

/// `day` itself, or the Monday after it.
inline Date working_day_from(Date day) {
  while (!is_working_day(day)) day += days{1};
  return day;
}

inline int year_of(Date day) {
  return static_cast<int>(std::chrono::year_month_day{day}.year());
}

}  // namespace sparewell::sample
