/// Whether a patient's spares will do for a trip, what to pack, and where it comes from.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "care/chain.hpp"
#include "care/travel_kit.hpp"
#include "desk/assessment.hpp"
#include "desk/issue_check.hpp"

namespace sparewell::desk {

/// How the patient's use will differ on the trip; what is empty stays as it is recorded.
struct TripUse {
  std::optional<Activity> activity;
  std::optional<double> kneeling_hours;  ///< a day
  std::optional<double> wear_hours;      ///< a day
  std::optional<Sweating> sweating;      ///< high where it is hot
  std::optional<bool> impact_sport;
  /// Swimming or showering with the prosthesis; counts as high sweating, because no figure is
  /// known.
  bool water = false;
};

struct TravelRequest {
  std::string patient;
  Date departure;
  Date back;
  int delay_days = 0;  ///< that the return may be later
  /// Days after which a part that has failed can be had at the place; empty: not at all.
  std::optional<int> resupply_days = {};
  TripUse use;
  double wanted = 0.95;    ///< chance that the suspension lasts, between 0 and 1
  bool by_pieces = false;  ///< the fewest pieces instead of the lowest cost
};

/// One function of the suspension on one side.
struct TravelPart {
  Side side = Side::left;
  care::Function function = care::Function::locking_liner;
  ItemCode item;  ///< to pack one more of
  care::SpareNeed need;
  /// Of `item`, with the patient on loan until the last day at least: counted as carried.
  std::vector<StockLevel> lent;
  int spares = 0;                ///< to pack beside what is worn
  std::vector<StockLevel> take;  ///< of these, from the shelf; usable on the last day
  int to_order = 0;              ///< of these, not on the shelf
  /// Where some are to be ordered: the last day to do so and have them nine times in ten.
  std::optional<Date> order_by;
  /// What stops such a spare by the checks of an issue: sensitivity, size, thread, chain.
  std::vector<IssueFinding> stops;

  [[nodiscard]] int lent_pieces() const;
  /// Units in use with the function.
  [[nodiscard]] int in_use() const { return need.carried - lent_pieces() + 1; }
};

struct TravelCheck {
  TravelRequest request;
  Date last_day;  ///< a delayed return
  std::vector<TravelPart> parts;
  /// Functions that the suspension needs and for which no unit is in use, by side: how long they
  /// last is not known, and the chances below are of the others.
  std::vector<std::pair<Side, care::Function>> unknown;
  double without_spares = 0;
  double with_spares = 0;
  bool reached = false;    ///< false also where something is unknown, or a check stops a spare
  bool by_pieces = false;  ///< asked for, or a price is missing or in another currency
  /// Kind and material of the parts that are in use, each once.
  std::vector<std::pair<Kind, Material>> along;
};

/// Pure. Refuses an unknown patient, days out of order, and a patient without a prosthesis whose
/// suspension wears parts. Functions on both sides must all last. Spares are of the item that is
/// worn now, or of the size that follows it.
[[nodiscard]] Expected<TravelCheck> check_travel(const Assessment& assessment,
                                                 const TravelRequest& request);

/// The chance that everything lasts when one spare of that part is left at home.
[[nodiscard]] double without_one(const TravelCheck& check, std::size_t part);

}  // namespace sparewell::desk
