/// All that the demand for a clinic's items is made from, gathered once for one day.
#pragma once

#include <map>
#include <optional>
#include <unordered_map>
#include <vector>

#include "supply/demand.hpp"
#include "supply/new_starts.hpp"
#include "supply/season.hpp"

namespace sparewell::supply {

/// Refers to the clinic and to `lives`, which must outlive it. Threads may share it.
class ClinicDemand {
 public:
  /// `lives` of the units in use at the end of `today`.
  ClinicDemand(const Clinic& clinic, const std::vector<wear::LifeOfUnit>& lives, Date today);

  [[nodiscard]] Date today() const { return today_; }
  /// The units of the item in use, in an order that does not depend on that of the records.
  [[nodiscard]] const Lives& users(const ItemCode& item) const;
  /// From now on only these of its users ask for the item by chance; what the others need is
  /// certain and counted elsewhere (booked.hpp). Not while threads share it.
  void leave_to_chance(const ItemCode& item, Lives users);
  /// Demand for the item; one for each thread.
  [[nodiscard]] ItemDemand of(const Item& item) const;
  /// What asks for the item.
  [[nodiscard]] DemandSources sources(const Item& item) const;
  [[nodiscard]] FreshCountsCache& fresh() const { return fresh_; }
  /// The kinds whose replacements follow the season.
  [[nodiscard]] const std::map<Kind, Season>& seasons() const { return seasons_; }

 private:
  const Clinic* clinic_;
  Date today_;
  std::unordered_map<ItemCode, Lives> users_;
  ChangesToItem changes_;
  std::optional<StartsOfClinic> starts_;  // always there once constructed
  std::map<Kind, Season> seasons_;
  std::unordered_map<ItemCode, Pairs> pairs_;
  std::map<Kind, double> together_;
  mutable FreshCountsCache fresh_;  // guards itself
};

}  // namespace sparewell::supply
