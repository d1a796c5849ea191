#include "desk/wear_decision.hpp"

#include <algorithm>

#include "clinic/say.hpp"
#include "desk/sensitivity_work.hpp"
#include "desk/substance_table.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

/// What speaks against the item, once for each substance: of several days the gravest answer.
std::vector<care::SensitivityVerdict> verdicts_against(const Clinic& clinic, const Item& item,
                                                       const DecisionRequest& request, Date today) {
  std::vector<care::SensitivityVerdict> made;
  for (auto& each : care::check_sensitivities(item, {request.patient}, clinic.sensitivities,
                                              *substances_of(clinic, today))) {
    const auto& substance = each.recorded.substance;
    if (each.verdict > Verdict::not_declared) continue;
    if (!request.substance.empty() && substance != request.substance) continue;
    const bool is_known = std::ranges::any_of(
        made, [&](const auto& other) { return other.recorded.substance == substance; });
    if (!is_known) made.push_back(std::move(each));
  }
  return made;
}

std::string without_full_stop(std::string text) {
  while (!text.empty() && (text.back() == '.' || text.back() == ' ')) text.pop_back();
  return text;
}

/// The one verdict that is decided about.
Expected<care::SensitivityVerdict> chosen(const Clinic& clinic, const Item& item,
                                          const DecisionRequest& request, Date today) {
  auto against = verdicts_against(clinic, item, request, today);
  if (against.size() == 1) return std::move(against.front());
  if (!against.empty()) {
    std::vector<std::string> names;
    for (const auto& each : against) names.push_back(each.recorded.substance);
    return refuse(say("Several sensitivities speak against {}: {}; name one of them.",
                      item.code.text, list_words(names)));
  }
  if (!request.substance.empty()) {
    return refuse(
        say("No recorded sensitivity of {} to {} speaks against {}; there is nothing to decide.",
            request.patient, request.substance, item.code.text));
  }
  return refuse(say("No recorded sensitivity of {} speaks against {}; there is nothing to decide.",
                    request.patient, item.code.text));
}

}  // namespace

Expected<SensitivityDecision> decide(store::UnitOfWork& work, const DecisionRequest& request,
                                     Date today) {
  if (!work.patient({request.patient})) {
    return refuse(say("There is no patient '{}'; check the reference.", request.patient));
  }
  const auto item = work.item({request.item});
  if (!item) {
    return refuse(say("The catalogue has no item '{}'; check the code.", request.item));
  }
  const auto reason = without_full_stop(request.reason);
  if (request.by.empty() || reason.empty()) {
    return refuse(say("Name both the clinician who decides and the reason."));
  }
  const Clinic clinic = read_for_examination(work);
  const auto verdict = chosen(clinic, item->record, request, today);
  if (!verdict) return tl::unexpected(verdict.error());
  const SensitivityDecision made{{request.patient},
                                 {request.item},
                                 verdict->recorded.substance,
                                 verdict->verdict,
                                 today,
                                 request.by,
                                 reason,
                                 std::nullopt};
  // One of the same day is put right by the later one.
  for (const auto& row : work.all<SensitivityDecision>()) {
    const auto& other = row.record;
    if (other.patient != made.patient || other.item != made.item) continue;
    if (other.substance != made.substance || other.decided_on != today) continue;
    work.put_instead(row.id, made);
    return made;
  }
  work.put(made);
  return made;
}

Expected<std::vector<SensitivityDecision>> withdraw(store::UnitOfWork& work,
                                                    const DecisionRequest& request, Date today) {
  std::vector<SensitivityDecision> made;
  for (auto& row : work.all<SensitivityDecision>()) {
    auto& decision = row.record;
    if (decision.patient.text != request.patient || decision.item.text != request.item) continue;
    if (!request.substance.empty() && decision.substance != request.substance) continue;
    if (!decision.in_force_on(today)) continue;
    decision.withdrawn_on = today;
    work.put_instead(row.id, decision);
    made.push_back(std::move(decision));
  }
  if (made.empty()) {
    return refuse(say("No decision about {} and {} is in force; look at the list of decisions.",
                      request.patient, request.item));
  }
  return made;
}

std::string decision_words(const SensitivityDecision& decision) {
  auto words =
      say("{} decided on {} that {} may wear {} although {} is recorded ({}): {}.",
          decision.decided_by, date_words(decision.decided_on), decision.patient.text,
          decision.item.text, decision.substance, shown_word(decision.verdict), decision.reason);
  if (decision.withdrawn_on) {
    words += say(" Withdrawn on {}.", date_words(*decision.withdrawn_on));
  }
  return words;
}

}  // namespace sparewell::desk
