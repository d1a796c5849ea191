#include <iostream>
#include <memory>

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
          {"booked", line.reason.booked},
          {"booked_later", line.reason.booked_later},
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

struct Options {
  std::optional<std::string> budget;
  std::optional<double> service_target;
};

supply::OrderPolicy policy_with(const ClinicSettings& settings, const Options& options) {
  auto policy = supply::policy_of(settings);
  if (options.service_target) {
    policy.service_target = *options.service_target;
    policy.costs.shortage.reset();  // what is asked for goes before the costs
  }
  if (options.budget) policy.budget = amount_option("--budget", *options.budget, settings.currency);
  return policy;
}

constexpr double told_chance = 0.1;

std::vector<desk::HeldNeed> told_needs(const desk::Assessment& assessment) {
  auto needs = assessment.held_needs;
  std::erase_if(needs, [](const desk::HeldNeed& need) { return need.chance < told_chance; });
  return needs;
}

void print_held(const desk::Assessment& assessment) {
  const auto needs = told_needs(assessment);
  if (assessment.held.empty() && needs.empty()) return;
  std::cout << "\nHeld back\n";
  std::string before;  // parts alike in everything are told once
  for (const auto& need : needs) {
    const Unit& unit = assessment.clinic.units[need.unit];
    const auto words = fmt::format("  {} {} {}, {:.0f} % worn out within {} days: {}\n",
                                   unit.patient.text, word(unit.side), unit.item.text,
                                   100 * need.chance, desk::told_days, need.words);
    if (words != before) std::cout << words;
    before = words;
  }
  for (const auto& [line, reason] : assessment.held) {
    std::cout << fmt::format("  {:>4} x {:<16} {}\n", line.quantity, line.item.text,
                             desk::held_words(reason));
  }
}

int run(const Context& context, const Options& options) {
  const Date day = context.today();
  Clinic clinic = context.clinic_on(day);
  const auto policy = policy_with(clinic.settings, options);
  const auto assessment = desk::assess(std::move(clinic), desk::built_in_priors(), day, policy);
  if (!context.json) {
    print_words(assessment);
    print_held(assessment);
    print_notes(assessment.fitted);
    return done;
  }
  Json held = Json::array();
  for (const auto& [line, reason] : assessment.held) {
    held.push_back(json_of(line, assessment.clinic));
    held.back()["held"] = desk::held_words(reason);
  }
  Json lines = Json::array();
  for (const auto& line : assessment.proposal) lines.push_back(json_of(line, assessment.clinic));
  Json needs = Json::array();
  for (const auto& need : assessment.held_needs) {
    const Unit& unit = assessment.clinic.units[need.unit];
    needs.push_back({{"patient_ref", unit.patient.text},
                     {"side", word(unit.side)},
                     {"item_code", unit.item.text},
                     {"reason", need.sensitivity ? "sensitivity" : "size"},
                     {"forecast", need.forecast},
                     {"chance_outside", need.forecast ? Json(need.chance_outside) : Json()},
                     {"next_item", need.next_item ? Json(need.next_item->text) : Json()},
                     {"chance_90_days", need.chance},
                     {"words", need.words}});
  }
  print({{"today", batch::json_of(assessment.today)},
         {"lines", std::move(lines)},
         {"held", std::move(held)},
         {"held_needs", std::move(needs)},
         {"notes", desk::fit_notes(assessment.fitted)}});
  return done;
}

}  // namespace

void add_propose(Command& app, Context& context) {
  auto* command = app.add_subcommand("propose", "What to order today, and why");
  const auto options = std::make_shared<Options>();
  command->add_option("--budget", options->budget,
                      "The most that the goods may cost, in the clinic's currency: spent where it "
                      "prevents most shortages");
  command
      ->add_option("--service", options->service_target,
                   "Another chance of not running out than the clinic's, such as 0.9")
      ->within(0.5, 0.9999);
  command->callback([&context, options] {
    context.run = [&context, options] { return run(context, *options); };
  });
}

}  // namespace sparewell::batch
