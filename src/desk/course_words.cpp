#include <algorithm>

#include "clinic/say.hpp"
#include "desk/course_weeks.hpp"
#include "desk/stock_picture.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using supply::CoursePoint;
using supply::ExpectedArrival;
using supply::ItemCourse;

void add(std::string& text, const std::string& sentence) {
  if (sentence.empty()) return;
  if (!text.empty()) text += ' ';
  text += sentence;
}

std::string pieces(int count) {
  return say_n("{} piece", "{} pieces", static_cast<unsigned long>(count), number_words(count));
}

std::string arrival_words(const ExpectedArrival& arrival) {
  const auto by =
      arrival.early == arrival.late
          ? say("on {}", date_words(arrival.middle))
          : say("by {} with even chances, between {} and {} with 80 %", date_words(arrival.middle),
                date_words(arrival.early), date_words(arrival.late));
  if (arrival.order_ref.empty()) {
    return say("{} of today's order arrive {}.", pieces(arrival.pieces), by);
  }
  const auto words =
      say("{} of order {} arrive {}.", pieces(arrival.pieces), arrival.order_ref, by);
  if (!arrival.overdue) return words;
  return words + ' ' +
         say("Order {} is later than any delivery seen, so its time is counted anew from today.",
             arrival.order_ref);
}

/// Until what is ordered on the next order day comes.
std::string none_words(const ItemCourse& course) {
  auto week = std::ranges::find_if(
      course.alone, [&](const CoursePoint& point) { return point.on >= course.next_arrival; });
  if (week == course.alone.end()) --week;
  return say("None is there; somebody waits for one by {} with a chance of {}.",
             date_words(week->on), chance_words(week->chance_waiting));
}

std::string weeks_of_course() {
  return say_n("{} week", "{} weeks", supply::course_weeks, supply::course_weeks);
}

}  // namespace

std::string runs_out_words(const ItemCourse& course) {
  if (nothing_there(course)) return none_words(course);
  if (!course.runs_out) {
    return say("Without an order, the chance of having nothing left stays below 10 % for {}.",
               weeks_of_course());
  }
  return say("Without an order, nothing is left by {} with a chance of {}.",
             date_words(*course.runs_out),
             chance_words(find_week(course.alone, *course.runs_out).chance_none));
}

std::string runs_out_with_order_words(const ItemCourse& course) {
  if (course.with_order.empty()) return {};
  if (!course.runs_out_with_order) {
    return say("With today's order it stays below 10 % for {}.", weeks_of_course());
  }
  return say("With today's order: by {} with {}.", date_words(*course.runs_out_with_order),
             chance_words(find_week(course.with_order, *course.runs_out_with_order).chance_none));
}

std::string course_words(const ItemCourse& course) {
  std::string text = course.promised > 0 ? say("{} usable today, of which {} promised.",
                                               pieces(course.there), pieces(course.promised))
                                         : say("{} usable today.", pieces(course.there));
  add(text, runs_out_words(course));
  add(text, runs_out_with_order_words(course));
  if (course.target) {
    add(text, say("Order up to {}, which lasts with a chance of {}; what is there and coming "
                  "counts as {} against it.",
                  pieces(*course.target), chance_words(course.wanted), course.position));
  } else {
    add(text, say("It is ordered for named patients, and has no level to order up to."));
  }
  add(text, say("The next order day is {}; what is ordered then has arrived by {} with even "
                "chances.",
                day_words(course.next_order_day), date_words(course.next_arrival)));
  for (const ExpectedArrival& arrival : course.coming) add(text, arrival_words(arrival));
  if (course.ordered_today) add(text, arrival_words(*course.ordered_today));
  for (const supply::CertainNeed& need : course.booked) {
    add(text, say("{} booked for {}.", pieces(need.pieces), date_words(need.on)));
  }
  for (const supply::LotAtRisk& lot : course.at_risk) {
    add(text,
        say("Of {} of lot {}, about {:.1f} go past their use-by date on {}.", pieces(lot.pieces),
            lot.lot.empty() ? std::string{"?"} : lot.lot, lot.lost, date_words(lot.use_by)));
  }
  return text;
}

std::string week_words(const ItemCourse& course, std::size_t week) {
  const CoursePoint& point = course.alone[week];
  std::string text =
      say("{}: {} in the middle, {} to {} with 50 %, {} to {} with 80 % chance; nothing left: {}.",
          week == 0 ? say("Today, {}", date_words(point.on)) : date_words(point.on), point.p50,
          point.p25, point.p75, point.p10, point.p90, chance_words(point.chance_none));
  if (!course.with_order.empty()) {
    const CoursePoint& with = course.with_order[week];
    add(text, say("With today's order: {} in the middle, nothing left: {}.", with.p50,
                  chance_words(with.chance_none)));
  }
  if (week + 1 == course.alone.size()) return text;
  const Date next = course.alone[week + 1].on;
  const auto in_week = [&](Date day) { return day >= point.on && day < next; };
  for (const ExpectedArrival& arrival : course.coming) {
    if (in_week(arrival.middle)) add(text, arrival_words(arrival));
  }
  if (course.ordered_today && in_week(course.ordered_today->middle)) {
    add(text, arrival_words(*course.ordered_today));
  }
  for (const supply::CertainNeed& need : course.booked) {
    if (in_week(need.on)) {
      add(text, say("{} booked for {}.", pieces(need.pieces), date_words(need.on)));
    }
  }
  for (const supply::LotAtRisk& lot : course.at_risk) {
    if (in_week(lot.use_by)) {
      add(text, say("About {:.1f} of lot {} go past their use-by date on {}.", lot.lost, lot.lot,
                    date_words(lot.use_by)));
    }
  }
  for (const Date day : course.order_days) {
    if (in_week(day) && (day == course.next_order_day || course.order_days.size() < 60)) {
      add(text, say("Order day: {}.", day_words(day)));
    }
  }
  return text;
}

picture::FigureTable course_table(const ItemCourse& course) {
  picture::FigureTable table;
  table.headings = {said("Day"),        said("Middle"),       said("50 %, from"),
                    said("50 %, to"),   said("80 %, from"),   said("80 %, to"),
                    said("On average"), said("Nothing left"), said("Somebody waits")};
  const bool ordered = !course.with_order.empty();
  if (ordered) {
    table.headings.emplace_back(said("Middle with today's order"));
    table.headings.emplace_back(said("Nothing left with today's order"));
  }
  for (std::size_t i = 0; i < course.alone.size(); ++i) {
    const CoursePoint& point = course.alone[i];
    std::vector<std::string> row{date_words(point.on),
                                 number_words(point.p50),
                                 number_words(point.p25),
                                 number_words(point.p75),
                                 number_words(point.p10),
                                 number_words(point.p90),
                                 say("{:.1f}", point.mean),
                                 chance_words(point.chance_none),
                                 chance_words(point.chance_waiting)};
    if (ordered) {
      row.push_back(number_words(course.with_order[i].p50));
      row.push_back(chance_words(course.with_order[i].chance_none));
    }
    table.rows.push_back(std::move(row));
  }
  return table;
}

const CoursePoint& find_week(const std::vector<CoursePoint>& points, Date on) {
  for (const CoursePoint& point : points) {
    if (point.on == on) return point;
  }
  return points.back();
}

}  // namespace sparewell::desk
