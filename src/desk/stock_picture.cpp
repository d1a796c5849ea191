#include "desk/stock_picture.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/course_weeks.hpp"
#include "desk/picture/draw.hpp"
#include "desk/time_axis.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using namespace picture;
using supply::CoursePoint;
using supply::ItemCourse;

/// Draws one course into one room.
class Drawing {
 public:
  Drawing(const ItemCourse& course, const Room& room) : course_{course}, room_{room} {
    made_.width = std::max(room.width, least_width * room.unit);
    made_.height = std::max(room.height, 9 * room.line_height);
    most_ = highest();
    const double gap = 6 * room.unit;
    left_ = room.text_width(number_words(most_)) + 3 * gap;
    axis_ = TimeAxis{course.today, course.alone.back().on, left_, made_.width - 3 * gap};
    make_heading();
    top_ = static_cast<double>(heading_.size()) * room.line_height + 1.5 * gap;
    bottom_ = made_.height - 2 * room.line_height - 2.5 * gap;
    const double for_signs = 2 * sign_size() + sign_row();
    const bool roomy = bottom_ - top_ > 3.5 * for_signs;
    below_signs_ = has_signs() && roomy ? top_ + for_signs : top_;
  }

  Picture draw() {
    made_.title = say("Stock of {} over {}", course_.item.text,
                      say_n("{} week", "{} weeks", supply::course_weeks, supply::course_weeks));
    made_.words = course_words(course_);
    made_.table = course_table(course_);
    draw_axes();
    draw_band(&CoursePoint::p10, &CoursePoint::p90, Fill::dotted);
    draw_band(&CoursePoint::p25, &CoursePoint::p75, Fill::hatched);
    draw_level();
    draw_middle(course_.with_order, Line::dashed, Ink::ahead);
    draw_middle(course_.alone, Line::solid, Ink::text);
    draw_today();
    draw_events();
    draw_chances();
    draw_heading();
    add_stops();
    return std::move(made_);
  }

 private:
  static constexpr double least_width = 360;

  [[nodiscard]] int highest() const {
    int most = std::max(4, course_.target.value_or(0));
    for (const auto* points : {&course_.alone, &course_.with_order}) {
      for (const CoursePoint& point : *points) most = std::max(most, point.p90);
    }
    return most;
  }
  [[nodiscard]] double y(double pieces) const {
    return bottom_ - pieces / (1.08 * most_) * (bottom_ - below_signs_);
  }
  [[nodiscard]] double x(Date day) const { return axis_.x(day); }
  [[nodiscard]] bool has_signs() const {
    return !course_.coming.empty() || course_.ordered_today || !course_.at_risk.empty() ||
           !course_.booked.empty();
  }
  [[nodiscard]] double sign_size() const { return 6 * room_.unit; }
  /// From one row of signs to the other.
  [[nodiscard]] double sign_row() const { return std::max(2.2 * sign_size(), room_.line_height); }

  void line(std::vector<Spot> through, Ink ink, Line style, double width = 1) {
    made_.marks.push_back(Stroke{std::move(through), ink, style, width * room_.unit});
  }
  void words(double at_x, double at_y, std::string text, Across across, Down down, Ink ink,
             double most_width = 0, bool strong = false) {
    made_.marks.push_back(
        Words{{at_x, at_y}, std::move(text), across, down, ink, strong, most_width});
  }

