#include "wear/usage_spans.hpp"

#include <algorithm>

namespace sparewell::wear {

UsageByPatient::UsageByPatient(const Clinic& clinic) : never_stated_{UsageSpan{}} {
  std::unordered_map<PatientRef, std::vector<const Usage*>> records;
  for (const Usage& usage : clinic.usage) records[usage.patient].push_back(&usage);
  for (auto& [patient, of_patient] : records) {
    std::ranges::stable_sort(of_patient, {}, &Usage::from_date);
    auto& spans = spans_[patient];
    FactorVector factors{};
    for (const Usage* usage : of_patient) {
      factors = updated_factors(factors, *usage);
      spans.push_back({usage->from_date, factors});
    }
  }
}

const std::vector<UsageSpan>& UsageByPatient::spans(const PatientRef& patient) const {
  const auto found = spans_.find(patient);
  return found == spans_.end() ? never_stated_ : found->second;
}

std::size_t span_on(const std::vector<UsageSpan>& spans, Date day) {
  const auto after = std::ranges::upper_bound(spans, day, {}, &UsageSpan::from);
  return after == spans.begin() ? 0 : static_cast<std::size_t>(after - spans.begin()) - 1;
}

}  // namespace sparewell::wear
