/// One patient's parts and claim lines, paired, with the money of each piece.
#pragma once

#include <map>
#include <optional>
#include <vector>

#include "billing/finding.hpp"
#include "billing/net_claims.hpp"
#include "billing/pairing.hpp"

namespace sparewell::billing {

class PaperFiles;

/// What all patients' books are looked at with. Refers to what it is made from.
struct BookRules {
  const Clinic* clinic;
  const ClinicIndex* index;
  const CodeTable* codes;
  const RuleBook* rules;
  const CodeLikeness* likeness;
  const PaperFiles* papers;
  std::optional<Date> begin;  ///< of the books
  Date today;
};

/// Pieces of an issue with their line, and the charge for them.
struct Pair {
  Pieces pieces;
  std::vector<std::size_t> units;
  std::optional<Money> money;
};

struct PatientCase {
  PatientRecords records;
  std::vector<Issue> issues;   ///< by day
  std::vector<Billed> billed;  ///< by day
  std::vector<Pair> pairs;
  std::vector<std::vector<std::size_t>> units_left;  ///< of each issue, without a line
  std::vector<int> pieces_left;                      ///< of each line, without a part
  std::vector<std::optional<Money>> money_left;      ///< of each line; with the pairs its charge
  std::vector<LooseReversal> loose;
  std::map<Currency, NetAmounts> amounts;
  std::map<Currency, std::int64_t> before_books;  ///< of lines that stand but are not compared

  struct Charge {
    std::size_t billed = 0;
    std::optional<Money> money;
  };
  std::map<std::size_t, Charge> of_unit;  ///< of paired units
};

[[nodiscard]] PatientCase make_case(const BookRules& rules, PatientRecords records);

/// What was charged for these units together; empty where nothing is known of any of them.
[[nodiscard]] std::optional<Money> charged_for(const PatientCase& one,
                                               const std::vector<std::size_t>& units);
/// The payer of a unit: that of its claim line, else the patient's.
[[nodiscard]] std::string payer_of(const BookRules& rules, const PatientCase& one,
                                   std::size_t unit);
/// The claim that a unit was billed with; "" when it was not.
[[nodiscard]] std::string claim_of(const PatientCase& one, std::size_t unit);

/// Gives a finding that names one side alone the records that were paired with it: claim lines of
/// its units, or units of its claim lines.
void complete_evidence(const PatientCase& one, BillingFinding& finding);

/// `payer` when there is one, else the one that the patient's record names.
[[nodiscard]] std::string payer_or_patients(const BookRules& rules, const std::string& payer,
                                            const PatientRef& patient);

}  // namespace sparewell::billing
