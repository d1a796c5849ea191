#include <algorithm>
#include <array>
#include <iostream>

#include <fmt/format.h>

#include "batch/context.hpp"
#include "batch/json.hpp"
#include "desk/effect_words.hpp"
#include "wear/competing_endings.hpp"
#include "wear/shelf_life.hpp"

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

/// The chance of each ending by its word, "worn" first.
Json json_of(const wear::EndingChances& chances) {
  Json by_ending{{"worn", chances.worn}};
  for (const EndReason reason : wear::other_reasons) {
    by_ending[std::string{word(reason)}] = chances.of(reason);
  }
  return by_ending;
}

wear::EndingChances chances_by(const wear::LifeOfUnit& unit, Date day) {
  return wear::ending_chances(unit.life, unit.others,
                              std::max(0, days_between(unit.life.today(), day)));
}

Json json_of(const Unit& unit, const Item& item, const wear::LifeOfUnit& forecast,
             const std::optional<wear::UseBy>& use_by, const std::optional<Date>& by) {
  const wear::UnitLife& life = forecast.life;
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
  row["use_by"] = use_by ? batch::json_of(use_by->day) : Json(nullptr);
  row["use_by_is_latest_possible"] = use_by && use_by->at_latest;
  row["endings"] = json_of(wear::eventual_endings(life, forecast.others));
  if (by) {
    const auto chances = chances_by(forecast, *by);
    row["worn_by"] = life.chance_worn_by(*by);
    row["endings_by"] = json_of(chances);
    row["endings_by"]["in_use"] = chances.in_use;
  }
  return row;
}

std::string date_or_dash(const std::optional<Date>& date) {
  return date ? iso_text(*date) : "-";
}

void print_words(const Unit& unit, const wear::LifeOfUnit& forecast,
                 const std::optional<Date>& by) {
  const wear::UnitLife& life = forecast.life;
  std::cout << fmt::format(
      "{:<10} {:<5} {:<16} {:<14} {:>8.0f}  {:<10}  {:<10}  {:<10}", unit.patient.text,
      word(unit.side), unit.item.text, unit.serial.empty() ? unit.lot : unit.serial,
      life.wear_age_days(), date_or_dash(life.worn_out_date(0.1)),
      date_or_dash(life.worn_out_date(0.5)), date_or_dash(life.worn_out_date(0.9)));
  if (by) {
    std::cout << fmt::format("  {:16.1f} %  {:13.1f} %", 100 * life.chance_worn_by(*by),
                             100 * chances_by(forecast, *by).ended_otherwise());
  }
  std::cout << '\n';
}

int run(const Context& context, const std::string& by_text) {
  std::optional<Date> by;
  if (!by_text.empty()) by = date_option("--by", by_text);
  const auto assessment = context.forecast();
  const ClinicIndex index{assessment.clinic};
  const wear::UseBys use_bys{assessment.clinic};
  Json units = Json::array();
  if (!context.json) {
    std::cout << fmt::format("{:<10} {:<5} {:<16} {:<14} {:>8}  {:<10}  {:<10}  {:<10}{}\n",
                             "patient", "side", "item", "serial or lot", "wear age", "p10", "p50",
                             "p90", by ? fmt::format("  worn by {}  otherwise gone", by_text) : "");
  }
  for (const wear::LifeOfUnit& forecast : assessment.lives) {
    const Unit& unit = assessment.clinic.units[forecast.unit];
    if (context.json) {
      const Item& item = *index.item(unit.item);
      units.push_back(json_of(unit, item, forecast, use_bys.of(unit, item), by));
    } else {
      print_words(unit, forecast, by);
    }
  }
  if (context.json) {
    print({{"today", batch::json_of(assessment.today)},
           {"units", std::move(units)},
           {"notes", desk::fit_notes(assessment.fitted)}});
  } else {
    print_notes(assessment.fitted);
  }
  return done;
}

}  // namespace

void add_forecast(Command& app, Context& context) {
  auto* command = app.add_subcommand(
      "forecast",
      "When each unit in use is expected to be worn out, as a span of dates, and "
      "how it will end");
  const auto by = std::make_shared<std::string>();
  command->add_option("--by", *by, "Add the chance of each ending by the end of this day");
  command->callback([&context, by] { context.run = [&context, by] { return run(context, *by); }; });
}

}  // namespace sparewell::batch
