#include "desk/issue_check.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/assessment.hpp"
#include "desk/billing/code_tables.hpp"
#include "desk/billing/limit_words.hpp"
#include "desk/issue_pieces.hpp"
#include "desk/issue_words.hpp"
#include "desk/substance_table.hpp"
#include "desk/suspension_table.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using care::Gravity;

/// The median life of such a part in reference use, by the built-in beliefs.
std::optional<int> expected_days(const Item& item) {
  std::optional<int> any;
  for (const auto& prior : built_in_priors().lives) {
    if (prior.kind != item.kind || (prior.material && *prior.material != item.material)) continue;
    const int median = static_cast<int>(std::lround(prior.median_days));
    if (prior.material) return median;
    any = median;
  }
  return any;
}

/// A piece cannot be in two hands.
void check_serial(IssueCheck& check, const Clinic& clinic) {
  const auto& question = check.question;
  if (question.serial.empty()) return;
  for (const auto& unit : clinic.units) {
    if (unit.item != question.item || unit.serial != question.serial) continue;
    if (!unit.in_use_on(question.day)) continue;
    check.findings.push_back({"serial_in_use", Gravity::ask, true,
                              say("Serial number {} is recorded as in use by {}; end that "
                                  "part or look at the number again.",
                                  unit.serial, unit.patient.text)});
  }
}

std::string label_words(Date label, const std::optional<Date>& recorded, bool expired) {
  const auto on_label = date_words(label);
  if (!recorded) {
    return expired ? say("The label gives the use-by date {}, which has passed, the records none.",
                         on_label)
                   : say("The label gives the use-by date {}, the records none.", on_label);
  }
  const auto on_record = date_words(*recorded);
  return expired ? say("The label gives the use-by date {}, which has passed, the records {}.",
                       on_label, on_record)
                 : say("The label gives the use-by date {}, the records {}.", on_label, on_record);
}

/// What the label says beside what is recorded of the lot.
void check_label(IssueCheck& check) {
  const auto& use_by = check.question.label_use_by;
  if (!use_by) return;
  for (const auto& piece : check.taken) {
    if (piece.lot.use_by == use_by) continue;
    const bool expired = *use_by < check.question.day;
    check.findings.push_back({expired ? "expired" : "label_differs",
                              expired ? Gravity::stops : Gravity::ask, true,
                              label_words(*use_by, piece.lot.use_by, expired)});
    return;
  }
}

void check_patient_and_side(IssueCheck& check, const Clinic& clinic, const ClinicIndex& index) {
  const auto& patient = check.question.patient;
  const Side side = check.question.side;
  const Date day = check.question.day;
  auto& found = check.findings;
  const auto& rules = built_in_chain_rules();
  for (const auto fault :
       care::check_patient(rules, clinic, index, patient, side, check.item, day)) {
    found.push_back(patient_finding(fault, side, check.item));
  }
  const auto substances = substances_of(clinic, day);
  for (const auto& verdict : care::check_sensitivities(check.item, patient, clinic.sensitivities,
                                                       *substances, clinic.decisions, day)) {
    found.push_back(sensitivity_finding(verdict, check.item));
  }
  found.push_back(fit_finding(care::check_fit(check.item, patient, side, clinic.measurements, day),
                              check.item, side));
  const auto worn = care::worn_on(clinic, index, patient, side, day);
  const auto suspension = worn.prosthesis ? worn.prosthesis->suspension : Suspension::pin;
  for (const auto& mismatch : care::check_attachment(rules, check.item, worn)) {
    found.push_back(attachment_finding(mismatch, check.item, suspension));
  }
  if (!worn.prosthesis) return;
  check.prosthesis = *worn.prosthesis;
  found.push_back(chain_finding(care::missing_after(rules, check.item, worn), suspension));
}

