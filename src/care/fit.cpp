#include "care/fit.hpp"

namespace sparewell::care {
namespace {

Fit fit_of(const Item& item, double circumference_cm) {
  const double tolerance = fit_tolerance_cm(circumference_cm);
  if (item.size_min_cm && circumference_cm < *item.size_min_cm) {
    const bool edge = *item.size_min_cm - circumference_cm < tolerance;
    return edge ? Fit::edge_smaller : Fit::limb_smaller;
  }
  if (item.size_max_cm && circumference_cm > *item.size_max_cm) {
    const bool edge = circumference_cm - *item.size_max_cm < tolerance;
    return edge ? Fit::edge_larger : Fit::limb_larger;
  }
  return Fit::fits;
}

}  // namespace

double fit_tolerance_cm(double circumference_cm) {
  return tape_error * circumference_cm;
}

bool has_size(const Item& item) {
  return item.size_min_cm || item.size_max_cm;
}

bool is_old_measurement(Date measured_on, Date day) {
  auto limit = std::chrono::year_month_day{measured_on} + std::chrono::months{6};
  if (!limit.ok()) limit = limit.year() / limit.month() / std::chrono::last;
  return Date{limit} < day;
}

FitCheck check_fit(const Item& item, const PatientRef& patient, Side side,
                   std::span<const Measurement> measurements, Date day) {
  if (!has_size(item) || !item.size_at_cm) return check_fit(item, {}, day);
  return check_fit(item, readings_at(measurements, patient, side, *item.size_at_cm, day), day);
}

FitCheck check_fit(const Item& item, const std::vector<LimbReading>& readings, Date day) {
  FitCheck made;
  if (!has_size(item)) return made;
  made.fit = Fit::not_known;
  made.at_cm = item.size_at_cm;
  if (!made.at_cm || readings.empty()) return made;
  const LimbReading& latest = readings.back();
  made.circumference_cm = latest.circumference_cm;
  made.interpolated = latest.interpolated;
  made.measured_on = latest.day;
  made.old = is_old_measurement(latest.day, day);
  made.fit = fit_of(item, latest.circumference_cm);
  return made;
}

Gravity gravity(const FitCheck& check) {
  const bool plain = check.fit == Fit::no_size || (check.fit == Fit::fits && !check.old);
  return plain ? Gravity::note : Gravity::ask;
}

}  // namespace sparewell::care
