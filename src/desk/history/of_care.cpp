#include "clinic/say.hpp"
#include "desk/history/entries.hpp"
#include "desk/length_words.hpp"
#include "desk/reaction_log.hpp"
#include "desk/usage_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

void add_measurements(History& history, const Day& day, const PatientRef& patient) {
  for (const Measurement& each : day.clinic().measurements) {
    if (each.patient != patient) continue;
    history.push_back({Happening::measurements, each.measured_on, each.side,
                       say("Circumference {}, {} above the end",
                           length_words(each.circumference_cm), short_length_words(each.at_cm)),
                       std::nullopt});
  }
}

void add_sensitivities(History& history, const Day& day, const PatientRef& patient) {
  for (const Sensitivity& each : day.clinic().sensitivities) {
    if (each.patient != patient) continue;
    auto words = say("Sensitivity noted: {}", each.substance);
    for (const auto& more : {each.reaction, each.established_by}) {
      if (!more.empty()) words += fmt::format(", {}", more);
    }
    history.push_back({Happening::sensitivities, each.noted_on, std::nullopt, words, std::nullopt});
  }
  for (const SensitivityDecision& each : day.clinic().decisions) {
    if (each.patient != patient) continue;
    history.push_back({Happening::sensitivities, each.decided_on, std::nullopt,
                       say("{} decided that {} may be worn although {} is noted: {}",
                           each.decided_by, each.item.text, each.substance, each.reason),
                       std::nullopt});
    if (!each.withdrawn_on) continue;
    history.push_back(
        {Happening::sensitivities, each.withdrawn_on, std::nullopt,
         say("The decision about {} and {} was withdrawn", each.item.text, each.substance),
         std::nullopt});
  }
}

void add_reactions(History& history, const Day& day, const PatientRef& patient) {
  for (const Reaction& each : day.clinic().reactions) {
    if (each.patient != patient) continue;
    auto words = say("Reaction began: {}", reaction_words(each));
    if (!each.note.empty()) words += fmt::format("; {}", each.note);
    history.push_back({Happening::reactions, each.began_on, each.side, words, std::nullopt});
    if (!each.ended_on) continue;
    history.push_back({Happening::reactions, each.ended_on, each.side,
                       say("Last day of the reaction that began on {}", date_words(each.began_on)),
                       std::nullopt});
  }
}

}  // namespace

void add_care_history(History& history, const Day& day, const PatientRef& patient) {
  add_measurements(history, day, patient);
  for (const Usage& each : day.clinic().usage) {
    if (each.patient != patient) continue;
    history.push_back({Happening::use, each.from_date, std::nullopt,
                       say("Use from this day on: {}", list_words(stated_use(each))),
                       std::nullopt});
  }
  add_sensitivities(history, day, patient);
  add_reactions(history, day, patient);
}

}  // namespace sparewell::desk
