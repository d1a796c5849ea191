/// Records of each patient, so that a check does not look through those of all.
#pragma once

#include <span>
#include <unordered_map>
#include <vector>

#include "clinic/refs.hpp"

namespace sparewell::desk {

/// Holds copies, in the order in which they stood.
template <class Record>
class ByPatient {
 public:
  explicit ByPatient(const std::vector<Record>& records) {
    for (const Record& record : records) of_patient_[record.patient].push_back(record);
  }
  [[nodiscard]] std::span<const Record> of(const PatientRef& patient) const {
    const auto found = of_patient_.find(patient);
    return found == of_patient_.end() ? std::span<const Record>{} : found->second;
  }

 private:
  std::unordered_map<PatientRef, std::vector<Record>> of_patient_;
};

}  // namespace sparewell::desk
