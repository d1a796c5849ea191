/// The findings that need a person, with what persons decided about them before.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "billing/finding.hpp"

namespace sparewell::billing {

enum class WorkState {
  open,     ///< nobody has answered, or the answer no longer stands
  waiting,  ///< somebody was asked, and the day to ask again has not come
  settled
};

struct WorkItem {
  BillingFinding finding;
  std::vector<BillingAnswer> history;  ///< in the order in which they were given
  WorkState state = WorkState::open;
  /// Answered once, but its quantity or money is no longer what was answered.
  bool has_changed = false;
  bool ask_again = false;  ///< somebody was asked, and the day to ask again has come
  int age_days = 0;        ///< since BillingFinding::since; never below zero

  /// The newest answer; nullptr when there is none.
  [[nodiscard]] const BillingAnswer* answer() const {
    return history.empty() ? nullptr : &history.back();
  }
};

/// Somebody who was asked without a day to ask again is asked again after so many days. Common
/// practice, no source.
inline constexpr int days_to_answer = 14;

/// Keeps the order of the findings.
[[nodiscard]] std::vector<WorkItem> make_worklist(std::vector<BillingFinding> findings,
                                                  std::span<const BillingAnswer> answers,
                                                  Date today);

/// Sums of what is at stake, by currency: what the clinic is to receive, and what it has to give
/// back or was charged. Findings without a sum count as pieces only.
struct Stake {
  std::vector<Money> to_receive;
  std::vector<Money> to_give;
  int without_sum = 0;
};
[[nodiscard]] Stake stake_of(std::span<const WorkItem> items);

}  // namespace sparewell::billing
