/// A patient's usage as a function of the date.
#pragma once

#include <unordered_map>
#include <vector>

#include "clinic/clinic.hpp"
#include "wear/factors.hpp"

namespace sparewell::wear {

/// Factors in force from a date on, until the next span.
struct UsageSpan {
  Date from;
  FactorVector factors{};
};

/// The usage of every patient, piecewise constant. Before the first record of a patient the first
/// record's values hold; a field left empty keeps its earlier value; what was never stated is at
/// reference use.
class UsageByPatient {
 public:
  explicit UsageByPatient(const Clinic& clinic);

  /// In order of date, at least one; the first holds for all earlier dates too.
  [[nodiscard]] const std::vector<UsageSpan>& spans(const PatientRef& patient) const;

 private:
  std::unordered_map<PatientRef, std::vector<UsageSpan>> spans_;
  std::vector<UsageSpan> never_stated_;
};

/// Position of the span in force on `day`.
[[nodiscard]] std::size_t span_on(const std::vector<UsageSpan>& spans, Date day);

}  // namespace sparewell::wear
