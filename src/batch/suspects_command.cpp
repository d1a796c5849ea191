#include <iostream>

#include <fmt/format.h>

#include "batch/context.hpp"
#include "batch/json.hpp"
#include "desk/substance_table.hpp"
#include "desk/suspect_words.hpp"

namespace sparewell::batch {
namespace {

const char* key_of(care::Basis basis) {
  switch (basis) {
    case care::Basis::declared:
      return "declared";
    case care::Basis::assumed:
      return "assumed";
    default:
      return "may_contain";
  }
}

const char* key_of(desk::Telling telling) {
  switch (telling) {
    case desk::Telling::no_reaction:
      return "no_reaction";
    case desk::Telling::no_contrast:
      return "no_contrast";
    case desk::Telling::too_little:
      return "too_little";
    default:
      return "leads";
  }
}

Json json_of(const care::DaySpans& spans) {
  Json made = Json::array();
  for (const auto& span : spans) {
    made.push_back(
        {{"from", batch::json_of(span.from)}, {"until", batch::json_of(span.until - days{1})}});
  }
  return made;
}

Json json_of(const std::optional<care::RateRatio>& ratio) {
  if (!ratio) return nullptr;
  const auto number = [](const std::optional<double>& value) {
    return value ? Json(*value) : Json(nullptr);
  };
  return {
      {"estimate", number(ratio->estimate)}, {"low", ratio->low}, {"high", number(ratio->high)}};
}

Json json_of(const care::Suspect& suspect) {
  Json alike = Json::array();
  for (const auto& exposure : suspect.alike) {
    Json items = Json::array();
    for (const auto& item : exposure.items) items.push_back(item.text);
    alike.push_back(
        {{"name", exposure.name}, {"basis", key_of(exposure.basis)}, {"items", std::move(items)}});
  }
  return {{"alike", std::move(alike)},
          {"worn", json_of(suspect.alike.front().spans)},
          {"onsets", suspect.counts.onsets},
          {"exposed_onsets", suspect.counts.exposed_onsets},
          {"days", suspect.counts.days},
          {"exposed_days", suspect.counts.exposed_days},
          {"rate_ratio", json_of(suspect.ratio)},
          {"chance", suspect.chance},
          {"words", desk::suspect_words(suspect)}};
}

Json json_of(const care::Suspects& found, const care::Ranking& ranking, const std::string& what) {
  Json suspects = Json::array();
  for (const auto& suspect : ranking.suspects) suspects.push_back(json_of(suspect));
  return {{"telling", key_of(desk::telling(found, ranking))},
          {"words", desk::ranking_verdict(found, ranking, what)},
          {"suspects", std::move(suspects)},
          {"none_of_these", ranking.none}};
}

Json json_of(const care::Suspects& found) {
  Json onsets = Json::array();
  for (const auto& onset : found.onsets) {
    onsets.push_back({{"day", batch::json_of(onset.day)}, {"recorded", onset.recorded}});
  }
  return {{"side", word(found.side)},
          {"onsets", std::move(onsets)},
          {"not_observed", found.not_observed},
          {"at_risk", json_of(found.at_risk)},
          {"substances", json_of(found, found.substances, "substance")},
          {"items", json_of(found, found.items, "part")},
          {"limits", desk::suspect_limits(found)}};
}

int run(const Context& context, const std::string& patient) {
  const auto clinic = context.clinic_on(context.today());
  if (ClinicIndex{clinic}.patient({patient}) == nullptr) {
    throw WrongUse{fmt::format("There is no patient '{}'; check the reference.", patient)};
  }
  const auto found = desk::suspects_of_patient(clinic, {patient}, context.today());
  bool leads = false;
  Json sides = Json::array();
  for (const auto& side : found) {
    leads = leads || desk::telling(side, side.substances) == desk::Telling::leads ||
            desk::telling(side, side.items) == desk::Telling::leads;
    sides.push_back(json_of(side));
    if (!context.json) std::cout << desk::suspects_text(side) << '\n';
  }
  if (context.json) {
    print({{"patient_ref", patient},
           {"sides", std::move(sides)},
           {"cautions", desk::suspect_cautions()}});
  } else {
    if (found.empty()) std::cout << "No part and no reaction is recorded.\n";
    for (const auto& caution : desk::suspect_cautions()) std::cout << caution << '\n';
  }
  return leads ? done_with_findings : done;
}

}  // namespace

void add_suspects(Command& app, Context& context) {
  auto* command = app.add_subcommand(
      "suspects", "What a patient's skin reactions speak for, from what was worn");
  const auto patient = std::make_shared<std::string>();
  command->add_option("--patient", *patient, "The patient's reference")->required();
  command->callback([&context, patient] {
    context.run = [&context, patient] { return run(context, *patient); };
  });
}

}  // namespace sparewell::batch
