#include <iostream>

#include <fmt/format.h>

#include "batch/billing_json.hpp"
#include "batch/context.hpp"
#include "desk/billing/payer_rules.hpp"

namespace sparewell::batch {
namespace {

struct Options {
  desk::RuleRequest request;
  std::string rule;
};

Json json_of(const PayerRule& rule) {
  return {{"payer", rule.payer},
          {"code", rule.code},
          {"rule", word(rule.rule)},
          {"number", rule.number ? Json(*rule.number) : Json()},
          {"days", rule.days ? Json(*rule.days) : Json()},
          {"amount", exact(rule.amount)},
          {"words", rule.words},
          {"valid_from", batch::json_of(rule.valid_from)},
          {"valid_to", batch::json_of(rule.valid_to)},
          {"source", rule.source},
          {"says", desk::rule_words(rule)}};
}

std::string line_of(const PayerRule& rule) {
  return fmt::format("{}, {}: {} ({})", rule.payer.empty() ? "Every payer" : rule.payer,
                     rule.code.empty() ? "every code" : rule.code, desk::rule_words(rule),
                     rule.source);
}

int list(const Context& context, const Options& options) {
  const auto clinic = context.clinic_on(context.today());
  Json rows = Json::array();
  for (const auto& listed : desk::listed_rules(clinic, context.today())) {
    if (!options.request.payer.empty() && listed.rule.payer != options.request.payer) continue;
    if (!options.request.code.empty() && listed.rule.code != options.request.code) continue;
    if (!context.json) {
      std::cout << line_of(listed.rule) << (listed.own ? " The clinic's own." : "")
                << (listed.in_force ? "" : " Not in force.") << '\n';
      continue;
    }
    Json row = json_of(listed.rule);
    row["own"] = listed.own;
    row["in_force"] = listed.in_force;
    rows.push_back(std::move(row));
  }
  if (context.json) print({{"rules", std::move(rows)}});
  return done;
}

int set(const Context& context, const Options& options) {
  auto request = options.request;
  request.rule = *parse_word<PayerRuleKind>(options.rule);
  const auto store = context.open(store::OpenMode::existing);
  const auto work = store->begin_write(context.author("a payer's rule was set"));
  const auto rule = desk::set_rule(*work, request);
  if (!rule) throw WrongUse{rule.error().sentence};
  work->commit();
  if (context.json) {
    print(json_of(*rule));
  } else {
    std::cout << line_of(*rule) << '\n';
  }
  return done;
}

void add_place(Command& command, Options& options) {
  command.add_option("--payer", options.request.payer, "The payer (default: every payer)");
  command.add_option("--code", options.request.code, "The billing code (default: every code)");
}

}  // namespace

void add_payer_rule(Command& app, Context& context) {
  auto* command = app.add_subcommand("payer-rule", "What payers require, and what they pay");
  command->require_subcommand();
  const auto options = std::make_shared<Options>();
  auto& request = options->request;
  auto* lists = command->add_subcommand("list", "All rules, with their sources");
  add_place(*lists, *options);
  lists->callback([&context, options] {
    context.run = [&context, options] { return list(context, *options); };
  });
  auto* sets = command->add_subcommand("set", "Add a rule of the clinic's own, or change it");
  add_place(*sets, *options);
  std::vector<std::string> kinds;
  for (const auto each : words<PayerRuleKind>()) kinds.emplace_back(each);
  sets->add_option("--rule", options->rule, allowed_words<PayerRuleKind>())
      ->required()
      ->one_of(kinds);
  sets->add_option("--number", request.number, "Pieces that are allowed");
  sets->add_option("--days", request.days, "The span that it speaks of");
  sets->add_option("--amount", request.amount, "Paid for a piece, in the clinic's currency");
  sets->add_option("--words", request.words, "The paper asked for, or the code of later pieces");
  sets->add_option("--from", request.valid_from, "The first day on which it holds");
  sets->add_option("--to", request.valid_to, "The last day on which it holds");
  sets->add_option("--source", request.source, "Where it is known from")->required();
  sets->callback([&context, options] {
    context.run = [&context, options] { return set(context, *options); };
  });
}

}  // namespace sparewell::batch
