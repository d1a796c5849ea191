#include "batch/check_json.hpp"

#include "desk/patient_card.hpp"

namespace sparewell::batch {

Json json_of(const desk::IssueCheck& check) {
  Json taken = Json::array();
  for (const auto& piece : check.taken) {
    taken.push_back({{"lot", piece.lot.lot},
                     {"use_by", batch::json_of(piece.lot.use_by)},
                     {"place", piece.place},
                     {"quantity", piece.quantity}});
  }
  Json findings = Json::array();
  for (const auto& finding : check.findings) {
    findings.push_back({{"kind", finding.key},
                        {"gravity", desk::gravity_key(finding.gravity)},
                        {"can_override", finding.can_override},
                        {"words", finding.words}});
  }
  return {{"patient_ref", check.question.patient.text},
          {"side", word(check.question.side)},
          {"item_code", check.question.item.text},
          {"quantity", check.question.quantity},
          {"on", batch::json_of(check.question.day)},
          {"stops", check.stops()},
          {"taken", std::move(taken)},
          {"findings", std::move(findings)},
          {"caution", desk::care_caution()}};
}

}  // namespace sparewell::batch
