/// Clinics of a few records for tests.
#pragma once

#include <optional>
#include <string>
#include <utility>

#include "clinic/clinic.hpp"
#include "wear/clinic_fit.hpp"
#include "wear/priors.hpp"

namespace sparewell::testing {

inline const Date day_zero = make_date(2025, 1, 1);

inline Item item(std::string code, Kind kind, Material material) {
  Item made;
  made.code = {std::move(code)};
  made.kind = kind;
  made.material = material;
  return made;
}

/// Days are counted from day_zero. Without an end it is in use.
inline Unit unit(std::string patient, std::string code, int issued, std::optional<int> ended = {},
                 std::optional<EndReason> reason = EndReason::worn) {
  Unit made;
  made.patient = {std::move(patient)};
  made.item = {std::move(code)};
  made.issued_on = day_zero + days{issued};
  if (ended) {
    made.ended_on = day_zero + days{*ended};
    made.end_reason = reason;
  }
  return made;
}

inline Usage usage(std::string patient, int from) {
  Usage made;
  made.patient = {std::move(patient)};
  made.from_date = day_zero + days{from};
  return made;
}

/// A catalogue of a liner L (silicone), a liner G (mineral-oil gel), a sleeve S, a lock K.
inline Clinic small_clinic() {
  Clinic clinic;
  clinic.items = {
      item("L", Kind::liner, Material::silicone), item("G", Kind::liner, Material::mineral_oil_gel),
      item("S", Kind::sleeve, Material::neoprene), item("K", Kind::lock, Material::metal)};
  return clinic;
}

/// Every kind alike: median 250 days, shape 2, factors without effect, a variance of the personal
/// multiplier. The spreads say how strongly.
inline wear::PriorTable plain_priors(double life_spread = 0.5, double factor_spread = 0.2,
                                     double variance = 0.2, double variance_spread = 0.7) {
  wear::PriorTable priors;
  for (std::size_t k = 0; k < words<Kind>().size(); ++k) {
    const auto kind = static_cast<Kind>(k);
    priors.lives.push_back({kind, std::nullopt, 250, life_spread, 2, life_spread, "for a test"});
    priors.persons.push_back({kind, variance, variance_spread, "for a test"});
    priors.items.push_back({kind, 0.05, 0.5, "for a test"});
    for (const EndReason reason : wear::other_reasons) {
      priors.endings.push_back({kind, reason, 0.01, 10, "for a test"});
    }
    for (std::size_t f = 0; f < wear::factor_count; ++f) {
      priors.factors.push_back(
          {kind, static_cast<wear::Factor>(f), 1, factor_spread, "for a test"});
    }
  }
  return priors;
}

}  // namespace sparewell::testing
