/// Recording what a person decided about a finding of billing.
#pragma once

#include <optional>
#include <string>

#include "billing/worklist.hpp"
#include "desk/day.hpp"
#include "desk/stock_form.hpp"

namespace sparewell::desk {

struct AnswerRequest {
  Answer answer = Answer::asked;
  std::string reason;
  std::string by;
  std::optional<Date> ask_again_on;
};

/// Adds to the finding's history. Refuses, writing nothing: no reason, no name, a day to ask again
/// that is past or belongs to another answer than "asked", opening again what is not answered.
[[nodiscard]] Expected<BillingAnswer> answer_finding(store::UnitOfWork& work,
                                                     const billing::BillingFinding& finding,
                                                     const AnswerRequest& request, Date today);

/// "Written off on 25 Nov 2026 by Anna: too old."
[[nodiscard]] std::string answer_words(const BillingAnswer& answer);

/// The questions that the window asks before it records an answer.
[[nodiscard]] StockForm answer_form(const Day& day, const billing::WorkItem& item);

}  // namespace sparewell::desk
