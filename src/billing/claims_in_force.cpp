#include "billing/claims_in_force.hpp"

#include <map>

#include "billing/net_claims.hpp"

namespace sparewell::billing {

std::vector<bool> claim_lines_settled(const Clinic& clinic) {
  std::map<PatientRef, std::vector<std::size_t>> by_patient;
  for (std::size_t i = 0; i < clinic.claim_lines.size(); ++i) {
    by_patient[clinic.claim_lines[i].patient].push_back(i);
  }
  std::vector<bool> settled(clinic.claim_lines.size(), true);
  for (const auto& [patient, lines] : by_patient) {
    for (const auto& live : net_claims(clinic, lines).live) settled[live.line] = false;
  }
  return settled;
}

}  // namespace sparewell::billing
