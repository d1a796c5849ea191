/// The codes that parts are billed under, and what payers require: data with dates, of any country.
#pragma once

#include <optional>
#include <string>

#include "clinic/date.hpp"
#include "clinic/money.hpp"
#include "clinic/words.hpp"

namespace sparewell {

/// One code of a published list while it holds. A code may have several rows, one after the other.
struct BillingCode {
  std::string list;  ///< for example "HCPCS"
  std::string code;
  std::string description;  ///< as published
  std::string unit;         ///< what a quantity of 1 is: "each", "15 minutes"
  std::optional<Date> valid_from;
  std::optional<Date> valid_to;  ///< the last day; empty: still valid
  std::string source;

  [[nodiscard]] bool valid_on(Date day) const {
    return (!valid_from || *valid_from <= day) && (!valid_to || day <= *valid_to);
  }
  friend bool operator==(const BillingCode&, const BillingCode&) = default;
};

enum class PayerRuleKind {
  at_once,       ///< no more than `number` of the code in use at once on one side
  in_period,     ///< no more than `number` pieces on one side within `days`
  initial_only,  ///< billed once for a prosthesis; later ones under the code in `words`, if any
  early,         ///< a part replaced within `days` of its issue needs a recorded reason
  confirmation,  ///< within `days` of its issue the payer may ask to confirm that it was needed
  paper,         ///< the paper in `words` has to be on file for each issue
  replacement_paper,  ///< the paper in `words` has to be on file where a part is replaced
  included,           ///< work on a prosthesis within `days` of its delivery is in its price
  side_lines,         ///< each side on a line of its own, with its modifier
  fee,                ///< `amount` is paid for a piece
  answer,             ///< the payer usually answers within `days`
  submit              ///< a claim has to be submitted within `days` of the service
};
template <>
std::span<const std::string_view> words<PayerRuleKind>();

/// What a payer requires of a code.
struct PayerRule {
  std::string payer;  ///< "" for every payer without a row of its own
  std::string code;   ///< "" for every code without a row of its own
  PayerRuleKind rule = PayerRuleKind::at_once;
  std::optional<int> number;
  std::optional<int> days;
  std::optional<Money> amount;
  std::string words;
  std::optional<Date> valid_from;
  std::optional<Date> valid_to;  ///< the last day
  std::string source;

  [[nodiscard]] bool valid_on(Date day) const {
    return (!valid_from || *valid_from <= day) && (!valid_to || day <= *valid_to);
  }
  friend bool operator==(const PayerRule&, const PayerRule&) = default;
};

}  // namespace sparewell
