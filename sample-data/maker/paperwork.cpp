#include "paperwork.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include <fmt/format.h>

#include "calendar.hpp"
#include "random.hpp"

namespace sparewell::sample {
namespace {

constexpr std::uint64_t claim_stream = (1ULL << 40U) + 1;
constexpr std::uint64_t invoice_stream = (1ULL << 40U) + 2;

/// What a payer is charged for a piece, in cents of the clinic's currency.
std::int64_t charge_for(const Item& item) {
  const std::int64_t cost = item.unit_cost ? item.unit_cost->minor : 0;
  return (item.currency.code == "USD" ? cost * 92 / 100 : cost) * 148 / 100;
}

struct Billed {
  int quantity = 0;
  std::int64_t charge = 0;
  bool replaces = false;
};

using Line = std::tuple<Side, std::string>;
using Visit = std::pair<Date, PatientRef>;

std::map<Visit, std::map<Line, Billed>> visits(const Clinic& clinic) {
  const ClinicIndex index{clinic};
  std::map<Visit, std::map<Line, Billed>> all;
  std::set<std::tuple<PatientRef, Side, std::string>> had;
  for (const Unit& unit : clinic.units) {
    const Item* item = index.item(unit.item);
    if (item->billing_code.empty() || unit.lot.empty())
      continue;  // what they brought is not billed
    Billed& billed = all[{unit.issued_on, unit.patient}][{unit.side, item->billing_code}];
    billed.replaces = !had.emplace(unit.patient, unit.side, item->billing_code).second;
    ++billed.quantity;
    billed.charge += charge_for(*item);
  }
  return all;
}

}  // namespace

void write_claims(Clinic& clinic, std::uint64_t seed, Date until) {
  Random random{seed, claim_stream};
  std::map<PatientRef, std::string> payer_of;
  for (const Patient& patient : clinic.patients) payer_of[patient.ref] = patient.payer;
  int number = 0;
  for (const auto& [visit, lines] : visits(clinic)) {
    const auto& [day, patient] = visit;
    // A few are dated by the day the form was filled in.
    const Date service =
        random.chance(0.05) ? std::min(until, day + days{random.whole(1, 3)}) : day;
    const std::string reference = fmt::format("CL-{:02}-{:05}", year_of(day) % 100, ++number);
    for (const auto& [line, billed] : lines) {
      ClaimLine claim;
      claim.claim_ref = reference;
      claim.patient = patient;
      claim.side = std::get<Side>(line);
      claim.service_date = service;
      claim.code = std::get<std::string>(line);
      claim.modifiers.emplace_back(claim.side == Side::left ? "LT" : "RT");
      if (billed.replaces) claim.modifiers.emplace_back("RA");
      claim.quantity = billed.quantity;
      claim.charge = Money{billed.charge, Currency{"EUR"}};
      claim.payer = payer_of.at(patient);
      clinic.claim_lines.push_back(std::move(claim));
    }
  }
}

void write_invoices(Clinic& clinic, std::uint64_t seed, Date until) {
  Random random{seed, invoice_stream};
  std::map<std::string, std::vector<const OrderLine*>> orders;
  for (const OrderLine& line : clinic.order_lines) {
    if (line.received_on) orders[line.order_ref].push_back(&line);
  }
  for (const auto& [reference, lines] : orders) {
    Date day = *lines.front()->received_on;
    for (const OrderLine* line : lines) day = std::max(day, *line->received_on);
    day = working_day_from(day + days{random.whole(0, 6)});
    const int number = random.whole(10000, 99999);
    if (day > until) continue;
    for (const OrderLine* line : lines) {
      InvoiceLine invoice;
      invoice.supplier = line->supplier;
      invoice.invoice_ref =
          fmt::format("{}-{}-{}", line->supplier.text.substr(0, 1), number, reference.substr(3));
      invoice.order_ref = reference;
      invoice.item = line->item;
      invoice.quantity = line->received_quantity;
      invoice.unit_cost = line->unit_cost;
      invoice.invoiced_on = day;
      clinic.invoice_lines.push_back(std::move(invoice));
    }
  }
}

}  // namespace sparewell::sample
