/// What one patient's parts and claim lines disagree in.
#pragma once

#include "billing/finding_list.hpp"
#include "billing/patient_case.hpp"
#include "billing/usual_charges.hpp"

namespace sparewell::billing {

/// Of pairs that do not agree: wrong side, code or date, and parts that came back but are billed.
void find_in_pairs(const BookRules& rules, const PatientCase& one, FindingList& found);

/// Of parts without a line: issued not billed; wrong quantity where others of that day, side and
/// code are billed.
void find_unbilled(const BookRules& rules, const UsualCharges& usual, const PatientCase& one,
                   FindingList& found);

/// Of lines, or pieces of them, without a part: wrong quantity where other pieces of the line have
/// theirs; billed twice where another line of the code and side within `ordinary_days` has; else
/// billed not issued.
void find_unissued(const BookRules& rules, const PatientCase& one, FindingList& found);

/// Of the lines by themselves: no charge, a code that does not hold on that day, no side where each
/// side has to stand on a line of its own, and reversals of what was never billed.
void find_in_lines(const BookRules& rules, const UsualCharges& usual, const PatientCase& one,
                   FindingList& found);

/// Whether a quantity of the line's code counts parts, and not for example a quarter of an hour's
/// work.
[[nodiscard]] bool counts_parts(const CodeTable& codes, const ClaimLine& line);

/// A finding about a claim line, with what is known of it.
[[nodiscard]] BillingFinding finding_of_line(const BookRules& rules, FindingKind kind,
                                             const Billed& billed);
/// A finding about an issue.
[[nodiscard]] BillingFinding finding_of_issue(FindingKind kind, const PatientRef& patient,
                                              const Issue& issue);

/// The amount with the other sign.
[[nodiscard]] std::optional<Money> negative(const std::optional<Money>& money);

}  // namespace sparewell::billing
