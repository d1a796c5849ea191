/// "What if I wait a week, use another service target, lose this supplier?" side by side.
#pragma once

#include <string>
#include <vector>

#include "desk/assessment.hpp"
#include "desk/job.hpp"
#include "desk/table.hpp"
#include "supply/what_if.hpp"

namespace sparewell::desk {

/// What is asked; each entry is one more way to decide beside ordering today by the settings.
struct WhatIfQuestions {
  std::vector<int> wait_days;           ///< above 0
  std::vector<double> service_targets;  ///< between 0 and 1
  std::vector<SupplierName> without;
};

struct Decision {
  std::string title;  ///< "Order today", "Order today for at most 500.00 EUR", "Wait 7 days",
                      ///< "90 % target", "Without Tern"
  supply::OrderPolicy policy;
};

/// Ordering today first, then what is asked, all of it within the budget if there is one.
[[nodiscard]] std::vector<Decision> decisions(const ClinicSettings& settings, Date today,
                                              const WhatIfQuestions& questions,
                                              const std::optional<Money>& budget = std::nullopt);

struct Compared {
  Decision decision;
  supply::Outcome outcome;
};

/// Slow enough for a background job when the clinic is large.
[[nodiscard]] std::vector<Compared> compare(const Assessment& assessment,
                                            const WhatIfQuestions& questions);
/// The same, saying how far it is; empty when it was stopped.
[[nodiscard]] std::vector<Compared> compare(const Assessment& assessment,
                                            const WhatIfQuestions& questions,
                                            const JobControl& control);

/// One measure a row, one decision a column.
[[nodiscard]] Table what_if_table(const std::vector<Compared>& compared);

/// What a decision risks, item by item, the greatest chance first; "" when all items keep to their
/// target.
[[nodiscard]] std::vector<std::string> risk_sentences(const Compared& compared);

/// What stands where the comparison will be.
[[nodiscard]] std::string what_if_introduction();

/// How the measures are meant, and what they leave out.
[[nodiscard]] std::string what_if_note();

}  // namespace sparewell::desk
