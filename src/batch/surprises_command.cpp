#include <iostream>

#include <fmt/format.h>

#include "batch/context.hpp"
#include "batch/json.hpp"
#include "desk/surprise_words.hpp"

namespace sparewell::batch {
namespace {

Json json_of(const Unit& unit, const wear::EarlyUnit& early) {
  return {{"patient_ref", unit.patient.text},
          {"side", word(unit.side)},
          {"item_code", unit.item.text},
          {"lot", unit.lot},
          {"serial", unit.serial},
          {"issued_on", batch::json_of(unit.issued_on)},
          {"ended_on", batch::json_of(unit.ended_on)},
          {"end_reason", word(*unit.end_reason)},
          {"wear_age_days", early.wear_age_days},
          {"median_days", early.median_days},
          {"tail", early.chance}};
}

Json json_of(const wear::EarlyEndings& endings, bool with_lot) {
  Json row{{"item_code", endings.item.text}};
  if (with_lot) row["lot"] = endings.lot;
  row["units"] = endings.units;
  row["early"] = endings.early;
  row["expected"] = endings.expected;
  row["p_value"] = endings.p_value;
  row["adjusted_p"] = endings.adjusted_p;
  row["patients"] = endings.patients;
  row["early_patients"] = endings.early_patients;
  row["p_without_hardest_user"] = endings.p_without_hardest_user;
  row["flagged"] = endings.flagged;
  return row;
}

Json rows_of(const std::vector<wear::EarlyEndings>& tested, bool with_lot) {
  Json rows = Json::array();
  for (const auto& endings : tested) rows.push_back(json_of(endings, with_lot));
  return rows;
}

void print_json(const Clinic& clinic, const wear::Surprises& found, Date today) {
  Json units = Json::array();
  for (const auto& early : found.units) units.push_back(json_of(clinic.units[early.unit], early));
  print({{"today", batch::json_of(today)},
         {"units", std::move(units)},
         {"units_by_chance", found.units_by_chance},
         {"lots", rows_of(found.lots, true)},
         {"items", rows_of(found.items, false)},
         {"lots_too_small", found.lots_too_small},
         {"units_without_lot", found.units_without_lot},
         {"caution", desk::surprises_caution()}});
}

void print_units(const Clinic& clinic, const wear::Surprises& found) {
  std::cout << fmt::format(
      "Worn out so early that fewer than 1 in 100 do: {} units ({:.1f} by chance alone).\n",
      found.units.size(), found.units_by_chance);
  if (found.units.empty()) return;
  std::cout << fmt::format(
      "{:<10} {:<5} {:<16} {:<12} {:<12} {:<10}  {:<10}  {:<12} {:>8} {:>8} {:>8}\n", "patient",
      "side", "item", "lot", "serial", "issued", "ended", "reason", "wear age", "median", "chance");
  for (const auto& early : found.units) {
    const Unit& unit = clinic.units[early.unit];
    std::cout << fmt::format(
        "{:<10} {:<5} {:<16} {:<12} {:<12} {:<10}  {:<10}  {:<12} {:>8.0f} {:>8.0f} {:>6.2f} %\n",
        unit.patient.text, word(unit.side), unit.item.text, unit.lot, unit.serial,
        iso_text(unit.issued_on), iso_text(*unit.ended_on), word(*unit.end_reason),
        early.wear_age_days, early.median_days, 100 * early.chance);
  }
}

void print_flagged(const std::vector<wear::EarlyEndings>& tested) {
  for (const auto& endings : tested) {
    if (endings.flagged) std::cout << desk::early_endings_words(endings) << '\n';
  }
}

int run(const Context& context) {
  const Date today = context.today();
  const Clinic clinic = context.clinic_on(today);
  const auto fitted = wear::fit_clinic(clinic, desk::built_in_priors(), today);
  const auto found = wear::find_surprises(clinic, fitted, today);
  if (context.json) {
    print_json(clinic, found, today);
  } else {
    print_units(clinic, found);
    print_flagged(found.lots);
    print_flagged(found.items);
    std::cout << desk::surprises_summary(found) << '\n' << desk::surprises_caution() << '\n';
  }
  return found.any_flagged() ? done_with_findings : done;
}

}  // namespace

void add_surprises(Command& app, Context& context) {
  auto* command = app.add_subcommand(
      "surprises", "Parts that wore out far too early, and lots and items that may be defective");
  command->callback([&context] { context.run = [&context] { return run(context); }; });
}

}  // namespace sparewell::batch