  void draw_axes() {
    // Whole pieces, a step of 1, 2 or 5 times a power of ten.
    const double rows = std::max(1.0, (bottom_ - below_signs_) / (1.6 * room_.line_height));
    const double least = most_ / rows;
    const double power = std::pow(10, std::floor(std::log10(std::max(least, 1.0))));
    int step = 1;
    for (const int times : {1, 2, 5, 10}) {
      step = static_cast<int>(times * power);
      if (step >= least) break;
    }
    for (int pieces = 0; pieces <= most_; pieces += step) {
      line({{left_, y(pieces)}, {axis_.right, y(pieces)}}, Ink::faint,
           pieces == 0 ? Line::solid : Line::dotted);
      words(left_ - 6 * room_.unit, y(pieces), number_words(pieces), Across::right, Down::middle,
            Ink::text);
    }
    const double label = room_.text_width("Mmm 0000");
    for (const Tick& tick : axis_.ticks(label)) {
      line({{tick.x, bottom_}, {tick.x, bottom_ + 8 * room_.unit}}, Ink::faint, Line::solid);
      if (tick.x + label / 2 > made_.width || tick.x - label / 2 < left_) continue;
      words(tick.x, bottom_ + 10 * room_.unit, tick.label, Across::middle, Down::top, Ink::text);
    }
    for (const Date day : course_.order_days) {
      const double at = x(day);
      const double size = day == course_.next_order_day ? 7 : 4;
      line({{at, bottom_}, {at, bottom_ + size * room_.unit}}, Ink::text, Line::solid,
           day == course_.next_order_day ? 2 : 1);
    }
  }

  /// A stepped line: a figure holds until the next day of the course.
  [[nodiscard]] std::vector<Spot> steps(const std::vector<CoursePoint>& points,
                                        int CoursePoint::*of) const {
    std::vector<Spot> made;
    for (std::size_t i = 0; i < points.size(); ++i) {
      const double at = x(points[i].on);
      if (i > 0) made.push_back({at, y(points[i - 1].*of)});
      made.push_back({at, y(points[i].*of)});
    }
    return made;
  }

  void draw_band(int CoursePoint::*low, int CoursePoint::*high, Fill fill) {
    auto outline = steps(course_.alone, high);
    const auto back = steps(course_.alone, low);
    outline.insert(outline.end(), back.rbegin(), back.rend());
    made_.marks.push_back(Shape{std::move(outline), Ink::ahead, fill, Line::none});
  }

  void draw_middle(const std::vector<CoursePoint>& points, Line style, Ink ink) {
    if (!points.empty()) line(steps(points, &CoursePoint::p50), ink, style, 2);
  }

  void draw_level() {
    if (!course_.target) return;
    const double at = y(*course_.target);
    line({{left_, at}, {axis_.right, at}}, Ink::text, Line::dashed);
    words(axis_.right, at - 2 * room_.unit, say("Order up to {}", *course_.target), Across::right,
          Down::bottom, Ink::text, axis_.right - left_);
  }

  void draw_today() { line({{left_, top_}, {left_, bottom_}}, Ink::text, Line::solid); }

  void sign(Date day, SignForm form, const std::string& label, Ink ink) {
    const double at = x(day);
    const double size = sign_size();
    double row = top_ + size;
    for (const auto& [last, lower] : taken_) {
      if (at < last && row < lower + size) row = lower + sign_row();
    }
    made_.marks.push_back(Sign{{at, row}, form, size, ink, true});
    words(at + 1.4 * size, row, label, Across::left, Down::middle, ink);
    taken_.emplace_back(at + 3 * size + room_.text_width(label), row);
  }

  void draw_events() {
    for (const auto& arrival : course_.coming) {
      if (arrival.middle > axis_.to) continue;
      line({{x(arrival.middle), top_}, {x(arrival.middle), bottom_}}, Ink::faint, Line::dashed);
      sign(arrival.middle, SignForm::flag, fmt::format("+{}", arrival.pieces), Ink::text);
    }
    if (course_.ordered_today && course_.ordered_today->middle <= axis_.to) {
      sign(course_.ordered_today->middle, SignForm::flag,
           say("+{} if ordered", course_.ordered_today->pieces), Ink::ahead);
    }
    for (const auto& lot : course_.at_risk) {
      if (lot.use_by <= axis_.to) {
        sign(lot.use_by, SignForm::cross, say("{:.1f} past use-by", lot.lost), Ink::alarm);
      }
    }
    for (const auto& need : course_.booked) {
      sign(need.on, SignForm::diamond, say("{} booked", need.pieces), Ink::text);
    }
    if (course_.runs_out && !nothing_there(course_)) {
      const double at = x(*course_.runs_out);
      made_.marks.push_back(Sign{
          {at, bottom_ - 6 * room_.unit}, SignForm::triangle, 6 * room_.unit, Ink::alarm, true});
    }
  }

