#include <iostream>
#include <memory>

#include <fmt/format.h>

#include "batch/context.hpp"
#include "batch/json.hpp"
#include "desk/what_if_page.hpp"

namespace sparewell::batch {
namespace {

struct Options {
  std::vector<int> wait;
  std::vector<double> service;
  std::vector<std::string> without;
  std::optional<std::string> budget;
};

Json amounts_json(const std::map<Currency, std::int64_t>& amounts) {
  Json made = Json::object();
  for (const auto& [currency, minor] : amounts) {
    made[currency.code] = Money{minor, currency}.major();
  }
  return made;
}

Json json_of(const desk::Compared& compared) {
  const auto& outcome = compared.outcome;
  Json at_risk = Json::array();
  for (const auto& risk : outcome.at_risk) {
    Json alternatives = Json::array();
    for (const auto& item : risk.alternatives) alternatives.push_back(item.text);
    at_risk.push_back({{"item_code", risk.item.text},
                       {"chance_short", risk.chance_short},
                       {"runs_out", batch::json_of(risk.runs_out)},
                       {"alternatives", std::move(alternatives)}});
  }
  return {{"decision", compared.decision.title},
          {"lines", outcome.lines},
          {"pieces", outcome.pieces},
          {"goods", amounts_json(outcome.goods)},
          {"freight", amounts_json(outcome.freight)},
          {"lines_without_price", outcome.without_price},
          {"short_before", outcome.short_before},
          {"short_after", outcome.short_after},
          {"patients_late", outcome.patients_late},
          {"items_below_target", outcome.items_below_target},
          {"at_risk", std::move(at_risk)}};
}

void print_table(const std::vector<desk::Compared>& compared) {
  const auto table = desk::what_if_table(compared);
  const auto print_row = [](const auto& text_of, std::size_t count) {
    std::cout << fmt::format("{:<46}", text_of(0));
    for (std::size_t i = 1; i < count; ++i) std::cout << fmt::format("  {:>24}", text_of(i));
    std::cout << '\n';
  };
  const std::size_t count = table.columns().size();
  print_row([&](std::size_t i) { return table.columns()[i].title; }, count);
  for (std::size_t row = 0; row < table.size(); ++row) {
    print_row([&](std::size_t i) { return table.at(row).cells[i].text; }, count);
  }
  for (const auto& each : compared) {
    const auto sentences = desk::risk_sentences(each);
    if (sentences.empty()) continue;
    std::cout << fmt::format("\n{}\n", each.decision.title);
    for (const auto& sentence : sentences) std::cout << fmt::format("  {}\n", sentence);
  }
  std::cout << fmt::format("\n{}\n", desk::what_if_note());
}

int run(const Context& context, const Options& options) {
  desk::WhatIfQuestions questions{options.wait, options.service, {}};
  auto assessment = context.forecast();
  if (options.budget) {
    assessment.budget =
        amount_option("--budget", *options.budget, assessment.clinic.settings.currency);
  }
  const ClinicIndex index{assessment.clinic};
  for (const auto& name : options.without) {
    if (index.supplier({name}) == nullptr) {
      throw WrongUse{fmt::format("--without '{}': there is no such supplier.", name)};
    }
    questions.without.push_back({name});
  }
  if (questions.wait_days.empty() && questions.service_targets.empty() &&
      questions.without.empty()) {
    questions.wait_days = {7};
  }
  const auto compared = desk::compare(assessment, questions);
  if (!context.json) {
    print_table(compared);
    return done;
  }
  Json made = Json::array();
  for (const auto& each : compared) made.push_back(json_of(each));
  print({{"today", batch::json_of(assessment.today)}, {"decisions", std::move(made)}});
  return done;
}

}  // namespace

void add_what_if(Command& app, Context& context) {
  auto* command = app.add_subcommand(
      "what-if", "What ordering later, another target or the loss of a supplier would mean");
  const auto options = std::make_shared<Options>();
  command->add_option("--wait", options->wait, "Order so many days later (7 when nothing is asked)")
      ->within(1, 365);
  command->add_option("--service", options->service, "Another chance of not running out")
      ->within(0.5, 0.9999);
  command->add_option("--without", options->without, "Nothing can be ordered from this supplier");
  command->add_option("--budget", options->budget,
                      "The most that the goods may cost, whatever is decided");
  command->callback([&context, options] {
    context.run = [&context, options] { return run(context, *options); };
  });
}

}  // namespace sparewell::batch
