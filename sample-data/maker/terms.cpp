#include "terms.hpp"

#include <array>
#include <map>
#include <utility>

#include <fmt/format.h>

namespace sparewell::sample {
namespace {

constexpr std::array<const char*, 3> payers{"Thistledown Health Fund", "Nine Bridges Mutual",
                                            "Copperkettle Guild Fund"};

struct Fee {
  const char* code;
  std::int64_t cents;
};

/// What the second payer pays for a piece, in cents.
constexpr Fee fees[] = {{"L5673", 60000}, {"L5679", 52000}, {"L5685", 9900}, {"L5671", 42000},
                        {"L8420", 2600},  {"L8430", 2600},  {"L8435", 1300}};

PayerRule agreed(const char* payer, const char* code, PayerRuleKind kind) {
  PayerRule rule;
  rule.payer = payer;
  rule.code = code;
  rule.rule = kind;
  rule.source = "invented for the sample clinic";
  return rule;
}

std::vector<PayerRule> rules() {
  std::vector<PayerRule> made;
  for (const Fee& fee : fees) {
    auto& rule = made.emplace_back(agreed(payers[1], fee.code, PayerRuleKind::fee));
    rule.amount = Money{fee.cents, Currency{"EUR"}};
  }
  for (const auto& [payer, days] : {std::pair{payers[0], 30}, {payers[1], 45}, {payers[2], 60}}) {
    made.emplace_back(agreed(payer, "", PayerRuleKind::answer)).days = days;
  }
  return made;
}

std::optional<int> warranty_of(Kind kind) {
  switch (kind) {
    case Kind::liner:
      return 90;
    case Kind::sleeve:
      return 30;
    case Kind::valve:
      return 120;
    case Kind::lock:
    case Kind::pump:
      return 365;
    default:
      return {};
  }
}

}  // namespace

void agree_on_terms(Clinic& clinic) {
  for (std::size_t i = 0; i < clinic.patients.size(); ++i) {
    Patient& patient = clinic.patients[i];
    patient.payer = payers[(i * 7 + i / 5) % payers.size()];
    patient.member_id = fmt::format("M{:07}", 4'000'000 + i * 37);
  }
  for (Item& item : clinic.items) item.warranty_days = warranty_of(item.kind);
  clinic.payer_rules = rules();
}

void charge_freight(Clinic& clinic) {
  const ClinicIndex index{clinic};
  std::map<std::string, std::pair<std::size_t, std::int64_t>> invoices;  // first line, goods
  for (std::size_t i = 0; i < clinic.invoice_lines.size(); ++i) {
    const InvoiceLine& line = clinic.invoice_lines[i];
    auto& [first, goods] = invoices.try_emplace(line.invoice_ref, i, 0).first->second;
    goods += line.unit_cost->minor * line.quantity;
  }
  for (const auto& [reference, invoice] : invoices) {
    InvoiceLine& line = clinic.invoice_lines[invoice.first];
    const Supplier* supplier = index.supplier(line.supplier);
    if (supplier == nullptr || !supplier->freight) continue;
    const bool is_free =
        supplier->free_freight_from && invoice.second >= supplier->free_freight_from->minor;
    line.freight = is_free ? Money{0, supplier->freight->currency} : *supplier->freight;
  }
}

}  // namespace sparewell::sample
