/// The stock of one of the clinic's items over the months ahead, with the levels and days at which
/// it is ordered.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "supply/order_outlook.hpp"
#include "supply/proposal.hpp"
#include "supply/stock_course.hpp"

namespace sparewell::supply {

inline constexpr int course_weeks = 26;
/// The chance to have nothing left from which a day counts as that on which the stock runs out.
inline constexpr double noticeable_chance = 0.1;

/// A delivery on its way, with the days by which it has come with 10, 50 and 90 % chance.
struct ExpectedArrival {
  std::string order_ref;  ///< "" for what is proposed today
  int pieces = 0;
  Date early;
  Date middle;
  Date late;
  bool overdue = false;  ///< later than any delivery seen
};

/// A lot that may go past its use-by date within the course.
struct LotAtRisk {
  std::string lot;
  Date use_by;
  int pieces = 0;
  double lost = 0;  ///< pieces, on average, without a further order
};

struct ItemCourse {
  ItemCode item;
  Date today;
  int there = 0;     ///< usable today, with those in transit
  int promised = 0;  ///< of these, for patients without a day, or for one that has passed
  std::vector<CoursePoint> alone;       ///< today and each week after it, if nothing is ordered
  std::vector<CoursePoint> with_order;  ///< the same with today's line; empty when there is none
  std::vector<ExpectedArrival> coming;
  std::optional<ExpectedArrival> ordered_today;
  std::vector<LotAtRisk> at_risk;   ///< those with half a tenth of a piece or more
  std::vector<CertainNeed> booked;  ///< later than today
  /// Up to which today's order is to bring what is there and coming: periodic review has no other
  /// order point. Empty for an item that is ordered for patients.
  std::optional<int> target;
  int position = 0;              ///< that is held against the target
  double wanted = 0;             ///< chance with which the target lasts
  std::vector<Date> order_days;  ///< within the course, the next one first
  Date next_order_day;
  Date next_arrival;  ///< by which what is ordered then has come with 50 % chance
  /// The first of the weeks by whose end nothing is left with noticeable_chance.
  std::optional<Date> runs_out;
  std::optional<Date> runs_out_with_order;
};

/// Courses of a clinic's items on one day. What is on order arrives by the law of its lead time, as
/// far as it has not passed; when more days have passed than any delivery took, as if it were
/// ordered today (our choice). A day that the supplier promised stands in the place of that law.
/// Lines of one order arrive together. What is in transit counts as being there. What is booked for
/// a day within the course is certain need; promised pieces are gone from today. Refers to the
/// clinic and `lives`, which must outlive it; one thread at a time.
class ItemCourses {
 public:
  ItemCourses(const Clinic& clinic, const std::vector<wear::LifeOfUnit>& lives, Date today,
              const OrderPolicy& policy);

  /// `line` is what is proposed of it today, if anything. Empty when the catalogue has no such
  /// item.
  [[nodiscard]] std::optional<ItemCourse> of(const ItemCode& item, const ProposalLine* line);

 private:
  const Clinic& clinic_;
  OrderPolicy policy_;
  OrderOutlook outlook_;
  StockBook book_;
  LeadTimes lead_times_;
  ClinicDemand demand_;  ///< all that is booked within the course taken out
};

}  // namespace sparewell::supply
