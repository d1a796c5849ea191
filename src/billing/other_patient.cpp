#include "billing/other_patient.hpp"

#include <cstdlib>
#include <unordered_map>

namespace sparewell::billing {
namespace {

struct Unbilled {
  const PatientRef* patient;
  Date day;
};

}  // namespace

void name_other_patients(std::span<const PatientCase> cases,
                         std::vector<BillingFinding>& findings) {
  std::unordered_map<std::string, std::vector<Unbilled>> by_code;
  for (const auto& one : cases) {
    for (std::size_t i = 0; i < one.issues.size(); ++i) {
      const Issue& issue = one.issues[i];
      if (one.units_left[i].empty() || issue.standing != Standing::expected) continue;
      by_code[issue.code].push_back({&one.records.patient, issue.day});
    }
  }
  for (auto& finding : findings) {
    if (finding.kind != FindingKind::billed_not_issued || finding.cause != Cause::unknown) continue;
    const PatientRef* other = nullptr;
    bool several = false;
    for (const auto& [patient, day] : by_code[finding.code]) {
      if (*patient == finding.patient ||
          std::abs(days_between(day, finding.since)) > days_of_other_patient) {
        continue;
      }
      several = several || (other != nullptr && *other != *patient);
      other = patient;
    }
    if (other == nullptr || several) continue;
    finding.cause = Cause::other_patient;
    finding.other = other->text;
    finding.remedy = Remedy::replace_claim;
  }
}

}  // namespace sparewell::billing
