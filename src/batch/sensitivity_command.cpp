#include <algorithm>
#include <iostream>

#include <fmt/format.h>

#include "batch/context.hpp"
#include "batch/finding_json.hpp"
#include "desk/issue_words.hpp"
#include "desk/patient_card.hpp"
#include "desk/reexamined_words.hpp"
#include "desk/substance_table.hpp"
#include "desk/wear_decision.hpp"

namespace sparewell::batch {
namespace {

struct Options {
  std::string patient;
  std::string item;
  bool everyone = false;
};

/// What is asked about: one item, or what the patient wears, each item once.
std::vector<const Item*> items_asked(const Clinic& clinic, const ClinicIndex& index,
                                     const Options& options, Date today) {
  if (!options.item.empty()) {
    const Item* item = index.item({options.item});
    if (item == nullptr) {
      throw WrongUse{
          fmt::format("The catalogue has no item '{}'; check the code.", options.item)};
    }
    return {item};
  }
  std::vector<const Item*> items;
  for (const Unit& unit : clinic.units) {
    if (unit.patient.text != options.patient || !unit.in_use_on(today)) continue;
    const Item* item = index.item(unit.item);
    if (item != nullptr && std::ranges::find(items, item) == items.end()) items.push_back(item);
  }
  return items;
}

int print_verdicts(const Context& context, const Options& options) {
  const auto clinic = context.clinic_on(context.today());
  const ClinicIndex index{clinic};
  if (index.patient({options.patient}) == nullptr) {
    throw WrongUse{fmt::format("There is no patient '{}'; check the reference.", options.patient)};
  }
  const auto substances = desk::substances_of(clinic, context.today());
  Json rows = Json::array();
  bool against = false;
  for (const Item* item : items_asked(clinic, index, options, context.today())) {
    for (const auto& verdict :
         care::check_sensitivities(*item, {options.patient}, clinic.sensitivities, *substances,
                                   clinic.decisions, context.today())) {
      against = against || care::gravity(verdict) != care::Gravity::note;
      rows.push_back(json_of(verdict, *item));
      if (context.json) continue;
      const auto finding = desk::sensitivity_finding(verdict, *item);
      std::cout << fmt::format("{}: {}. {}\n", item->code.text,
                               desk::gravity_words(finding.gravity), finding.words);
    }
  }
  if (context.json) {
    print({{"today", json_of(context.today())},
           {"patient_ref", options.patient},
           {"verdicts", std::move(rows)},
           {"caution", desk::care_caution()}});
  } else {
    if (rows.empty()) std::cout << "The patient wears no part that the catalogue knows.\n";
    std::cout << desk::care_caution() << '\n';
  }
  return against ? done_with_findings : done;
}

int print_everyone(const Context& context) {
  const auto clinic = context.clinic_on(context.today());
  const ClinicIndex index{clinic};
  const auto substances = desk::substances_of(clinic, context.today());
  desk::Reexamined all;
  for (auto& each : care::examine(clinic, *substances, context.today())) {
    ++all.parts;
    if (each.verdict.verdict <= care::Verdict::possible_conflict) {
      all.newly.push_back({std::move(each), std::nullopt});
    }
  }
  std::ranges::stable_sort(all.newly, {},
                           [](const auto& each) { return each.now.verdict.verdict; });
  Json rows = json_of(all, index)["newly_against"];
  for (auto& row : rows) row.erase("before");
  if (context.json) {
    print({{"today", json_of(context.today())},
           {"pairs_examined", all.parts},
           {"against", rows},
           {"caution", desk::care_caution()}});
  } else {
    for (const auto& row : rows) {
      std::cout << fmt::format("{}, {} ({}): {}\n", row["patient_ref"].get<std::string>(),
                               row["item_code"].get<std::string>(),
                               row["holding"].get<std::string>(),
                               row["words"].get<std::string>());
    }
    if (rows.empty()) std::cout << "No part is in conflict with a recorded sensitivity.\n";
    std::cout << desk::care_caution() << '\n';
  }
  return rows.empty() ? done : done_with_findings;
}

Json json_of(const SensitivityDecision& decision) {
  return {{"patient_ref", decision.patient.text},
          {"item_code", decision.item.text},
          {"substance", decision.substance},
          {"verdict", word(decision.verdict)},
          {"decided_on", batch::json_of(decision.decided_on)},
          {"decided_by", decision.decided_by},
          {"reason", decision.reason},
          {"withdrawn_on", batch::json_of(decision.withdrawn_on)}};
}

int print_decisions(const Context& context, const std::vector<SensitivityDecision>& decisions,
                    const char* none) {
  Json rows = Json::array();
  for (const auto& decision : decisions) {
    rows.push_back(json_of(decision));
    if (!context.json) std::cout << desk::decision_words(decision) << '\n';
  }
  if (context.json) {
    print({{"decisions", std::move(rows)}, {"caution", desk::care_caution()}});
  } else {
    std::cout << (decisions.empty() ? none : desk::care_caution().c_str()) << '\n';
  }
  return done;
}

int list(const Context& context, const std::string& patient) {
  auto decisions = context.clinic_on(context.today()).decisions;
  std::erase_if(decisions, [&](const auto& each) {
    return !patient.empty() && each.patient.text != patient;
  });
  return print_decisions(context, decisions, "No decision is recorded.");
}

int decide(const Context& context, const desk::DecisionRequest& request, bool withdraw) {
  const auto store = context.open(store::OpenMode::existing);
  const auto work = store->begin_write(context.author(
      fmt::format("{}: {}", withdraw ? "decision withdrawn" : "decision", request.reason)));
  std::vector<SensitivityDecision> made;
  if (withdraw) {
    auto withdrawn = desk::withdraw(*work, request, context.today());
    if (!withdrawn) throw WrongUse{withdrawn.error().sentence};
    made = std::move(*withdrawn);
  } else {
    auto decided = desk::decide(*work, request, context.today());
    if (!decided) throw WrongUse{decided.error().sentence};
    made.push_back(std::move(*decided));
  }
  work->commit();
  return print_decisions(context, made, "");
}

void add_decision_options(Command& command, desk::DecisionRequest& request) {
  command.add_option("--patient", request.patient, "The patient's reference")->required();
  command.add_option("--item", request.item, "The item's code")->required();
  command.add_option("--substance", request.substance,
                     "As recorded, where several sensitivities speak against the item");
}

void add_decision(Command& app, Context& context) {
  auto* command = app.add_subcommand(
      "decision", "A clinician's decision that a part may be worn although a sensitivity is "
                  "recorded");
  command->require_subcommand();
  command->fallthrough();
  const auto asked = std::make_shared<std::string>();
  auto* listed = command->add_subcommand("list", "The decisions, those withdrawn included");
  listed->add_option("--patient", *asked, "Of this patient alone");
  listed->callback(
      [&context, asked] { context.run = [&context, asked] { return list(context, *asked); }; });
  const auto request = std::make_shared<desk::DecisionRequest>();
  auto* added = command->add_subcommand("add", "Record a decision");
  add_decision_options(*added, *request);
  added->add_option("--by", request->by, "The clinician who decides")->required();
  added->add_option("--because", request->reason, "The reason, which is kept")->required();
  added->callback([&context, request] {
    context.run = [&context, request] { return decide(context, *request, false); };
  });
  const auto taken_back = std::make_shared<desk::DecisionRequest>();
  auto* withdrawn = command->add_subcommand("withdraw", "Withdraw a decision; it stays on record");
  add_decision_options(*withdrawn, *taken_back);
  withdrawn->add_option("--because", taken_back->reason, "For the change log");
  withdrawn->callback([&context, taken_back] {
    context.run = [&context, taken_back] { return decide(context, *taken_back, true); };
  });
}

}  // namespace

void add_sensitivity(Command& app, Context& context) {
  const auto options = std::make_shared<Options>();
  auto* command = app.add_subcommand(
      "sensitivity", "May a patient wear a part? The verdicts with their paths");
  command->add_option("--patient", options->patient, "The patient's reference");
  command->add_option("--item", options->item, "This item (default: all that the patient wears)");
  command->add_flag("--everyone", options->everyone,
                    "Every part worn, booked or on order for a patient who may not stand it");
  command->callback([&context, options] {
    context.run = [&context, options] {
      if (options->everyone) return print_everyone(context);
      if (options->patient.empty()) throw WrongUse{"Name a patient with --patient REF."};
      return print_verdicts(context, *options);
    };
  });
  add_decision(app, context);
}

}  // namespace sparewell::batch