  /// A row below the months: the chance to have nothing left, as often as there is room for.
  void draw_chances() {
    const double row = made_.height - 0.6 * room_.line_height;
    // The blanks are for bold letters, and so that two do not touch.
    const double width = room_.text_width(std::string{said("under 1 %")} + "     ");
    const std::string title =
        nothing_there(course_) ? said("Somebody waits:") : said("Nothing left:");
    double free_from = 4 * room_.unit + room_.text_width(title) + width / 2;
    words(4 * room_.unit, row, title, Across::left, Down::middle, Ink::text);
    for (std::size_t i = 1; i < course_.alone.size(); ++i) {
      const double at = x(course_.alone[i].on);
      if (at - width / 2 < free_from - width / 2 || at + width / 2 > made_.width) continue;
      const double chance =
          nothing_there(course_) ? course_.alone[i].chance_waiting : course_.alone[i].chance_none;
      const bool notable = chance >= supply::noticeable_chance;
      words(at, row, chance_words(chance), Across::middle, Down::middle,
            notable ? Ink::alarm : Ink::text, 0, notable);
      free_from = at + width;
    }
  }

  /// In as many lines as the width needs.
  void make_heading() {
    const double most = made_.width - 8 * room_.unit;
    const auto add = [&](const std::string& text, bool strong, Ink ink) {
      for (auto& line : lines_in(room_, text, most, strong)) {
        heading_.push_back({{}, std::move(line), Across::left, Down::top, ink, strong, most});
      }
    };
    const bool alarms = course_.runs_out && !nothing_there(course_);
    add(runs_out_words(course_), true, alarms ? Ink::alarm : Ink::text);
    if (course_.with_order.empty()) {
      add(said("Line: middle. Hatched: 50 %, dotted: 80 % of what may be left. Ticks: order days."),
          false, Ink::text);
      return;
    }
    add(runs_out_with_order_words(course_), true, Ink::text);
    add(said("Line: middle without, dashed: with today's order. Hatched: 50 %, dotted: 80 % "
             "without it. Ticks: order days."),
        false, Ink::text);
  }

  void draw_heading() {
    Spot at{4 * room_.unit, 2 * room_.unit};
    for (auto& line : heading_) {
      line.at = at;
      made_.marks.emplace_back(std::move(line));
      at.y += room_.line_height;
    }
  }

  void add_stops() {
    for (std::size_t i = 0; i < course_.alone.size(); ++i) {
      const Date on = course_.alone[i].on;
      const double from = x(on);
      const double to =
          i + 1 < course_.alone.size() ? x(course_.alone[i + 1].on) : from + 6 * room_.unit;
      made_.stops.push_back({iso_text(on), week_words(course_, i), {from, top_, to, bottom_}});
    }
  }

  const ItemCourse& course_;
  const Room& room_;
  Picture made_;
  int most_ = 0;
  double left_ = 0;
  std::vector<Words> heading_;  ///< lines above the plot
  double top_ = 0;
  double below_signs_ = 0;  ///< where there is room: no line or label of the plot lies under a sign
  double bottom_ = 0;
  TimeAxis axis_{};
  std::vector<std::pair<double, double>> taken_;  ///< end and height of what stands above the plot
};

}  // namespace

Maker stock_picture(ItemCoursePtr course) {
  return [course = std::move(course)](const Room& room) { return Drawing{*course, room}.draw(); };
}

Maker words_as_picture(std::string words) {
  return [words = std::move(words)](const Room& room) {
    Picture made;
    made.width = room.width;
    made.height = room.height;
    made.title = words;
    made.words = words;
    made.marks.push_back(Words{{8 * room.unit, 8 * room.unit},
                               words,
                               Across::left,
                               Down::top,
                               Ink::text,
                               false,
                               room.width - 16 * room.unit});
    return made;
  };
}

}  // namespace sparewell::desk
