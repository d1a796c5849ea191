#include <iostream>

#include <fmt/format.h>

#include "batch/context.hpp"
#include "batch/json.hpp"
#include "desk/effect_words.hpp"
#include "desk/order_reasons.hpp"

namespace sparewell::batch {
namespace {

Json json_of(const supply::ProposalLine& line, const Clinic& clinic) {
  return {{"supplier", line.supplier.text},
          {"item_code", line.item.text},
          {"place", line.place},
          {"quantity", line.quantity},
          {"unit_cost", batch::json_of(line.unit_cost)},
          {"on_hand", line.on_hand},
          {"in_transit", line.in_transit},
          {"on_order", line.on_order},
          {"reserved", line.reserved},
          {"target", line.target},
          {"order_by", batch::json_of(line.order_by)},
          {"chance_short", line.chance_short},
          {"why", desk::why(line, clinic)}};
}

void print_words(const desk::Assessment& assessment) {
  if (assessment.proposal.empty()) std::cout << "Nothing needs to be ordered.\n";
  const supply::ProposalLine* before = nullptr;
  for (const auto& line : assessment.proposal) {
    if (before == nullptr || before->supplier != line.supplier) {
      std::cout << fmt::format("{}{}\n", before == nullptr ? "" : "\n", line.supplier.text);
    }
    before = &line;
    std::cout << fmt::format("  {:>4} x {:<16} order by {}\n       {}\n", line.quantity,
                             line.item.text, iso_text(line.order_by),
                             desk::why(line, assessment.clinic));
  }
}

int run(const Context& context) {
  const auto assessment = context.assess();
  if (!context.json) {
    print_words(assessment);
    print_notes(assessment.fitted);
    return done;
  }
  Json lines = Json::array();
  for (const auto& line : assessment.proposal) lines.push_back(json_of(line, assessment.clinic));
  print({{"today", batch::json_of(assessment.today)},
         {"lines", std::move(lines)},
         {"notes", desk::fit_notes(assessment.fitted)}});
  return done;
}

}  // namespace

void add_propose(CLI::App& app, Context& context) {
  auto* command = app.add_subcommand("propose", "What to order today, and why");
  command->callback([&context] { context.run = [&context] { return run(context); }; });
}

}  // namespace sparewell::batch
