#include <iostream>

#include <fmt/format.h>

#include "batch/context.hpp"
#include "batch/finding_json.hpp"
#include "desk/alternative_parts.hpp"
#include "desk/patient_card.hpp"

namespace sparewell::batch {
namespace {

struct Options {
  std::string patient;
  std::string side;
  std::string item;
  std::string missing;
};

Json json_of(const desk::AlternativePart& part) {
  const auto& ranked = part.ranked;
  Json missing = Json::array();
  for (const auto function : ranked.missing) missing.push_back(word(function));
  return {{"item_code", part.item.code.text},
          {"suits", part.key},
          {"verdict", word(ranked.verdict.verdict)},
          {"on_hand", ranked.supply.on_hand},
          {"unit_cost", part.item.unit_cost ? Json(plain_text(*part.item.unit_cost)) : Json()},
          {"currency", part.item.unit_cost ? Json(part.item.unit_cost->currency.code) : Json()},
          {"expected_days",
           ranked.supply.expected_days ? Json(*ranked.supply.expected_days) : Json()},
          {"still_missing", std::move(missing)},
          {"changes", part.changes},
          {"words", part.words}};
}

int print_alternatives(const Context& context, const Options& options) {
  desk::AlternativesQuestion question;
  question.patient = {options.patient};
  question.side = *parse_word<Side>(options.side);
  question.item = {options.item};
  if (!options.missing.empty()) {
    question.function = parse_word<care::Function>(options.missing);
    if (!question.function) {
      throw WrongUse{fmt::format("--missing '{}' is none of: {}.", options.missing,
                                 allowed_words<care::Function>())};
    }
  }
  const auto assessment = context.forecast();
  const auto found = desk::find_alternatives(assessment, question);
  if (!found) throw WrongUse{found.error().sentence};
  if (context.json) {
    Json rows = Json::array();
    for (const auto& part : found->parts) rows.push_back(json_of(part));
    const auto& out = found->left_out;
    print({{"patient_ref", options.patient},
           {"side", options.side},
           {"alternatives", std::move(rows)},
           {"left_out",
            {{"conflict", out.conflict},
             {"size", out.size},
             {"thread", out.thread},
             {"suspension", out.suspension}}},
           {"caution", desk::care_caution()}});
  } else {
    int rank = 0;
    for (const auto& part : found->parts) {
      std::cout << fmt::format("{}. {}: {}{}\n", ++rank, part.item.code.text, part.words,
                               part.changes.empty()
                                   ? std::string{}
                                   : fmt::format(" What would change: {}.", part.changes));
    }
    if (found->parts.empty()) std::cout << "No other item could do this work.\n";
    const auto out = desk::left_out_words(found->left_out);
    if (!out.empty()) std::cout << out << '\n';
    std::cout << desk::care_caution() << '\n';
  }
  return found->parts.empty() ? done_with_findings : done;
}

int print_findings(const Context& context, const std::string& patient) {
  const auto clinic = context.clinic_on(context.today());
  if (!patient.empty() && ClinicIndex{clinic}.patient({patient}) == nullptr) {
    throw WrongUse{fmt::format("There is no patient '{}'; check the reference.", patient)};
  }
  const auto findings = patient.empty()
                            ? desk::findings_of_everyone(clinic, context.today())
                            : desk::findings_of(clinic, {patient}, context.today());
  Json rows = Json::array();
  bool grave = false;
  for (const auto& finding : findings) {
    grave = grave || finding.finding.gravity != care::Gravity::note;
    rows.push_back(batch::json_of(finding));
    if (!context.json) std::cout << line_of(finding) << '\n';
  }
  if (context.json) {
    print({{"today", batch::json_of(context.today())},
           {"findings", std::move(rows)},
           {"caution", desk::care_caution()}});
  } else {
    if (findings.empty()) std::cout << "Nothing was found.\n";
    std::cout << desk::care_caution() << '\n';
  }
  return grave ? done_with_findings : done;
}

}  // namespace

void add_alternatives(Command& app, Context& context) {
  const auto options = std::make_shared<Options>();
  auto* command = app.add_subcommand(
      "alternatives", "Other items that could do a part's work, the most suitable first");
  command->add_option("--patient", options->patient, "The patient's reference")->required();
  command->add_option("--side", options->side, "left or right")
      ->required()
      ->one_of({"left", "right"});
  command->add_option("--item", options->item, "The item that is worn");
  command->add_option("--missing", options->missing,
                      "Or the function that nothing does, such as lock");
  command->callback([&context, options] {
    context.run = [&context, options] { return print_alternatives(context, *options); };
  });
  const auto patient = std::make_shared<std::string>();
  auto* findings = app.add_subcommand(
      "findings", "What the checks find about what is worn: sensitivities, sizes, suspension, lots");
  findings->add_option("--patient", *patient,
                       "One patient, notes included (default: everyone, without notes)");
  findings->callback([&context, patient] {
    context.run = [&context, patient] { return print_findings(context, *patient); };
  });
}

}  // namespace sparewell::batch
