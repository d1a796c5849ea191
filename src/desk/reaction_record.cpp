#include "desk/reaction_record.hpp"

#include <algorithm>

#include "clinic/say.hpp"
#include "desk/reaction_log.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

std::string refusal_of(const store::Snapshot& snapshot, const Reaction& reaction, Date today) {
  if (!snapshot.patient(reaction.patient)) {
    return say("There is no patient '{}'; check the reference.", reaction.patient.text);
  }
  if (reaction.began_on > today) {
    return say("The reaction's first day, {}, is still to come; correct it.",
               iso_text(reaction.began_on));
  }
  if (reaction.ended_on && *reaction.ended_on < reaction.began_on) {
    return say("The reaction's last day, {}, is before its first, {}; correct one of them.",
               iso_text(*reaction.ended_on), iso_text(reaction.began_on));
  }
  if (reaction.ended_on && *reaction.ended_on > today) {
    return say("The reaction's last day, {}, is still to come; leave it out.",
               iso_text(*reaction.ended_on));
  }
  if (reaction.signs.empty()) {
    return said(
        "Say what was seen: itching, redness, blisters, swelling, rash, or in your own words.");
  }
  return {};
}

bool same_key(const Reaction& a, const Reaction& b) {
  return a.patient == b.patient && a.side == b.side && a.began_on == b.began_on;
}

}  // namespace

Expected<Reaction> record_reaction(store::UnitOfWork& work, Reaction reaction, Date today) {
  if (auto words = refusal_of(work, reaction, today); !words.empty()) return refuse(words);
  for (const auto& row : work.all<Reaction>()) {
    if (!same_key(row.record, reaction)) continue;
    return refuse(say("A reaction of {} from {} on is recorded already: {}.", reaction.patient.text,
                      date_words(reaction.began_on), reaction_words(row.record)));
  }
  work.put(reaction);
  return reaction;
}

Expected<Reaction> end_reaction(store::UnitOfWork& work, const ReactionChoice& choice,
                                Date last_day, Date today) {
  std::vector<store::Row<Reaction>> answers;
  for (auto& row : work.all<Reaction>()) {
    const Reaction& each = row.record;
    if (each.patient.text != choice.patient || (choice.side && each.side != choice.side)) continue;
    if (choice.began_on ? each.began_on == *choice.began_on : !each.ended_on) {
      answers.push_back(std::move(row));
    }
  }
  if (answers.empty()) {
    return refuse(
        choice.began_on
            ? say("No reaction of {} from that day on is recorded; check the reference and the "
                  "day.",
                  choice.patient)
            : say("No reaction of {} that lasts is recorded; check the reference and the day.",
                  choice.patient));
  }
  if (answers.size() > 1) {
    return refuse(say("{} reactions of {} answer; name the first day and the side of one.",
                      answers.size(), choice.patient));
  }
  Reaction changed = answers.front().record;
  changed.ended_on = last_day;
  if (auto words = refusal_of(work, changed, today); !words.empty()) return refuse(words);
  work.put_instead(answers.front().id, changed);
  return changed;
}

std::vector<std::string> signs_in(const std::string& text) {
  std::vector<std::string> made;
  for (auto& sign : parts_of_list(text, ",;")) {
    if (std::ranges::find(made, sign) == made.end()) made.push_back(std::move(sign));
  }
  return made;
}

}  // namespace sparewell::desk
