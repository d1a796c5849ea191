/// What is left of one item's stock on the days ahead, as probabilities.
#pragma once

#include <functional>
#include <optional>
#include <vector>

#include "clinic/date.hpp"
#include "supply/lead_time.hpp"
#include "supply/pmf.hpp"

namespace sparewell::supply {

/// Pieces that may be used up to and with a day.
struct DatedPieces {
  Date use_by;
  int pieces = 0;
};

/// Pieces that arrive together.
struct ComingPieces {
  int pieces = 0;
  std::vector<LeadTime::Day> after;  ///< days after today, each 0 or more, with their chances
};

/// Pieces that are needed for certain.
struct CertainNeed {
  Date on;  ///< a day before today counts as today
  int pieces = 0;
};

struct CourseParts {
  Date today;
  int lasting = 0;  ///< there, without a use-by date
  std::vector<DatedPieces> dated;
  std::vector<ComingPieces> coming;  ///< each independent of the others
  std::vector<CertainNeed> certain;
  /// Pieces that are needed by chance in (today, day]; what it gives must stay valid.
  std::function<const Pmf&(Date)> demand;
  /// By how much demand grows in one step where lots go past their use-by date.
  double pieces_a_step = 0.05;
};

/// The stock at the end of a day. The least stock whose chance not to be exceeded reaches 10, 25,
/// 50, 75 and 90 %: between the outer two it lies with a chance of 80 % or more, between the inner
/// two with 50 % or more.
struct CoursePoint {
  Date on;
  int p10 = 0;
  int p25 = 0;
  int p50 = 0;
  int p75 = 0;
  int p90 = 0;
  double mean = 0;
  double chance_none = 0;     ///< that nothing is left
  double chance_waiting = 0;  ///< that somebody waits for a piece
  double waiting = 0;         ///< pieces waited for, on average
  double past_use_by = 0;     ///< pieces that went past their use-by date so far, on average
};

struct StockCourse {
  std::vector<CoursePoint> points;  ///< for each day asked for
  /// The same when one more delivery is on its way; empty without one.
  std::vector<CoursePoint> with_more;
  std::vector<double> past_use_by;  ///< pieces lost on average, in the order of CourseParts::dated
};

/// The stock is max(0, there + arrived - needed - past use-by), because a patient who finds nothing
/// waits and takes the next piece that comes (nothing is ordered or lost on their account).
///
/// Exact, given the laws of demand and arrivals, wherever nothing goes past its use-by date: each
/// day's stock then follows from that day's law of demand alone. What goes past its use-by date
/// depends on how demand is spread over time, of which the laws of single days say nothing. It is
/// taken as the process that grows by single pieces and has all those laws, in small steps: exact
/// for Poisson and mixed Poisson demand in the limit of small steps, an approximation for what
/// lives with memory ask for. The lot that expires first is used first, what
/// arrives after all that is there, and what arrives keeps longer than the course. A lot is used
/// until the end of its use-by date, and gone the day after.
///
/// `on` in order of day, none before today.
[[nodiscard]] StockCourse stock_course(const CourseParts& parts, const std::vector<Date>& on,
                                       const std::optional<ComingPieces>& more = std::nullopt);

}  // namespace sparewell::supply
