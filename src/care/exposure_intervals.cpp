#include "care/exposure_intervals.hpp"

#include <algorithm>
#include <map>

namespace sparewell::care {
namespace {

/// What an item holds, each with how that is known.
std::map<std::string, Basis> held_by(const Item& item, const SubstanceTable& table) {
  std::vector<std::string> held = item.constituents;
  const Basis basis = held.empty() ? Basis::assumed : Basis::declared;
  if (held.empty()) {
    for (const auto& content : table.contents) {
      if (content.material == item.material) held.push_back(content.substance);
    }
  }
  std::map<std::string, Basis> made;
  const auto add = [&](const std::string& name, Basis how) {
    const auto [known, is_new] = made.emplace(table.substances.usual_name(name), how);
    if (!is_new) known->second = std::min(known->second, how);
  };
  for (const auto& name : held) {
    for (const auto& group : table.substances.groups_of(name)) add(group, basis);
    for (const auto& residue : table.substances.may_be_in(name)) add(residue, Basis::may_contain);
  }
  return made;
}

class Gatherer {
 public:
  Gatherer(const ClinicIndex& index, const SubstanceTable& table, Date today)
      : index_{index}, table_{table}, end_{today + days{1}} {}

  void add(const Unit& unit) {
    const Date until = std::min(unit.ended_on.value_or(end_), end_);
    const DaySpan worn{unit.issued_on + days{1}, carried_over(until)};
    in_use_.push_back(worn);
    const Item* item = index_.item(unit.item);
    if (unit.share == 0.0) return;
    if (item != nullptr && !usually_touches_skin(item->kind)) return;
    const auto held = item == nullptr ? std::map<std::string, Basis>{} : held_by(*item, table_);
    if (held.empty()) note(not_known_, unit.item);
    take(items_[unit.item.text], unit.item.text, Basis::declared, unit.item, worn);
    for (const auto& [name, basis] : held) take(substances_[name], name, basis, unit.item, worn);
  }

  Exposures gathered() && {
    Exposures made;
    made.observed = united(std::move(in_use_));
    if (!made.observed.empty()) {
      made.observed = {{made.observed.front().from, made.observed.back().until}};
    }
    made.substances = all_of(substances_);
    made.items = all_of(items_);
    made.not_known = std::move(not_known_);
    return made;
  }

 private:
  [[nodiscard]] Date carried_over(Date until) const {
    return std::min(until + days{carry_over_days}, end_);
  }

  static void note(std::vector<ItemCode>& items, const ItemCode& item) {
    if (std::ranges::find(items, item) == items.end()) items.push_back(item);
  }

  static void take(Exposure& exposure, const std::string& name, Basis basis, const ItemCode& item,
                   const DaySpan& worn) {
    exposure.basis = exposure.name.empty() ? basis : std::min(exposure.basis, basis);
    exposure.name = name;
    exposure.spans.push_back(worn);
    note(exposure.items, item);
  }

  static std::vector<Exposure> all_of(std::map<std::string, Exposure>& gathered) {
    std::vector<Exposure> made;
    for (auto& [name, exposure] : gathered) {
      exposure.spans = united(std::move(exposure.spans));
      made.push_back(std::move(exposure));
    }
    return made;
  }

  const ClinicIndex& index_;
  const SubstanceTable& table_;
  Date end_;  ///< the day after today
  std::vector<DaySpan> in_use_;
  std::map<std::string, Exposure> substances_;
  std::map<std::string, Exposure> items_;
  std::vector<ItemCode> not_known_;
};

}  // namespace

Exposures exposures_of(const Clinic& clinic, const ClinicIndex& index, const PatientRef& patient,
                       Side side, const SubstanceTable& table, Date today) {
  Gatherer gatherer{index, table, today};
  for (const Unit& unit : clinic.units) {
    const bool theirs = unit.patient == patient && unit.side == side;
    if (theirs && unit.issued_on <= today) gatherer.add(unit);
  }
  return std::move(gatherer).gathered();
}

}  // namespace sparewell::care
