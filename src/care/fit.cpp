#include "care/fit.hpp"

#include <map>

namespace sparewell::care {
namespace {

using ByHeight = std::map<double, double>;  // circumference by height, both in cm

struct Reading {
  double circumference_cm = 0;
  bool interpolated = false;
};

std::optional<Reading> read_at(const ByHeight& measured, double at_cm) {
  const auto above = measured.lower_bound(at_cm);
  if (above == measured.end()) return std::nullopt;
  if (above->first == at_cm) return Reading{above->second, false};
  if (above == measured.begin()) return std::nullopt;
  const auto below = std::prev(above);
  const double part = (at_cm - below->first) / (above->first - below->first);
  return Reading{below->second + part * (above->second - below->second), true};
}

Fit fit_of(const Item& item, double circumference_cm) {
  if (item.size_min_cm && circumference_cm < *item.size_min_cm) return Fit::limb_smaller;
  if (item.size_max_cm && circumference_cm > *item.size_max_cm) return Fit::limb_larger;
  return Fit::fits;
}

}  // namespace

bool is_old_measurement(Date measured_on, Date day) {
  auto limit = std::chrono::year_month_day{measured_on} + std::chrono::months{6};
  if (!limit.ok()) limit = limit.year() / limit.month() / std::chrono::last;
  return Date{limit} < day;
}

FitCheck check_fit(const Item& item, const PatientRef& patient, Side side,
                   std::span<const Measurement> measurements, Date day) {
  FitCheck made;
  if (!item.size_min_cm && !item.size_max_cm) return made;
  made.fit = Fit::not_known;
  made.at_cm = item.size_at_cm;
  if (!made.at_cm) return made;
  std::map<Date, ByHeight> days;
  for (const auto& measured : measurements) {
    if (measured.patient != patient || measured.side != side || measured.measured_on > day)
      continue;
    if (measured.circumference_cm <= 0) continue;
    days[measured.measured_on][measured.at_cm] = measured.circumference_cm;
  }
  for (auto at = days.rbegin(); at != days.rend(); ++at) {
    const auto reading = read_at(at->second, *made.at_cm);
    if (!reading) continue;
    made.circumference_cm = reading->circumference_cm;
    made.interpolated = reading->interpolated;
    made.measured_on = at->first;
    made.old = is_old_measurement(at->first, day);
    made.fit = fit_of(item, reading->circumference_cm);
    break;
  }
  return made;
}

Gravity gravity(const FitCheck& check) {
  const bool plain = check.fit == Fit::no_size || (check.fit == Fit::fits && !check.old);
  return plain ? Gravity::note : Gravity::ask;
}

}  // namespace sparewell::care
