#include "supply/clinic_demand.hpp"

#include "clinic/in_parallel.hpp"

namespace sparewell::supply {
namespace {

/// What `by_item` has for the item; an empty list when it has nothing.
template <class List>
const List& list_of(const std::unordered_map<ItemCode, List>& by_item, const ItemCode& item) {
  static const List nothing;
  const auto found = by_item.find(item);
  return found == by_item.end() ? nothing : found->second;
}

}  // namespace

ClinicDemand::ClinicDemand(const Clinic& clinic, const std::vector<wear::LifeOfUnit>& lives,
                           Date today)
    : clinic_{&clinic}, today_{today} {
  constexpr std::size_t tasks = 3;

  in_parallel(tasks, [&](std::size_t task) {
    if (task == 0) {
      users_ = lives_by_item(clinic, lives);
      changes_ = changes_to_items(clinic, users_, today);
      for (const auto& [item, users] : users_) {
        auto pairs = pairs_among(clinic, users);
        if (!pairs.empty()) pairs_.emplace(item, std::move(pairs));
      }
    } else if (task == 1) {
      starts_.emplace(clinic, today);
    } else {
      seasons_ = supply::seasons(clinic, today);
      together_ = chances_together(clinic, today);
    }
  });
}

const Lives& ClinicDemand::users(const ItemCode& item) const {
  return list_of(users_, item);
}

void ClinicDemand::leave_to_chance(const ItemCode& item, Lives users) {
  pairs_[item] = pairs_among(*clinic_, users);
  users_[item] = std::move(users);
}

DemandSources ClinicDemand::sources(const Item& item) const {
  const auto season = seasons_.find(item.kind);
  DemandSources made{list_of(users_, item.code), list_of(changes_, item.code), starts_->of(item),
                     season == seasons_.end() ? nullptr : &season->second};
  const auto together = together_.find(item.kind);
  if (together != together_.end() && together->second >= least_together) {
    made.pairs = list_of(pairs_, item.code);
    made.together = together->second;
  }
  return made;
}

ItemDemand ClinicDemand::of(const Item& item) const {
  return ItemDemand{today_, sources(item), fresh_};
}

}  // namespace sparewell::supply
