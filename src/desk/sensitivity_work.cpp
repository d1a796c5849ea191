#include "desk/sensitivity_work.hpp"

#include <algorithm>
#include <set>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/substance_table.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

template <class Record>
void read(const store::Snapshot& snapshot, std::vector<Record>& records) {
  for (auto& row : snapshot.all<Record>()) records.push_back(std::move(row.record));
}

std::vector<care::Examined> examined(const Clinic& clinic, Date today) {
  return care::examine(clinic, *substances_of(clinic, today), today);
}

/// `before` is what the clinic was known as; `after` has the change.
Reexamined compared(const Clinic& before, const Clinic& after, std::string done, Date today) {
  const auto now = examined(after, today);
  Reexamined made;
  made.done = std::move(done);
  made.parts = static_cast<int>(now.size());
  std::set<PatientRef> patients;
  for (const Sensitivity& each : after.sensitivities) patients.insert(each.patient);
  made.patients = static_cast<int>(patients.size());
  made.newly = care::newly_against(examined(before, today), now);
  return made;
}

bool is_row(const SubstanceRow& a, const SubstanceRow& b) {
  return a.substance == b.substance && a.relation == b.relation && a.other == b.other;
}

std::string relation_words(const SubstanceRow& row) {
  return fmt::format("{} {} {}", row.substance, shown_word(row.relation), row.other);
}

}  // namespace

const std::vector<std::string>& ways_to_establish() {
  static const auto ways = [] {
    std::vector<std::string> made;
    for (const char* way : {to_say("patch test"), to_say("observed"), to_say("reported")}) {
      made.emplace_back(way);
    }
    return made;
  }();
  return ways;
}

Clinic read_for_examination(const store::Snapshot& snapshot) {
  Clinic clinic;
  clinic.settings = snapshot.settings();
  read(snapshot, clinic.items);
  read(snapshot, clinic.patients);
  read(snapshot, clinic.sensitivities);
  read(snapshot, clinic.decisions);
  read(snapshot, clinic.substances);
  read(snapshot, clinic.units);
  read(snapshot, clinic.reservations);
  read(snapshot, clinic.order_lines);
  read(snapshot, clinic.order_pieces);
  return clinic;
}

Expected<Reexamined> set_constituents(store::UnitOfWork& work, const ItemCode& item,
                                      const std::vector<std::string>& constituents, Date today) {
  auto row = work.item(item);
  if (!row) {
    return refuse(say("The catalogue has no item '{}'; check the code.", item.text));
  }
  if (std::ranges::any_of(constituents, &std::string::empty)) {
    return refuse(say("A constituent is empty; write the names with ';' between them."));
  }
  if (row->record.constituents == constituents) {
    return refuse(say("{} declares just that already.", item.text));
  }
  const Clinic before = read_for_examination(work);
  Clinic after = before;
  std::ranges::find(after.items, item, &Item::code)->constituents = constituents;
  row->record.constituents = constituents;
  work.put_instead(row->id, row->record);
  return compared(before, after,
                  constituents.empty()
                      ? say("{} declares nothing now.", item.text)
                      : say("{} declares {} now.", item.text, list_words(constituents)),
                  today);
}

Expected<Reexamined> note_sensitivity(store::UnitOfWork& work, const Sensitivity& sensitivity,
                                      Date today) {
  if (!work.patient(sensitivity.patient)) {
    return refuse(say("There is no patient '{}'; check the reference.", sensitivity.patient.text));
  }
  if (sensitivity.substance.empty()) return refuse(say("Name the substance."));
  const auto& ways = ways_to_establish();
  if (std::ranges::find(ways, sensitivity.established_by) == ways.end()) {
    return refuse(say("'{}' is none of: {}.", sensitivity.established_by, fmt::join(ways, ", ")));
  }
  if (sensitivity.noted_on && *sensitivity.noted_on > today) {
    return refuse(say("{} is still to come; name the day on which it was noted.",
                      iso_text(*sensitivity.noted_on)));
  }
  const Clinic before = read_for_examination(work);
  for (const Sensitivity& each : before.sensitivities) {
    if (each.patient != sensitivity.patient || each.substance != sensitivity.substance) continue;
    if (each.noted_on != sensitivity.noted_on) continue;
    return refuse(say("A sensitivity of {} to {} is recorded for that day already.",
                      each.patient.text, each.substance));
  }
  Clinic after = before;
  after.sensitivities.push_back(sensitivity);
  work.put(sensitivity);
  return compared(before, after,
                  say("The sensitivity of {} to {} is recorded.", sensitivity.patient.text,
                      sensitivity.substance),
                  today);
}

Expected<Reexamined> add_relation(store::UnitOfWork& work, const SubstanceRow& row, Date today) {
  if (row.substance.empty() || row.other.empty()) return refuse(say("Name both substances."));
  if (row.source.empty())
    return refuse(say("Say where that is known from, such as a maker's letter."));
  if (row.substance == row.other) {
    return refuse(say("{} is named twice; name two substances.", row.substance));
  }
  const auto known = built_in_substances().substances.path(row.substance, row.other);
  if (row.relation != SubstanceRelation::may_contain && !known.empty() && known[0].certain()) {
    return refuse(say("The table has that {} leads to {} already.", row.substance, row.other));
  }
  const Clinic before = read_for_examination(work);
  Clinic after = before;
  auto added = row;
  added.withdrawn_on.reset();
  for (const auto& stored : work.all<SubstanceRow>()) {
    if (!is_row(stored.record, row)) continue;
    if (!stored.record.withdrawn_on) {
      return refuse(say("The clinic has noted already: {}.", relation_words(row)));
    }
    work.put_instead(stored.id, added);
    std::erase_if(after.substances, [&](const auto& each) { return is_row(each, row); });
  }
  after.substances.push_back(added);
  if (after.substances.size() > before.substances.size()) work.put(added);
  return compared(before, after, say("Noted: {}.", relation_words(row)), today);
}

Expected<Reexamined> withdraw_relation(store::UnitOfWork& work, const SubstanceRow& row,
                                       Date today) {
  for (auto& stored : work.all<SubstanceRow>()) {
    if (!is_row(stored.record, row) || stored.record.withdrawn_on) continue;
    const Clinic before = read_for_examination(work);
    Clinic after = before;
    std::erase_if(after.substances, [&](const auto& each) { return is_row(each, row); });
    stored.record.withdrawn_on = today;
    work.put_instead(stored.id, stored.record);
    return compared(before, after, say("No longer held for true: {}.", relation_words(row)), today);
  }
  return refuse(
      say("The clinic has not noted that {}; rows that the program is built with "
          "cannot be withdrawn.",
          relation_words(row)));
}

}  // namespace sparewell::desk
