#include <algorithm>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/help_pictures/diagram.hpp"
#include "desk/help_pictures/examples.hpp"
#include "desk/patient_card.hpp"
#include "desk/picture/life_picture.hpp"
#include "desk/picture/time_marks.hpp"
#include "desk/wording.hpp"
#include "wear/unit_life.hpp"

namespace sparewell::desk {
namespace {

using namespace picture;

const Date trip_from = example_day + days{25};
const Date trip_until = example_day + days{46};

struct TripPart {
  std::string name;
  StripEntry life;  ///< without a forecast where nothing is known
  SignForm sign = SignForm::question;
  std::string answer;
};

TripPart worn_part(const std::string& name, int age, double shape, double scale) {
  TripPart part;
  part.name = name;
  const wear::UnitLife life{example_day, double(age), shape, scale, {{example_day, 1.0}}};
  part.life.issued = example_day - days{age};
  part.life.p10 = life.worn_out_date(0.1);
  part.life.p50 = life.worn_out_date(0.5);
  part.life.p90 = life.worn_out_date(0.9);
  const double lasts = 1 - life.chance_worn_by(trip_until);
  const bool enough = lasts > 0.95;
  part.sign = enough ? SignForm::check : SignForm::triangle;
  part.answer = enough ? say("Lasts until the return with {} chance: no spare is needed for 95 %.",
                             chance_words(lasts))
                       : say("Near its end: lasts until the return with {} chance. Pack a spare.",
                             chance_words(lasts));
  return part;
}

std::vector<TripPart> trip_parts() {
  std::vector<TripPart> parts{worn_part(said("Liner"), 60, 6, 210),
                              worn_part(said("Sleeve"), 55, 3, 110)};
  TripPart valve;
  valve.name = said("Valve");
  valve.answer = said(
      "Not known: there is no record to work it out from. Unknown is not safe. Ask, measure or "
      "inspect before the trip.");
  parts.push_back(std::move(valve));
  return parts;
}

std::string trip_words(const TripPart& part) {
  return fmt::format("{}: {}", part.name, part.answer);
}

/// The days of the trip: dots between two dashed lines.
void add_trip(Picture& picture, double from, double to, double top, double bottom) {
  picture.marks.emplace_back(
      Box{{from, top, to, bottom}, Ink::past, Fill::dotted, Line::none, 1, 0});
  for (const double x : {from, to}) {
    add_line(picture, {x, top}, {x, bottom}, Ink::past, 1.5, Line::dashed);
  }
}

std::vector<KeySign> trip_key(double unit) {
  auto key = life_key(unit);
  key.pop_back();  // nothing is ordered here
  key.push_back({said("days of the trip"), [](Picture& picture, const Area& area) {
                   add_trip(picture, area.left + 3, area.right - 3, area.top + 2, area.bottom - 2);
                 }});
  return key;
}

/// Draws the parts of the trip into one room.
class TripDrawing {
 public:
  TripDrawing(const std::vector<TripPart>& parts, const Room& room) : parts_{parts}, room_{room} {}

  Picture draw() {
    made_.width = room_.width;
    const double top = add_key(made_, room_, trip_key(room_.unit), 0);
    std::vector<std::string> labels;
    for (const auto& part : parts_) labels.push_back(part.name);
    measures_ = strip_measures(room_, labels, top);
    axis_ = time_axis(example_day - days{75}, example_day + days{200}, measures_);
    // The words of the axis alone; its lines stand in the strips, for words lie between them.
    add_axis(made_, room_, axis_.ticks(measures_.tick_label_width), measures_.axis_height,
             measures_.axis_height, axis_.x(example_day));
    double below = measures_.axis_height;
    for (std::size_t i = 0; i < parts_.size(); ++i) below = add_part(i, below);
    made_.height = below + diagram_edge * room_.unit;
    made_.words += care_caution();
    made_.table.headings = {say("Part"), say("Issued"), say("1 in 10 worn out by"),
                            say("9 in 10 worn out by"), say("Answer")};
    return std::move(made_);
  }

 private:
  /// Gives the height of its end.
  double add_part(std::size_t number, double top) {
    const auto& part = parts_[number];
    const double bottom = top + measures_.row_height;
    add_strip_label(made_, room_, measures_, part.name, top);
    for (const auto& tick : axis_.ticks(measures_.tick_label_width)) {
      add_line(made_, {tick.x, top}, {tick.x, bottom}, Ink::faint);
    }
    const double from = axis_.x(trip_from);
    const double to = axis_.x(trip_until);
    add_trip(made_, from, to, top, bottom);
    if (part.life.p10) {
      StripShape shape;
      shape.worn = axis_.stretch(part.life.issued, example_day);
      shape.ahead = axis_.stretch(*part.life.p10, part.life.p90.value_or(axis_.to + days{1}));
      shape.median = axis_.x(*part.life.p50);
      add_life(made_, room_, shape, (top + bottom) / 2, measures_.row_height);
    } else {
      add_lone_sign(made_, room_, {(from + to) / 2, (top + bottom) / 2}, part.sign, Ink::text);
    }
    const double today = axis_.x(example_day);
    add_line(made_, {today, top}, {today, bottom}, Ink::text, 2);
    return add_answer(number, top, bottom);
  }

  double add_answer(std::size_t number, double top, double below) {
    const auto& part = parts_[number];
    const double left = 14 * room_.unit;
    const double size = 5 * room_.unit;
    const bool good = part.sign == SignForm::check;
    const Ink ink = part.sign == SignForm::triangle ? Ink::alarm : Ink::text;
    made_.marks.emplace_back(Sign{{left + size, below + room_.line_height / 2 + 2 * room_.unit},
                                  part.sign,
                                  size,
                                  ink,
                                  !good});
    const double words = left + 2 * size + 5 * room_.unit;
    const double bottom = add_text(made_, room_, part.answer, {words, below + 2 * room_.unit},
                                   room_.width - words - diagram_edge * room_.unit, false, ink) +
                          6 * room_.unit;
    made_.stops.push_back(
        {fmt::format("part {}", number + 1), trip_words(part), {1, top, room_.width - 1, bottom}});
    made_.words += trip_words(part) + '\n';
    made_.table.rows.push_back({part.name,
                                part.life.p10 ? date_words(part.life.issued) : said("not known"),
                                date_words(part.life.p10, said("not known")),
                                date_words(part.life.p90, said("not known")), part.answer});
    return bottom;
  }

  const std::vector<TripPart>& parts_;
  const Room& room_;
  Picture made_;
  StripMeasures measures_;
  TimeAxis axis_{};
};

}  // namespace

Maker travel_example() {
  return as_example(
      [parts = trip_parts()](const Room& room) {
        return TripDrawing{parts, room}.draw();
      },
      said("Help with travel: an example"),
      say("An example: will everything last on a trip from {} until {}?", date_words(trip_from),
          date_words(trip_until)));
}

}  // namespace sparewell::desk
