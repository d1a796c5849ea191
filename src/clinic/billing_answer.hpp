/// What a person decided about a disagreement between records of billing.
#pragma once

#include <optional>
#include <string>

#include "clinic/date.hpp"
#include "clinic/money.hpp"
#include "clinic/words.hpp"

namespace sparewell {

enum class Answer {
  asked,        ///< somebody was asked; it stays on the list until the answer comes
  accepted,     ///< it is right as it is
  corrected,    ///< the records were, or will be, put right elsewhere
  written_off,  ///< the money is given up
  open_again    ///< the earlier answer no longer stands
};
template <>
std::span<const std::string_view> words<Answer>();

/// One entry of a finding's history; never changed. It answers the finding as it was on that day:
/// where its quantity or money has changed since, the finding is open again.
struct BillingAnswer {
  std::string finding;  ///< its key
  int number = 1;       ///< 1, 2, 3 ... of the finding
  Answer answer = Answer::asked;
  std::string reason;  ///< never empty
  std::string answered_by;
  Date answered_on;
  int quantity = 0;            ///< of the finding on that day
  std::optional<Money> money;  ///< likewise
  std::optional<Date> ask_again_on = {};

  friend bool operator==(const BillingAnswer&, const BillingAnswer&) = default;
};

}  // namespace sparewell
