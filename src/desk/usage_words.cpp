#include "desk/usage_words.hpp"

#include <algorithm>

#include "clinic/say.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

std::vector<Usage> usage_of(const Clinic& clinic, const PatientRef& patient) {
  std::vector<Usage> found;
  for (const auto& usage : clinic.usage) {
    if (usage.patient == patient) found.push_back(usage);
  }
  std::ranges::stable_sort(found, {}, &Usage::from_date);
  return found;
}

/// Later statements over earlier ones; empty fields keep what was known.
void put_over(Usage& known, const Usage& later) {
  if (later.activity) known.activity = later.activity;
  if (later.kneeling_hours) known.kneeling_hours = later.kneeling_hours;
  if (later.wear_hours) known.wear_hours = later.wear_hours;
  if (later.sweating) known.sweating = later.sweating;
  if (later.impact_sport) known.impact_sport = later.impact_sport;
}

}  // namespace

std::vector<std::string> stated_use(const Usage& usage) {
  std::vector<std::string> parts;
  if (usage.activity) parts.push_back(say("activity {}", shown_word(*usage.activity)));
  if (usage.wear_hours) parts.push_back(say("worn {:g} h a day", *usage.wear_hours));
  if (usage.kneeling_hours) parts.push_back(say("kneels {:g} h a day", *usage.kneeling_hours));
  if (usage.sweating) parts.push_back(say("sweating {}", shown_word(*usage.sweating)));
  if (usage.impact_sport)
    parts.push_back(*usage.impact_sport ? said("impact sport") : said("no impact sport"));
  return parts;
}

std::string usage_words(const Clinic& clinic, const PatientRef& patient, Date today) {
  Usage known;
  std::string ahead;
  for (const auto& usage : usage_of(clinic, patient)) {
    if (usage.from_date <= today) {
      put_over(known, usage);
    } else {
      ahead += say(" From {}: {}.", date_words(usage.from_date), list_words(stated_use(usage)));
    }
  }
  const auto now = stated_use(known);
  if (now.empty()) return said("Use is not recorded; reference use is assumed.") + ahead;
  return capitalised(list_words(now)) + "." + ahead;
}

std::vector<std::string> prosthesis_words(const Clinic& clinic, const PatientRef& patient) {
  std::vector<std::string> in_use;
  std::vector<std::string> ended;
  for (const auto& made : clinic.prostheses) {
    if (made.patient != patient) continue;
    auto text =
        say("{}: {} prosthesis, {}, {} suspension, delivered {}",
            capitalised(shown_word(made.side)), shown_word(made.stage), shown_word(made.level),
            shown_word(made.suspension), date_words(made.delivered_on));
    if (made.ended_on) {
      ended.push_back(text + say(", no longer used since {}.", date_words(*made.ended_on)));
    } else {
      in_use.push_back(text + ".");
    }
  }
  in_use.insert(in_use.end(), ended.begin(), ended.end());
  return in_use;
}

std::vector<std::string> sensitivity_words(const Clinic& clinic, const PatientRef& patient) {
  std::vector<std::string> noted;
  for (const auto& sensitivity : clinic.sensitivities) {
    if (sensitivity.patient != patient) continue;
    auto text = capitalised(sensitivity.substance);
    if (!sensitivity.reaction.empty()) text += ": " + sensitivity.reaction;
    text += sensitivity.established_by.empty() ? said(", how it was established is not recorded")
                                               : ", " + sensitivity.established_by;
    if (sensitivity.noted_on) text += say(", noted {}", date_words(*sensitivity.noted_on));
    noted.push_back(text + ".");
  }
  if (noted.empty()) {
    noted.emplace_back(
        said("None is recorded. That does not mean that there is none: ask the patient."));
  }
  return noted;
}

}  // namespace sparewell::desk
