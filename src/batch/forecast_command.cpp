#include <array>
#include <iostream>

#include <fmt/format.h>

#include "batch/context.hpp"
#include "batch/json.hpp"

namespace sparewell::batch {
namespace {

struct Quantile {
  const char* name;
  double p;
};
constexpr std::array<Quantile, 7> quantiles{{{"p05", 0.05},
                                             {"p10", 0.10},
                                             {"p25", 0.25},
                                             {"p50", 0.50},
                                             {"p75", 0.75},
                                             {"p90", 0.90},
                                             {"p95", 0.95}}};

Json json_of(const Unit& unit, const Item& item, const wear::UnitLife& life,
             const std::optional<Date>& by) {
  Json row{{"patient_ref", unit.patient.text},
           {"side", word(unit.side)},
           {"item_code", unit.item.text},
           {"serial", unit.serial},
           {"lot", unit.lot},
           {"kind", word(item.kind)},
           {"issued_on", batch::json_of(unit.issued_on)},
           {"wear_age_days", life.wear_age_days()}};
  for (const auto& quantile : quantiles) {
    row[quantile.name] = batch::json_of(life.worn_out_date(quantile.p));
  }
  if (by) row["worn_by"] = life.chance_worn_by(*by);
  return row;
}

std::string date_or_dash(const std::optional<Date>& date) {
  return date ? iso_text(*date) : "-";
}

void print_words(const Unit& unit, const wear::UnitLife& life, const std::optional<Date>& by) {
  std::cout << fmt::format("{:<10} {:<5} {:<16} {:<14} {:>8.0f}  {:<10}  {:<10}  {:<10}",
                           unit.patient.text, word(unit.side), unit.item.text,
                           unit.serial.empty() ? unit.lot : unit.serial, life.wear_age_days(),
                           date_or_dash(life.worn_out_date(0.1)),
                           date_or_dash(life.worn_out_date(0.5)),
                           date_or_dash(life.worn_out_date(0.9)));
  if (by) std::cout << fmt::format("  {:5.1f} %", 100 * life.chance_worn_by(*by));
  std::cout << '\n';
}

int run(const Context& context, const std::string& by_text) {
  std::optional<Date> by;
  if (!by_text.empty()) by = date_option("--by", by_text);
  const auto assessment = context.forecast();
  const ClinicIndex index{assessment.clinic};
  Json units = Json::array();
  if (!context.json) {
    std::cout << fmt::format("{:<10} {:<5} {:<16} {:<14} {:>8}  {:<10}  {:<10}  {:<10}{}\n",
                             "patient", "side", "item", "serial or lot", "wear age", "p10", "p50",
                             "p90", by ? "  worn by " + by_text : "");
  }
  for (const auto& [position, life] : assessment.lives) {
    const Unit& unit = assessment.clinic.units[position];
    if (context.json) {
      units.push_back(json_of(unit, *index.item(unit.item), life, by));
    } else {
      print_words(unit, life, by);
    }
  }
  if (context.json) {
    print({{"today", batch::json_of(assessment.today)}, {"units", std::move(units)}});
  }
  return done;
}

}  // namespace

void add_forecast(CLI::App& app, Context& context) {
  auto* command = app.add_subcommand(
      "forecast", "When each unit in use is expected to be worn out, as a span of dates");
  const auto by = std::make_shared<std::string>();
  command->add_option("--by", *by, "Add the chance to be worn out by the end of this day");
  command->callback([&context, by] { context.run = [&context, by] { return run(context, *by); }; });
}

}  // namespace sparewell::batch
