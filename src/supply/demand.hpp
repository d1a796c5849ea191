/// Pieces of one item that its users will need until a date.
#pragma once

#include <array>
#include <map>
#include <optional>
#include <unordered_map>
#include <vector>

#include "clinic/clinic.hpp"
#include "supply/lead_time.hpp"
#include "supply/moments.hpp"
#include "supply/new_starts.hpp"
#include "supply/pairs.hpp"
#include "supply/pmf.hpp"
#include "supply/renewal.hpp"
#include "supply/season.hpp"
#include "supply/successors.hpp"
#include "wear/unit_life.hpp"

namespace sparewell::supply {

using Lives = std::vector<const wear::LifeOfUnit*>;

/// The units in use by the item that follows when they are replaced, mostly their own; in an order
/// that does not depend on that of the records. Refers to `lives`.
[[nodiscard]] std::unordered_map<ItemCode, Lives> lives_by_item(
    const Clinic& clinic, const std::vector<wear::LifeOfUnit>& lives);

/// Units in use of one other item, whose patients may change to this one: all that a patient has in
/// use on a side at once.
struct ChangingFrom {
  std::map<int, int> wearers = {};  ///< by units in use on a side
  wear::OtherEndings others;
  /// That the next item is this one, by position in changing_reasons.
  std::array<double, changing_reasons.size()> chance_of_this{};

  /// That a wearer leaves the item for this one in the `days` days after today. What was replaced
  /// by its own item before does not matter: see renewal.hpp.
  [[nodiscard]] double chance(double days) const;
  [[nodiscard]] int units() const;
  /// Pieces of this item that are needed when each wearer changes with `chance`.
  [[nodiscard]] Pmf pieces(double chance) const;
};
using ChangesToItem = std::unordered_map<ItemCode, std::vector<ChangingFrom>>;

/// Who may change to each item, in order of the item they come from.
[[nodiscard]] ChangesToItem changes_to_items(const Clinic& clinic,
                                             const std::unordered_map<ItemCode, Lives>& lives,
                                             Date today);

/// What asks for one item. Refers to lists that must outlive it.
struct DemandSources {
  const Lives& users;                        ///< units of the item in use
  const std::vector<ChangingFrom>& changes;  ///< users of other items who may change to it
  NewStarts starts = {};                     ///< patients who begin with it
  const Season* season = nullptr;            ///< of its kind, where there is one
  Pairs pairs = {};                          ///< of users that may be replaced together
  double together = 0;                       ///< chance that a pair is
};

/// Demand for one item over intervals that begin after today. What asks for it is taken as
/// independent given the end of the interval; a random end (an order day plus the lead time) is
/// common to all and is therefore mixed last. So is what is not known of the law of wear, which
/// brings all users' replacements sooner or later at once. Until they no longer need the item
/// (LifeOfUnit::needed_until) users need a piece when theirs is worn
/// out, lost or recalled, sooner or later with the season, and two where a pair is replaced
/// together; users of other items at most one, when they change to this. Keeps what it has
/// computed; not for sharing between threads.
class ItemDemand {
 public:
  ItemDemand(Date today, DemandSources sources, FreshCountsCache& fresh);

  /// The same demand, of which nothing has been computed yet.
  [[nodiscard]] ItemDemand anew() const { return ItemDemand{today_, sources_, *fresh_}; }
  /// Prepares for being asked for many days of a range: they are then interpolated between a few of
  /// them (moments.hpp), which is quicker.
  void expect_days(Date first, Date last);
  /// Pieces needed in (today, end].
  [[nodiscard]] const Pmf& until(Date end);
  /// Pieces needed in (today, from + lead time].
  [[nodiscard]] Pmf until_arrival(Date from, const LeadTime& lead);
  /// Of the mean of until_arrival: for losses, recalls, and changes from other items.
  [[nodiscard]] double not_for_wear(Date from, const LeadTime& lead) const;
  /// Of the mean of until_arrival: for patients who begin.
  [[nodiscard]] double for_new_patients(Date from, const LeadTime& lead) const;
  /// How much faster than on average over the year parts are replaced until then; 1 without a
  /// season.
  [[nodiscard]] double season_factor(Date end) const;

 private:
  /// Tails of every part at a few moments, from which those of the days between are interpolated.
  struct Spread {
    /// Where those of one part lie: for each moment in turn so many tails; none for a part whose
    /// rate of wear changes on the way.
    struct OfPart {
      std::size_t from = 0;
      std::size_t count = 0;
      bool known = false;
    };
    Moments moments;
    std::vector<OfPart> parts;
    std::vector<double> tails;

    void add(const std::vector<std::vector<double>>& at_moments);
    /// Of a part that is known, the sum of its tails at the moments with such weights, in `sum`.
    void interpolate(std::size_t part, const std::vector<double>& weights,
                     std::vector<double>& sum) const;
  };

  /// In so many days after today.
  [[nodiscard]] const Pmf& until_day(int day);
  /// Of the users, so many days after today as wear counts them.
  [[nodiscard]] Pmf of_users(double at) const;
  [[nodiscard]] std::vector<double> tails_of(std::size_t part, double days) const;
  /// Days after today, as wear counts them, until which the unit's patient needs the item.
  [[nodiscard]] double needed_days(const wear::LifeOfUnit& unit) const;
  /// Prepares for the days from first to last after today.
  void spread_over(double first, double last);

  /// So many days after today, as wear counts them when it follows a season.
  [[nodiscard]] double clock(int day) const;

  Date today_;
  DemandSources sources_;
  FreshCountsCache* fresh_;
  std::vector<wear::LifeOfUnit> firsts_;  ///< of each pair the first to be worn out
  std::vector<bool> in_pair_;             ///< by position among the users
  std::optional<Spread> spread_;
  std::map<int, Pmf> known_;  ///< by days after today
};

/// Chance that the unit is worn out, lost or recalled, and so needs its item, before something
/// ordered on `from` arrives.
[[nodiscard]] double chance_needed_by_arrival(const wear::LifeOfUnit& unit, Date from,
                                              const LeadTime& lead);

/// No less than that, and quicker; see at_most_replaced.
[[nodiscard]] double at_most_needed_by_arrival(const wear::LifeOfUnit& unit, Date from,
                                               const LeadTime& lead);

/// Chance that the unit is worn out before something ordered on `from` arrives.
[[nodiscard]] double chance_worn_by_arrival(const wear::UnitLife& life, Date from,
                                            const LeadTime& lead);

}  // namespace sparewell::supply
