#include <array>
#include <iostream>

#include <fmt/format.h>

#include "batch/context.hpp"
#include "batch/json.hpp"
#include "wear/backtest.hpp"

namespace sparewell::batch {
namespace {

using wear::Backtest;
using wear::BacktestScores;
using wear::Compared;

constexpr std::array<const char*, 3> coverage_names{"50", "80", "95"};
constexpr std::array<const char*, 3> pinball_names{"p10", "p50", "p90"};

Json json_of(const std::optional<wear::Coverage>& coverage) {
  if (!coverage) return nullptr;
  return {{"share", coverage->share}, {"low", coverage->low}, {"high", coverage->high}};
}

Json json_of(const std::optional<Compared>& score) {
  if (!score) return nullptr;
  return {{"sparewell", score->sparewell},
          {"calendar", score->calendar},
          {"clinic_weibull", score->clinic_weibull}};
}

/// Part of each peer's score that the forecasts save.
Json skill_json(const std::optional<Compared>& score) {
  if (!score) return nullptr;
  const auto or_null = [](const std::optional<double>& value) {
    return value ? Json(*value) : Json(nullptr);
  };
  return {{"calendar", or_null(wear::skill(score->sparewell, score->calendar))},
          {"clinic_weibull", or_null(wear::skill(score->sparewell, score->clinic_weibull))}};
}

void add_scores(Json& row, const BacktestScores& scores) {
  row["units"] = scores.units;
  row["events"] = scores.events;
  for (std::size_t i = 0; i < coverage_names.size(); ++i) {
    row["coverage"][coverage_names[i]] = json_of(scores.coverage[i]);
  }
  row["crps"] = json_of(scores.crps);
  for (std::size_t i = 0; i < pinball_names.size(); ++i) {
    row["pinball"][pinball_names[i]] = json_of(scores.pinball[i]);
  }
  row["skill"]["crps"] = skill_json(scores.crps);
  for (std::size_t i = 0; i < pinball_names.size(); ++i) {
    row["skill"][pinball_names[i]] = skill_json(scores.pinball[i]);
  }
}

Json json_of(const Backtest& backtest) {
  Json document{{"today", batch::json_of(backtest.today)},
                {"origins", Json::array()},
                {"horizon_days", backtest.horizon_days},
                {"kinds", Json::array()},
                {"all", Json::object()}};
  for (const Date origin : backtest.origins) document["origins"].push_back(batch::json_of(origin));
  for (const auto& [kind, scores] : backtest.kinds) {
    Json row{{"kind", word(kind)}};
    add_scores(row, scores);
    document["kinds"].push_back(std::move(row));
  }
  add_scores(document["all"], backtest.all);
  return document;
}

std::string percent(const std::optional<double>& part) {
  return part ? fmt::format("{:.0f} %", 100 * *part) : "-";
}

void print_row(std::string_view name, const BacktestScores& scores) {
  std::cout << fmt::format("{:<8} {:>6} {:>7}", name, scores.units, scores.events);
  for (const auto& coverage : scores.coverage) {
    const auto share = coverage ? std::optional{coverage->share} : std::nullopt;
    std::cout << fmt::format(" {:>8}", percent(share));
  }
  const Compared& crps = *scores.crps;
  std::cout << fmt::format("  {:>9.2f} {:>9.2f} {:>9.2f}  {:>8} {:>8}\n", crps.sparewell,
                           crps.calendar, crps.clinic_weibull,
                           percent(wear::skill(crps.sparewell, crps.calendar)),
                           percent(wear::skill(crps.sparewell, crps.clinic_weibull)));
}

void print_sentence(const std::string& parts, const BacktestScores& scores) {
  const auto& eighty = scores.coverage[1];
  if (!eighty) return;
  std::cout << fmt::format(
      "{:.0f} in 100 {} ended within their 8-in-10 span ({:.0f} to {:.0f} %).\n",
      100 * eighty->share, parts, 100 * eighty->low, 100 * eighty->high);
}

void print_table(const Backtest& backtest) {
  std::cout << fmt::format("{:48}  {:-^29}  {:-^17}\n", "", " error in days ", " error saved ");
  std::cout << fmt::format("{:<8} {:>6} {:>7} {:>8} {:>8} {:>8}  {:>9} {:>9} {:>9}  {:>8} {:>8}\n",
                           "kind", "units", "worn", "in 50 %", "in 80 %", "in 95 %", "sparewell",
                           "calendar", "weibull", "calendar", "weibull");
  for (const auto& [kind, scores] : backtest.kinds) print_row(word(kind), scores);
  print_row("all", backtest.all);
}

void print_words(const Backtest& backtest) {
  std::cout << fmt::format(
      "Forecasts as they would have been made on {} days from {} to {}, against what happened up "
      "to {}.\nIn 50, 80, 95 %: parts that ended within the span that was to hold so many. Error: "
      "CRPS within {} days;\nless is better. Calendar: one fixed interval a kind. Weibull: one law "
      "a kind for the whole clinic.\n\n",
      backtest.origins.size(), iso_text(backtest.origins.front()),
      iso_text(backtest.origins.back()), iso_text(backtest.today), backtest.horizon_days);
  print_table(backtest);
  std::cout << '\n';
  for (const auto& [kind, scores] : backtest.kinds) {
    print_sentence(fmt::format("{}s", word(kind)), scores);
  }
  print_sentence("parts of all kinds", backtest.all);
}

int run(const Context& context, const wear::BacktestPlan& plan) {
  const Date today = context.today();
  const auto store = context.open(store::OpenMode::existing);
  const auto backtest =
      wear::run_backtest(store::load_clinic(*store->read()), desk::built_in_priors(), today, plan);
  if (!backtest) {
    if (context.json) print(json_of(Backtest{today, plan.horizon_days, {}, {}, {}}));
    std::cerr << backtest.error().sentence << '\n';
    return done_with_findings;
  }
  if (context.json) {
    print(json_of(*backtest));
  } else {
    print_words(*backtest);
  }
  return done;
}

}  // namespace

void add_backtest(Command& app, Context& context) {
  auto* command = app.add_subcommand(
      "backtest", "How good the forecasts would have been, from the clinic's own history");
  const auto plan = std::make_shared<wear::BacktestPlan>();
  command->add_option("--origins", plan->origins, "Days in the past to forecast from")
      ->within(1, 100)
      ->shows_default();
  command->add_option("--horizon", plan->horizon_days, "Days that each forecast is scored for")
      ->within(1, 3660)
      ->shows_default();
  command->callback(
      [&context, plan] { context.run = [&context, plan] { return run(context, *plan); }; });
}

}  // namespace sparewell::batch
