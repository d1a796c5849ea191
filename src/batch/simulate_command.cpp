#include <iostream>

#include <fmt/format.h>

#include "batch/context.hpp"
#include "batch/json.hpp"
#include "desk/play_rows.hpp"
#include "desk/play_words.hpp"

namespace sparewell::batch {
namespace {

namespace play = supply::play;

struct SimulateOptions {
  int months = 12;
  int futures = 12;
  double service = 0;  ///< 0: the clinic's own
};

std::string_view policy_word(play::Policy policy) {
  switch (policy) {
    case play::Policy::sparewell:
      return "sparewell";
    case play::Policy::by_cost:
      return "by_cost";
    case play::Policy::min_max:
      return "min_max";
    case play::Policy::when_empty:
      return "when_empty";
  }
  return "";
}

std::string_view rounding_word(play::Rounding rounding) {
  switch (rounding) {
    case play::Rounding::down:
      return "down";
    case play::Rounding::nearest:
      return "nearest";
    case play::Rounding::up:
      return "up";
  }
  return "";
}

Json json_of(const play::Totals& run, const Currency& currency) {
  const auto major = [&](double minor) { return minor * Money{1, currency}.major(); };
  const auto each = [&](auto sum) { return static_cast<double>(sum) / run.worlds; };
  Json row{{"policy", policy_word(run.setting.policy)}};
  if (run.setting.policy == play::Policy::min_max) {
    row["factor"] = run.setting.step;
    row["rounding"] = rounding_word(run.setting.rounding);
  } else if (run.setting.policy != play::Policy::when_empty) {
    row["service_target"] = run.setting.step;
  }
  row["fill_rate"] = run.fill_rate();
  row["pieces"] = each(run.pieces);
  row["patients"] = each(run.patients);
  row["kept_waiting"] = each(run.kept_waiting);
  row["mean_wait_days"] = run.mean_wait();
  row["longest_wait_days"] = run.longest_wait;
  row["rush_orders"] = each(run.rush);
  row["mean_stock"] = major(run.stock);
  row["expired"] = major(each(run.expired));
  row["orders"] = each(run.orders);
  row["freight"] = major(each(run.freight));
  return row;
}

Json json_of(const std::optional<play::Saving>& saving, const Currency& currency) {
  if (!saving) return nullptr;
  const double unit = Money{1, currency}.major();
  const auto or_null = [](const std::optional<double>& value) {
    return value ? Json(*value) : Json(nullptr);
  };
  return {{"fill_rate", saving->fill_rate}, {"sparewell", saving->ours * unit},
          {"min_max", saving->peer * unit}, {"share", saving->share},
          {"low", or_null(saving->low)},    {"high", or_null(saving->high)}};
}

Json json_of(const std::vector<play::Played>& all) {
  Json rows = Json::array();
  for (const play::Played& played : all) {
    Json row{{"currency", played.currency.code},
             {"items", played.items},
             {"plays", played.worlds},
             {"counted_from", batch::json_of(played.period.counted_from)},
             {"until", batch::json_of(played.period.end)},
             {"less_money_than_min_max", json_of(played.saving, played.currency)},
             {"by_cost_less_than_min_max", json_of(played.saving_by_cost, played.currency)},
             {"runs", Json::array()}};
    for (const play::Totals& run : played.runs)
      row["runs"].push_back(json_of(run, played.currency));
    rows.push_back(std::move(row));
  }
  return rows;
}

void print_json(const play::Simulation& made) {
  print({{"today", batch::json_of(made.today)},
         {"months", made.plan.months},
         {"service_target", made.plan.service},
         {"past", json_of(made.past)},
         {"past_refused", made.past_refused.empty() ? Json(nullptr) : Json(made.past_refused)},
         {"futures", json_of(made.futures)},
         {"notes", desk::play_notes(made)}});
}

void print_row(const play::Totals& run, const Currency& currency) {
  const auto each = [&](auto sum) { return static_cast<double>(sum) / run.worlds; };
  std::cout << fmt::format(
      "  {:<22} {:>8} {:>14} {:>9.1f} {:>7.1f} {:>8} {:>6.1f} {:>13} {:>7.0f} {:>12}\n",
      desk::setting_words(run.setting), desk::share_words(run.fill_rate()),
      desk::whole_amount(run.stock, currency), each(run.kept_waiting), run.mean_wait(),
      run.longest_wait, each(run.rush), desk::whole_amount(each(run.expired), currency),
      each(run.orders), desk::whole_amount(each(run.freight), currency));
}

void print_played(const play::Played& played, const play::SimulationPlan& plan) {
  std::cout << fmt::format("{}, {} items, {} to {}\n{}\n\n",
                           desk::played_title(played, plan.months), played.items,
                           iso_text(played.period.counted_from), iso_text(played.period.end),
                           desk::saving_words(played, plan.service));
  const auto by_cost = desk::by_cost_words(played);
  if (!by_cost.empty()) std::cout << by_cost << "\n\n";
  std::cout << fmt::format("  {:<22} {:>8} {:>14} {:>9} {:>7} {:>8} {:>6} {:>13} {:>7} {:>12}\n",
                           "", "at once", "in stock", "waiting", "days", "longest", "rush",
                           "expired", "orders", "freight");
  for (const std::size_t i : desk::runs_to_show(played)) {
    print_row(played.runs[i], played.currency);
  }
  std::cout << '\n';
}

int run(const Context& context, const SimulateOptions& options) {
  const Date today = context.today();
  const Clinic clinic = context.clinic_on(today);
  play::SimulationPlan plan;
  plan.months = options.months;
  plan.futures = options.futures;
  plan.service = options.service > 0 ? options.service : clinic.settings.service_target;
  if (!(plan.service > 0 && plan.service < 1)) {
    throw WrongUse{"The service target must lie above 0 and below 1; give one with --service."};
  }
  const auto made = play::simulate(clinic, desk::built_in_priors(), today, plan);
  if (!made) {
    if (context.json)
      print_json(play::Simulation{today, plan, {}, made.error().sentence, {}, 0, 0});
    std::cerr << made.error().sentence << '\n';
    return done_with_findings;
  }
  if (context.json) {
    print_json(*made);
    return done;
  }
  for (const auto* all : {&made->past, &made->futures}) {
    for (const play::Played& played : *all) print_played(played, plan);
  }
  for (const std::string& note : desk::play_notes(*made)) std::cout << note << '\n';
  return done;
}

}  // namespace

void add_simulate(Command& app, Context& context) {
  auto* command = app.add_subcommand(
      "simulate",
      "Money in stock against patients served: this order policy beside min-max levels and "
      "ordering when empty, played over the past and over drawn futures");
  const auto options = std::make_shared<SimulateOptions>();
  command->add_option("--months", options->months, "Months to play")
      ->within(1, 60)
      ->shows_default();
  command->add_option("--futures", options->futures, "Futures to draw")
      ->within(0, 500)
      ->shows_default();
  command
      ->add_option("--service", options->service,
                   "Service target to compare at (default: the clinic's)")
      ->within(0.01, 0.9999);
  command->callback([&context, options] {
    context.run = [&context, options] { return run(context, *options); };
  });
}

}  // namespace sparewell::batch
