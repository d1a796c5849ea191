#include "exchange/paid_rows.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace sparewell::exchange {

RefusedPaidRow refused_row(const PaidRow& row, const Remittance& remittance, const Fault& fault) {
  const auto& line = row.line;
  const bool has_day = remittance.paid_on != Date{};
  return {row.at,
          fault,
          {{"payer", remittance.payer},
           {"reference", remittance.reference},
           {"paid_on", has_day ? iso_text(remittance.paid_on) : ""},
           {"claim_ref", line.claim_ref},
           {"payer_claim", line.payer_claim},
           {"status", line.status},
           {"member_id", row.person.member_id},
           {"side", line.side ? std::string{word(*line.side)} : std::string{}},
           {"service_date", line.service_date ? iso_text(*line.service_date) : std::string{}},
           {"code", line.code},
           {"modifiers", fmt::format("{}", fmt::join(line.modifiers, ";"))},
           {"quantity", line.quantity ? fmt::to_string(*line.quantity) : std::string{}},
           {"charge", plain_text(line.charge)},
           {"paid", plain_text(line.paid)},
           {"adjustments", fmt::format("{}", fmt::join(line.adjustments, ";"))},
           {"line_control", line.line_control}}};
}

std::int64_t PaidEntry::open() const {
  std::int64_t left = row.line.charge.minor - row.line.paid.minor;
  for (const auto& adjustment : adjustments) left -= adjustment.amount.minor;
  return left;
}

PaidRow PaidEntry::balanced() const {
  PaidRow made = row;
  for (const auto& adjustment : adjustments) {
    made.line.adjustments.push_back(adjustment_text(adjustment));
  }
  if (const auto left = open(); left != 0) {
    made.line.adjustments.push_back(adjustment_text({std::string{unstated_group},
                                                     std::string{unstated_reason},
                                                     {left, row.line.paid.currency},
                                                     {}}));
  }
  return made;
}

}  // namespace sparewell::exchange
