/// Findings of one patient as they are found, those with one key joined.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "billing/finding.hpp"

namespace sparewell::billing {

/// What a part, an issue or a claim line is known by, in words that stay.
[[nodiscard]] std::string issue_key(const PatientRef& patient, Side side, const std::string& code,
                                    Date day);
[[nodiscard]] std::string line_key(const ClaimLine& line);

class FindingList {
 public:
  /// Sets the key to the finding's word and `of`. A finding with the same key takes the pieces, the
  /// money and the evidence; money of another currency, or unknown, makes the sum unknown.
  void add(BillingFinding finding, const std::string& of);

  [[nodiscard]] std::vector<BillingFinding> take() &&;

 private:
  std::map<std::string, BillingFinding> by_key_;
};

}  // namespace sparewell::billing
