/// What a payer said about claims, and paid.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "clinic/date.hpp"
#include "clinic/money.hpp"
#include "clinic/refs.hpp"
#include "clinic/words.hpp"

namespace sparewell {

/// One payment of a payer with its explanation.
struct Remittance {
  std::string payer;
  std::string reference;  ///< the payer's number of the payment
  Date paid_on;
  Money total;         ///< as the payer states it
  std::string source;  ///< the file that it was read from

  friend bool operator==(const Remittance&, const Remittance&) = default;
};

enum class RemittanceEntry {
  line,     ///< about one line of a claim
  claim,    ///< about a claim as a whole, beyond its lines
  provider  ///< between payer and clinic, about no claim
};
template <>
std::span<const std::string_view> words<RemittanceEntry>();

/// Why less was paid than charged: the X12 group (CO, PR, OA, PI), the reason code, and how much.
struct Adjustment {
  std::string group;
  std::string reason;
  Money amount;  ///< below zero adds to what is paid
  std::optional<int> quantity;

  friend bool operator==(const Adjustment&, const Adjustment&) = default;
};

/// charge - the sum of the adjustments = paid.
struct RemittanceLine {
  std::string payer;
  std::string reference;  ///< of the Remittance
  int position = 1;       ///< within it
  RemittanceEntry entry = RemittanceEntry::line;
  std::string claim_ref;
  std::string payer_claim;  ///< the payer's own number of the claim
  std::string status;  ///< the claim's, as the payer codes it: 1 primary, 4 denied, 22 reversal
  PatientRef patient;  ///< empty when the clinic does not know whose claim it is
  std::optional<Side> side;
  std::optional<Date> service_date;
  std::string code;
  std::vector<std::string> modifiers;
  std::optional<int> quantity;  ///< paid
  Money charge;
  Money paid;
  std::vector<std::string> adjustments;  ///< "CO:45:10.00" or "CO:45:10.00:1", see Adjustment
  std::string line_control;              ///< of the claim line, as the clinic sent it

  friend bool operator==(const RemittanceLine&, const RemittanceLine&) = default;
};

/// Reads "CO:45:10.00" or "CO:45:10.00:1"; nullopt for anything else.
[[nodiscard]] std::optional<Adjustment> parse_adjustment(std::string_view text,
                                                         const Currency& currency);
[[nodiscard]] std::string adjustment_text(const Adjustment& adjustment);

}  // namespace sparewell
