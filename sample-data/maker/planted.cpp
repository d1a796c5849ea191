#include "planted.hpp"

#include <algorithm>
#include <functional>

#include <fmt/format.h>

#include "planted_claims.hpp"
#include "random.hpp"

namespace sparewell::sample {
namespace {

constexpr std::uint64_t planting_stream = (1ULL << 40U) + 3;
constexpr std::uint64_t gap_stream = (1ULL << 40U) + 4;

/// Three liners of one size on one day for one side, all of them billed: over the usual limit of
/// two at a time.
void plant_third_liner(Clinic& clinic, Date until, std::vector<Planted>& planted) {
  const ClinicIndex index{clinic};
  const auto recent_pair = [&](const ClaimLine& line) {
    return line.code == "L5673" && line.quantity == 2 && line.service_date > until - days{700};
  };
  const auto claim = std::ranges::find_if(clinic.claim_lines, recent_pair);
  if (claim == clinic.claim_lines.end()) return;
  const auto issued = std::ranges::find_if(clinic.units, [&](const Unit& unit) {
    return unit.patient == claim->patient && unit.side == claim->side &&
           unit.issued_on == claim->service_date && index.item(unit.item)->kind == Kind::liner;
  });
  if (issued == clinic.units.end()) return;
  Unit third = *issued;
  third.serial = fmt::format("{}-3", third.serial);
  third.share = 0;
  third.ended_on.reset();
  third.end_reason.reset();
  clinic.units.insert(issued + 1, third);
  claim->quantity = 3;
  claim->charge = Money{claim->charge->minor / 2 * 3, claim->charge->currency};
  planted.push_back({"over the limit", "claims.csv", claim->patient.text,
                     fmt::format("{} of {}: three liners at once", claim->claim_ref,
                                 iso_text(claim->service_date))});
}

using ChangeInvoice = std::function<std::string(InvoiceLine&)>;

InvoiceLine* recent_invoice(Clinic& clinic, Random& random, Date until) {
  auto& lines = clinic.invoice_lines;
  for (int attempt = 0; attempt < 2000 && !lines.empty(); ++attempt) {
    InvoiceLine& line =
        lines[static_cast<std::size_t>(random.whole(0, static_cast<int>(lines.size()) - 1))];
    if (*line.invoiced_on > until - days{200} && line.quantity >= 2) return &line;
  }
  return nullptr;
}

void change_invoice(Clinic& clinic, Random& random, Date until, const char* what,
                    const ChangeInvoice& by, std::vector<Planted>& planted) {
  InvoiceLine* line = recent_invoice(clinic, random, until);
  if (line == nullptr) return;
  const std::string detail = by(*line);
  planted.push_back({what, "invoices.csv", line->order_ref,
                     fmt::format("{} {}: {}", line->invoice_ref, line->item.text, detail)});
}

/// What stood on a line that is left out goes to another line of its invoice.
void hand_on_freight(Clinic& clinic, const InvoiceLine& gone) {
  for (InvoiceLine& line : clinic.invoice_lines) {
    if (&line == &gone || line.invoice_ref != gone.invoice_ref) continue;
    line.freight = gone.freight;
    return;
  }
}

/// Freight was charged although the goods were worth free freight.
void plant_freight(Clinic& clinic, Date until, std::vector<Planted>& planted) {
  const ClinicIndex index{clinic};
  for (InvoiceLine& line : clinic.invoice_lines) {
    if (!line.freight || line.freight->minor != 0 || *line.invoiced_on < until - days{150})
      continue;
    line.freight = index.supplier(line.supplier)->freight;
    planted.push_back(
        {"freight differs", "invoices.csv", line.order_ref,
         fmt::format("{}: {} charged, free by its value", line.invoice_ref, text(*line.freight))});
    return;
  }
}

void plant_in_invoices(Clinic& clinic, Random& random, Date until, std::vector<Planted>& planted) {
  const auto dearer = [](InvoiceLine& line) {
    line.unit_cost->minor += line.unit_cost->minor / 12;
    return std::string{"price above the order's"};
  };
  const auto more = [](InvoiceLine& line) {
    line.quantity += 2;
    return std::string{"two more than received"};
  };
  change_invoice(clinic, random, until, "price differs", dearer, planted);
  change_invoice(clinic, random, until, "price differs", dearer, planted);
  change_invoice(clinic, random, until, "invoiced, not received", more, planted);
  if (const InvoiceLine* missing = recent_invoice(clinic, random, until)) {
    planted.push_back({"received, not invoiced", "invoices.csv", missing->order_ref,
                       fmt::format("{}: line left out", missing->item.text)});
    hand_on_freight(clinic, *missing);
    clinic.invoice_lines.erase(clinic.invoice_lines.begin() +
                               (missing - clinic.invoice_lines.data()));
  }
  if (const InvoiceLine* twice = recent_invoice(clinic, random, until)) {
    InvoiceLine again = *twice;
    again.invoice_ref += "/2";
    again.freight.reset();
    planted.push_back({"invoiced twice", "invoices.csv", again.order_ref,
                       fmt::format("{} {}", again.invoice_ref, again.item.text)});
    clinic.invoice_lines.push_back(again);
  }
  plant_freight(clinic, until, planted);
}

/// Use-by dates on the shelf that have passed or pass soon, and a lot set aside.
void plant_on_shelf(Clinic& clinic, Date until, std::vector<Planted>& planted) {
  static constexpr int days_left[] = {-34, -3, 9, 26, 50};
  std::size_t next = 0;
  for (std::size_t i = 0; i < clinic.shelf.size() && next < std::size(days_left); i += 3) {
    StockLevel& level = clinic.shelf[i];
    if (!level.lot.use_by || is_quarantine(level.place)) continue;
    const Date use_by = until + days{days_left[next++]};
    for (auto& same : clinic.shelf) {
      if (same.lot.item == level.lot.item && same.lot.lot == level.lot.lot)
        same.lot.use_by = use_by;
    }
    planted.push_back({use_by <= until ? "expired" : "expires soon", "stock.csv",
                       level.lot.item.text,
                       fmt::format("lot {}, use by {}", level.lot.lot, iso_text(use_by))});
  }
  if (clinic.shelf.empty()) return;
  StockLevel& last = clinic.shelf[clinic.shelf.size() / 2];
  if (is_quarantine(last.place)) return;
  last.place = "quarantine shelf";
  planted.push_back({"set aside", "stock.csv", last.lot.item.text,
                     fmt::format("lot {} in quarantine", last.lot.lot)});
}

}  // namespace

std::vector<Planted> plant_disagreements(Clinic& clinic, std::uint64_t seed, Date until) {
  Random random{seed, planting_stream};
  std::vector<Planted> planted;
  plant_third_liner(clinic, until, planted);
  plant_in_claims(clinic, random, until, planted);
  plant_in_invoices(clinic, random, until, planted);
  return planted;
}

std::vector<Planted> plant_gaps(Clinic& clinic, std::uint64_t seed, Date until) {
  Random random{seed, gap_stream};
  std::vector<Planted> planted;
  int lots = 0;
  for (Unit& unit : clinic.units) {
    if (!unit.lot.empty() && random.chance(0.01)) {
      unit.lot.clear();
      ++lots;
    }
    const bool early = unit.ended_on && days_between(unit.issued_on, *unit.ended_on) < 60;
    if (early && is_wear(*unit.end_reason) && random.chance(0.03)) {
      unit.end_reason = EndReason::other;
      planted.push_back({"replaced early, no reason", "issued.csv", unit.patient.text,
                         fmt::format("{} of {}, ended {}", unit.item.text, iso_text(unit.issued_on),
                                     iso_text(*unit.ended_on))});
    }
  }
  planted.push_back({"no lot", "issued.csv", "", fmt::format("{} units without a lot", lots)});
  plant_on_shelf(clinic, until, planted);
  return planted;
}

}  // namespace sparewell::sample