void check_taken(IssueCheck& check, const Clinic& clinic) {
  const bool own = check.question.expected_days.has_value();
  const auto life = own ? check.question.expected_days : expected_days(check.item);
  for (const auto& found : care::check_pieces(clinic, check.item, check.taken, check.question.day,
                                              life, clinic.places)) {
    check.findings.push_back(piece_finding(found, check.question.day, life, own));
  }
  check_label(check);
  check_serial(check, clinic);
}

/// What is billed is what is handed out for good: lent parts are not.
void check_limits(IssueCheck& check, const Clinic& clinic, const ClinicIndex& index) {
  const auto& question = check.question;
  const auto limits =
      billing::check_before_issue(clinic, index, rule_book_of(clinic), question.patient,
                                  question.side, check.item, question.quantity, question.day);
  std::ranges::move(limit_findings(limits, check.item, question.side, check.patient.payer),
                    std::back_inserter(check.findings));
}

Expected<IssueCheck> begun(const ClinicIndex& index, const IssueQuestion& question) {
  const auto* patient = index.patient(question.patient);
  if (!patient) {
    return refuse(say("There is no patient '{}'; check the reference.", question.patient.text));
  }
  const auto* item = index.item(question.item);
  if (!item) {
    return refuse(say("The catalogue has no item '{}'; check the code.", question.item.text));
  }
  return IssueCheck{question, *patient, *item, std::nullopt, {}, {}};
}

}  // namespace

Gravity IssueCheck::gravity() const {
  return findings.empty() ? Gravity::note : findings.front().gravity;
}

bool IssueCheck::cannot_be_done() const {
  return std::ranges::any_of(findings, [](const IssueFinding& finding) {
    return finding.gravity == Gravity::stops && !finding.can_override;
  });
}

namespace {

/// Without `pieces`, those that the shelf gives.
Expected<IssueCheck> checked(const Clinic& clinic, const IssueQuestion& question,
                             std::optional<std::vector<StockLevel>> pieces) {
  const ClinicIndex index{clinic};
  auto check = begun(index, question);
  if (!check) return check;
  if (question.quantity < 1) return refuse(say("At least one piece must be handed over."));
  if (!question.serial.empty() && question.quantity != 1) {
    return refuse(say("A serial number is that of one piece; issue the pieces one by one."));
  }
  IssueCheck& made = *check;
  if (pieces) {
    made.taken = std::move(*pieces);
  } else {
    auto from_shelf = pieces_for(clinic, question);
    made.taken = std::move(from_shelf.taken);
    made.findings = std::move(from_shelf.findings);
    check_limits(made, clinic, index);
  }
  check_taken(made, clinic);
  check_patient_and_side(made, clinic, index);
  std::ranges::stable_sort(made.findings, {}, &IssueFinding::gravity);
  return check;
}

}  // namespace

Expected<IssueCheck> check_issue(const Clinic& clinic, const IssueQuestion& question) {
  return checked(clinic, question, std::nullopt);
}

Expected<IssueCheck> check_pieces(const Clinic& clinic, const IssueQuestion& question,
                                  std::vector<StockLevel> pieces) {
  return checked(clinic, question, std::move(pieces));
}

Expected<IssueCheck> check_without_piece(const Clinic& clinic, const IssueQuestion& question) {
  const ClinicIndex index{clinic};
  auto check = begun(index, question);
  if (!check) return check;
  check_patient_and_side(*check, clinic, index);
  std::ranges::stable_sort(check->findings, {}, &IssueFinding::gravity);
  return check;
}

std::string gravity_words(Gravity gravity) {
  if (gravity == Gravity::stops) return said("Stops");
  return gravity == Gravity::ask ? said("Ask first") : said("Note");
}

std::string words_of(const IssueCheck& check, Gravity gravity) {
  std::vector<std::string> words;
  for (const auto& finding : check.findings) {
    if (finding.gravity == gravity) words.push_back(finding.words);
  }
  return fmt::format("{}", fmt::join(words, " "));
}

std::string gravity_key(Gravity gravity) {
  if (gravity == Gravity::stops) return "stops";
  return gravity == Gravity::ask ? "ask" : "note";
}

}  // namespace sparewell::desk
