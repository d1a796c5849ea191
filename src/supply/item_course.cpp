#include "supply/item_course.hpp"

#include <algorithm>
#include <map>
#include <tuple>

#include "supply/booked.hpp"
#include "supply/stocked_line.hpp"

namespace sparewell::supply {
namespace {

constexpr double noticeable_pieces = 0.05;

Date end_of_course(Date today) {
  return today + days{7 * course_weeks};
}

std::vector<Date> weeks_from(Date today) {
  std::vector<Date> made;
  for (int week = 0; week <= course_weeks; ++week) made.push_back(today + days{7 * week});
  return made;
}

/// The lead time of what was ordered so many days ago and is not here.
std::vector<LeadTime::Day> still_to_wait(const LeadTime& lead, int ordered_ago, bool& overdue) {
  std::vector<LeadTime::Day> made;
  double all = 0;
  for (const LeadTime::Day& day : lead.distribution()) {
    if (day.days <= ordered_ago) continue;
    made.push_back({day.days - ordered_ago, day.chance});
    all += day.chance;
  }
  overdue = made.empty();
  if (overdue) return lead.distribution();
  for (LeadTime::Day& day : made) day.chance /= all;
  return made;
}

Date arrives_by(Date today, const std::vector<LeadTime::Day>& after, double chance) {
  double sum = 0;
  for (const LeadTime::Day& day : after) {
    sum += day.chance;
    if (sum >= chance - 1e-12) return today + days{day.days};
  }
  return today + days{after.back().days};
}

ExpectedArrival arrival_of(const std::string& order_ref, const ComingPieces& coming, Date today,
                   bool overdue) {
  const auto by = [&](double chance) { return arrives_by(today, coming.after, chance); };
  return {order_ref, coming.pieces, by(0.1), by(0.5), by(0.9), overdue};
}

void add_coming(ItemCourse& course, CourseParts& parts, const Clinic& clinic,
                const LeadTime& lead) {
  struct Order {
    int pieces = 0;
    std::optional<Date> promised;
  };
  std::map<std::tuple<Date, SupplierName, std::string>, Order> orders;
  for (const OrderLine& line : clinic.order_lines) {
    if (line.item != course.item || line.outstanding() == 0) continue;
    Order& order = orders[{line.ordered_on, line.supplier, line.order_ref}];
    order.pieces += line.outstanding();
    for (const OrderPromise& promise : clinic.order_promises) {
      const bool of_line = promise.item == line.item && promise.supplier == line.supplier &&
                           promise.order_ref == line.order_ref && promise.copy == line.copy;
      if (of_line && promise.promised_on) order.promised = promise.promised_on;
    }
  }
  for (const auto& [key, order] : orders) {
    const auto& [ordered_on, supplier, ref] = key;
    ComingPieces coming{order.pieces, {}};
    bool overdue = false;
    if (order.promised && *order.promised > course.today) {
      coming.after = {{days_between(course.today, *order.promised), 1.0}};
    } else {
      coming.after = still_to_wait(lead, days_between(ordered_on, course.today), overdue);
    }
    course.coming.push_back(arrival_of(ref, coming, course.today, overdue));
    parts.coming.push_back(std::move(coming));
  }
}

/// The lots in `parts.dated`, in its order.
std::vector<LotAtRisk> add_shelf(ItemCourse& course, CourseParts& parts, const Clinic& clinic) {
  std::vector<LotAtRisk> lots;
  for (const StockLevel& level : clinic.shelf) {
    if (level.lot.item != course.item || level.quantity <= 0) continue;
    const auto sort = sort_of_place(clinic.places, level.place);
    if (sort != PlaceSort::store && sort != PlaceSort::in_transit) continue;
    const auto& use_by = level.lot.use_by;
    if (use_by && *use_by < course.today) continue;
    course.there += level.quantity;
    if (!use_by) {
      parts.lasting += level.quantity;
      continue;
    }
    const auto same = std::ranges::find_if(lots, [&](const LotAtRisk& lot) {
      return lot.lot == level.lot.lot && lot.use_by == *use_by;
    });
    if (same != lots.end()) {
      same->pieces += level.quantity;
    } else {
      lots.push_back({level.lot.lot, *use_by, level.quantity, 0});
    }
  }
  for (const LotAtRisk& lot : lots) parts.dated.push_back({lot.use_by, lot.pieces});
  return lots;
}

void add_certain(ItemCourse& course, CourseParts& parts,
                 const std::vector<const Reservation*>& bookings) {
  for (const Reservation* booking : bookings) {
    if (!is_due(*booking, end_of_course(course.today))) continue;
    const CertainNeed need{booking->needed_on.value_or(course.today), booking->quantity};
    parts.certain.push_back(need);
    if (need.on > course.today) {
      course.booked.push_back(need);
    } else {
      course.promised += need.pieces;
    }
  }
}

std::optional<Date> first_without(const std::vector<CoursePoint>& points) {
  const auto found = std::ranges::find_if(
      points, [](const CoursePoint& point) { return point.chance_none >= noticeable_chance; });
  if (found == points.end()) return std::nullopt;
  return found->on;
}

}  // namespace

ItemCourses::ItemCourses(const Clinic& clinic, const std::vector<wear::LifeOfUnit>& lives,
                         Date today, const OrderPolicy& policy)
    : clinic_{clinic},
      policy_{policy},
      outlook_{clinic, lives, today, policy.order_on},
      book_{clinic},
      lead_times_{clinic},
      demand_{clinic, lives, today} {
  for (const Item& item : clinic_.items) {
    const auto bookings = book_.reservations(item.code);
    if (bookings.empty()) continue;
    demand_.leave_to_chance(item.code, left_to_chance(clinic_, demand_.users(item.code), bookings,
                                                      end_of_course(today)));
  }
}

std::optional<ItemCourse> ItemCourses::of(const ItemCode& code, const ProposalLine* line) {
  const auto found = std::ranges::find(clinic_.items, code, &Item::code);
  if (found == clinic_.items.end()) return std::nullopt;
  const auto at = static_cast<std::size_t>(found - clinic_.items.begin());
  const ItemCase given = outlook_.case_of(at, policy_);
  ItemCourse course;
  course.item = code;
  course.today = given.today;

  CourseParts parts;
  parts.today = given.today;
  auto lots = add_shelf(course, parts, clinic_);
  add_coming(course, parts, clinic_, given.lead);
  add_certain(course, parts, book_.reservations(code));
  ItemDemand demand = demand_.of(*found);
  demand.expect_days(given.today, end_of_course(given.today));
  parts.demand = [&](Date day) -> const Pmf& { return demand.until(day); };
  std::optional<ComingPieces> more;
  if (line != nullptr && line->quantity > 0) {
    more = ComingPieces{line->quantity, given.lead.distribution()};
    course.ordered_today = arrival_of("", *more, given.today, false);
  }
  StockCourse made = stock_course(parts, weeks_from(given.today), more);
  course.alone = std::move(made.points);
  course.with_order = std::move(made.with_more);
  for (std::size_t i = 0; i < lots.size(); ++i) {
    lots[i].lost = made.past_use_by[i];
    if (lots[i].lost >= noticeable_pieces) course.at_risk.push_back(lots[i]);
  }
  std::ranges::stable_sort(course.at_risk, {}, &LotAtRisk::use_by);

  course.position = given.position.total();
  course.wanted = given.wanted.chance;
  if (line != nullptr && !line->reason.patient_ordered) {
    course.target = line->target;
    course.wanted = line->reason.service_target;
  } else if (found->stocked) {
    const StockedItem stocked = stocked_item(given, outlook_.demand(at, given));
    course.wanted = stocked.given.wanted.chance;
    course.target = stocked.demand.needed().least_covering(course.wanted);
  }
  course.next_order_day = given.next_order_day;
  course.next_arrival = given.next_order_day + days{given.lead.quantile(0.5)};
  for (Date day = given.next_order_day; day <= end_of_course(given.today);
       day = next_order_day(given.order_days, day)) {
    course.order_days.push_back(day);
  }
  course.runs_out = first_without(course.alone);
  course.runs_out_with_order = first_without(course.with_order);
  return course;
}

}  // namespace sparewell::supply
