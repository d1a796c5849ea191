#include "care/circumference.hpp"

#include <algorithm>
#include <optional>
#include <tuple>

namespace sparewell::care {
namespace {

using OneDay = std::span<const Measurement* const>;  ///< in order of height

std::optional<LimbReading> reading_of(OneDay measured, double at_cm) {
  const auto above = std::ranges::lower_bound(measured, at_cm, {}, &Measurement::at_cm);
  if (above == measured.end()) return std::nullopt;
  const Measurement& high = **above;
  if (high.at_cm == at_cm) return LimbReading{high.measured_on, high.circumference_cm, false};
  if (above == measured.begin()) return std::nullopt;
  const Measurement& low = **std::prev(above);
  const double part = (at_cm - low.at_cm) / (high.at_cm - low.at_cm);
  return LimbReading{high.measured_on,
                     low.circumference_cm + part * (high.circumference_cm - low.circumference_cm),
                     true};
}

}  // namespace

std::vector<LimbReading> readings_at(std::span<const Measurement> measurements,
                                     const PatientRef& patient, Side side, double at_cm, Date day) {
  std::vector<const Measurement*> of_side;
  for (const Measurement& measured : measurements) {
    if (measured.side != side || measured.measured_on > day || measured.circumference_cm <= 0) {
      continue;
    }
    if (measured.patient == patient) of_side.push_back(&measured);
  }
  std::ranges::sort(of_side, {}, [](const Measurement* each) {
    return std::tie(each->measured_on, each->at_cm);
  });
  std::vector<LimbReading> made;
  for (std::size_t from = 0; from < of_side.size();) {
    std::size_t to = from + 1;
    while (to < of_side.size() && of_side[to]->measured_on == of_side[from]->measured_on) ++to;
    const auto reading = reading_of(OneDay{of_side}.subspan(from, to - from), at_cm);
    if (reading) made.push_back(*reading);
    from = to;
  }
  return made;
}

}  // namespace sparewell::care
