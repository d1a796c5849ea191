#include "batch/finding_json.hpp"

#include <fmt/format.h>

#include "desk/issue_words.hpp"
#include "desk/reexamined_words.hpp"
#include "desk/wear_decision.hpp"

namespace sparewell::batch {

Json json_of(const desk::PatientFinding& finding) {
  return {{"patient_ref", finding.patient.text},
          {"side", finding.side ? Json(word(*finding.side)) : Json()},
          {"item_code", finding.item.empty() ? Json() : Json(finding.item.text)},
          {"topic", desk::topic_words(finding.topic)},
          {"missing", finding.missing ? Json(word(*finding.missing)) : Json()},
          {"substance", finding.substance.empty() ? Json() : Json(finding.substance)},
          {"decided", finding.decided},
          {"kind", finding.finding.key},
          {"gravity", desk::gravity_key(finding.finding.gravity)},
          {"words", finding.finding.words}};
}

std::string line_of(const desk::PatientFinding& finding) {
  std::string place = finding.patient.text;
  if (finding.side) place += fmt::format(", {}", word(*finding.side));
  if (!finding.item.empty()) place += fmt::format(", {}", finding.item.text);
  return fmt::format("{}: {}. {}", place, desk::gravity_words(finding.finding.gravity),
                     finding.finding.words);
}

Json json_of(const care::SubstancePath& path) {
  Json steps = Json::array();
  for (std::size_t i = 0; i < path.names.size(); ++i) {
    Json step{{"name", path.names[i]}};
    if (i > 0) step["relation"] = word(path.relations[i - 1]);
    steps.push_back(std::move(step));
  }
  return steps;
}

Json json_of(const care::SensitivityVerdict& verdict, const Item& item) {
  const auto finding = desk::sensitivity_finding(verdict, item);
  const auto& recorded = verdict.recorded;
  return {{"item_code", item.code.text},
          {"substance", recorded.substance},
          {"reaction", recorded.reaction},
          {"established_by", recorded.established_by},
          {"noted_on", json_of(recorded.noted_on)},
          {"verdict", finding.key},
          {"gravity", desk::gravity_key(finding.gravity)},
          {"path", json_of(verdict.path)},
          {"assumed_from_material", verdict.assumed},
          {"unknown_substances", verdict.unknown},
          {"decision", verdict.decided ? Json(desk::decision_words(*verdict.decided)) : Json()},
          {"words", finding.words}};
}

Json json_of(const desk::Reexamined& change, const ClinicIndex& index) {
  Json newly = Json::array();
  for (const auto& each : change.newly) {
    const Item* item = index.item(each.now.item);
    static const Item unknown;
    Json row = json_of(each.now.verdict, item != nullptr ? *item : unknown);
    row["item_code"] = each.now.item.text;
    row["patient_ref"] = each.now.patient.text;
    row["side"] = each.now.side ? Json(word(*each.now.side)) : Json();
    row["holding"] = desk::holding_words(each.now.holding);
    row["before"] = each.before ? Json(word(*each.before)) : Json();
    newly.push_back(std::move(row));
  }
  return {{"done", change.done},
          {"patients_examined", change.patients},
          {"pairs_examined", change.parts},
          {"newly_against", std::move(newly)}};
}

}  // namespace sparewell::batch
