/// Pieces of one item that its users will need until a date.
#pragma once

#include <map>
#include <unordered_map>
#include <vector>

#include "clinic/clinic.hpp"
#include "supply/lead_time.hpp"
#include "supply/pmf.hpp"
#include "supply/renewal.hpp"
#include "wear/unit_life.hpp"

namespace sparewell::supply {

using Lives = std::vector<const wear::LifeOfUnit*>;

/// The units in use of each item, in an order that does not depend on that of the records.
/// Refers to `lives`.
[[nodiscard]] std::unordered_map<ItemCode, Lives> lives_by_item(
    const Clinic& clinic, const std::vector<wear::LifeOfUnit>& lives);

/// Demand for one item over intervals that begin after today. Units are taken as independent given
/// the end of the interval; a random end (an order day plus the lead time) is common to all of them
/// and is therefore mixed last. Keeps what it has computed; not for sharing between threads.
class ItemDemand {
 public:
  ItemDemand(const Lives& lives, FreshCountsCache& fresh) : lives_{&lives}, fresh_{&fresh} {}

  /// Pieces needed in (today, end].
  [[nodiscard]] const Pmf& until(Date end);
  /// Pieces needed in (today, from + lead time].
  [[nodiscard]] Pmf until_arrival(Date from, const LeadTime& lead);

 private:
  const Lives* lives_;
  FreshCountsCache* fresh_;
  std::map<Date, Pmf> known_;
};

/// Chance that the unit is worn out before something ordered on `from` arrives.
[[nodiscard]] double chance_worn_by_arrival(const wear::UnitLife& life, Date from,
                                            const LeadTime& lead);

}  // namespace sparewell::supply
