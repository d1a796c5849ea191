#include "desk/limb_drawing/limb_outline.hpp"

#include <algorithm>

#include "desk/picture/draw.hpp"

namespace sparewell::desk {
namespace {

using namespace picture;

/// Half of the limb's width at a height; both in parts of the drawing's height, from the top.
struct Girth {
  double down;
  double half;
};

struct LimbForm {
  std::vector<Girth> limb;  ///< to its end
  double brim;              ///< where the socket begins
  bool lower;               ///< a leg: it stands on a foot
  double joint;             ///< of the prosthesis, below the socket; 0 for none
};

LimbForm form_of(Level level) {
  switch (level) {
    case Level::transfemoral:
      return {{{0, .19}, {.2, .17}, {.36, .13}, {.44, .11}, {.47, .07}}, .12, true, .68};
    case Level::knee_disarticulation:
      return {{{0, .18}, {.2, .15}, {.42, .11}, {.5, .12}, {.56, .11}, {.59, .07}}, .14, true, .72};
    case Level::ankle_disarticulation:
      return {{{0, .15}, {.12, .11}, {.3, .12}, {.58, .08}, {.68, .09}, {.73, .085}, {.76, .05}},
              .22,
              true,
              0};
    case Level::transradial:
      return {{{0, .11}, {.24, .1}, {.3, .11}, {.45, .08}, {.53, .07}, {.56, .04}}, .3, false, 0};
    case Level::transhumeral:
      return {{{0, .13}, {.2, .11}, {.36, .08}, {.41, .075}, {.44, .045}}, .14, false, .64};
    default:
      return {{{0, .16}, {.18, .13}, {.28, .11}, {.36, .12}, {.5, .09}, {.57, .085}, {.61, .05}},
              .32,
              true,
              0};
  }
}

/// Cuts the corners of a line, twice (Chaikin's way, from memory); its ends stay.
std::vector<Spot> rounded(std::vector<Spot> line) {
  for (int turn = 0; turn < 2; ++turn) {
    std::vector<Spot> made{line.front()};
    for (std::size_t i = 1; i < line.size(); ++i) {
      const auto& a = line[i - 1];
      const auto& b = line[i];
      made.push_back({0.75 * a.x + 0.25 * b.x, 0.75 * a.y + 0.25 * b.y});
      made.push_back({0.25 * a.x + 0.75 * b.x, 0.25 * a.y + 0.75 * b.y});
    }
    made.push_back(line.back());
    line = std::move(made);
  }
  return line;
}

/// Places of one drawing.
class Figure {
 public:
  Figure(const Area& area, const SideChain& chain)
      : form_{form_of(chain.prosthesis ? chain.prosthesis->level : Level::other)},
        area_{area},
        outwards_{chain.side == Side::left ? -1.0 : 1.0} {}

  [[nodiscard]] const LimbForm& form() const { return form_; }
  /// `across` from the middle outwards, away from the other limb.
  [[nodiscard]] Spot at(double across, double down) const {
    const double height = area_.bottom - area_.top;
    const double wide = std::min(height, 2.2 * (area_.right - area_.left));
    return {middle_x(area_) + outwards_ * across * wide, area_.top + down * height};
  }
  [[nodiscard]] double end() const { return form_.limb.back().down; }
  [[nodiscard]] double half_at(double down) const {
    for (std::size_t i = 1; i < form_.limb.size(); ++i) {
      const auto& a = form_.limb[i - 1];
      const auto& b = form_.limb[i];
      if (down > b.down) continue;
      return a.half + (b.half - a.half) * (down - a.down) / (b.down - a.down);
    }
    return form_.limb.back().half;
  }
  /// The limb's outline from a height on, so much further out, open at the top.
  [[nodiscard]] std::vector<Spot> around(double from, double further) const {
    std::vector<Spot> made{at(-half_at(from) - further, from)};
    for (const auto& girth : form_.limb) {
      if (girth.down > from) made.push_back(at(-girth.half - further, girth.down));
    }
    made.push_back(at(0, end() + .01 + further));
    for (auto girth = form_.limb.rbegin(); girth != form_.limb.rend(); ++girth) {
      if (girth->down > from) made.push_back(at(girth->half + further, girth->down));
    }
    made.push_back(at(half_at(from) + further, from));
    return rounded(std::move(made));
  }

 private:
  LimbForm form_;
  Area area_;
  double outwards_;
};

void add_stroke(Picture& picture, std::vector<Spot> through, Ink ink, double width,
                Line line = Line::solid) {
  picture.marks.emplace_back(Stroke{std::move(through), ink, line, width});
}

/// What the socket carries: a leg with its foot, or a forearm with two fingers.
void add_carried(Picture& picture, const Room& room, const Figure& figure) {
  const double from = figure.end() + .08;
  const double thick = 2 * room.unit;
  if (!figure.form().lower) {
    add_stroke(picture, {figure.at(0, from), figure.at(0, .84)}, Ink::faint, thick);
    for (const double bend : {-.05, .05}) {
      add_stroke(picture, {figure.at(0, .84), figure.at(bend, .9), figure.at(bend / 3, .97)},
                 Ink::faint, thick);
    }
  } else {
    add_stroke(picture, {figure.at(0, from), figure.at(0, .92)}, Ink::faint, thick);
    add_stroke(picture,
               {figure.at(-.05, .97), figure.at(-.04, .92), figure.at(.04, .92),
                figure.at(.14, .95), figure.at(.15, .97), figure.at(-.05, .97)},
               Ink::faint, thick);
  }
  if (figure.form().joint > 0) {
    const auto at = figure.at(0, figure.form().joint);
    picture.marks.emplace_back(Sign{at, SignForm::ring, 6 * room.unit, Ink::faint, false});
  }
}

/// The drawn form of a part, in the ink and line of whether it is there.
void add_part(Picture& picture, const Room& room, const Figure& figure, ChainPlace place,
              bool missing) {
  const Ink ink = missing ? Ink::alarm : Ink::text;
  const Line line = missing ? Line::dashed : Line::solid;
  const double end = figure.end();
  const double brim = figure.form().brim;
  switch (place) {
    case ChainPlace::interface:
      return add_stroke(picture, figure.around(std::max(.02, brim - .14), .014), ink,
                        1.5 * room.unit, line);
    case ChainPlace::sock:
      return add_stroke(picture, figure.around(std::max(.04, brim - .1), .022), ink, room.unit,
                        missing ? line : Line::dotted);
    case ChainPlace::sleeve:
      for (const double sign : {-1.0, 1.0}) {
        const double above = figure.half_at(brim - .1) + .024;
        const double below = figure.half_at(brim + .14) + .05;
        add_stroke(picture,
                   {figure.at(sign * above, brim - .1), figure.at(sign * below, brim + .14)}, ink,
                   3 * room.unit, line);
      }
      return;
    case ChainPlace::pin:
      return add_stroke(picture, {figure.at(0, end + .02), figure.at(0, end + .08)}, ink,
                        3 * room.unit, line);
    case ChainPlace::lock:
      return add_stroke(
          picture,
          {figure.at(-.03, end + .05), figure.at(.03, end + .05), figure.at(.03, end + .1),
           figure.at(-.03, end + .1), figure.at(-.03, end + .05)},
          ink, 1.5 * room.unit, line);
    case ChainPlace::valve:
    case ChainPlace::pump: {
      const double wide = place == ChainPlace::pump ? .04 : .02;
      const double from = place == ChainPlace::pump ? end + .1 : end - .03;
      const double middle = place == ChainPlace::pump ? 0 : figure.half_at(end - .02) + .05;
      return add_stroke(picture,
                        {figure.at(middle - wide, from), figure.at(middle + wide, from),
                         figure.at(middle + wide, from + 2 * wide),
                         figure.at(middle - wide, from + 2 * wide), figure.at(middle - wide, from)},
                        ink, 1.5 * room.unit, line);
    }
    default:
      return;
  }
}

}  // namespace

picture::Spot seat_of(const picture::Area& area, const SideChain& chain, ChainPlace place) {
  const Figure figure{area, chain};
  const double end = figure.end();
  const double brim = figure.form().brim;
  // The rows stand right of the drawing, so that leaders begin at its right side.
  const double right = chain.side == Side::left ? -1.0 : 1.0;
  const auto beside = [&](double down, double further) {
    return figure.at(right * (figure.half_at(down) + further), down);
  };
  switch (place) {
    case ChainPlace::interface:
      return beside(std::max(.03, brim - .12), .014);
    case ChainPlace::sock:
      return beside(std::max(.05, brim - .07), .022);
    case ChainPlace::sleeve:
      return beside(brim + .06, .042);
    case ChainPlace::pin:
      return figure.at(0, end + .04);
    case ChainPlace::lock:
      return figure.at(right * .03, end + .08);
    case ChainPlace::valve:
      return figure.at(figure.half_at(end - .02) + .05, end - .01);
    case ChainPlace::pump:
      return figure.at(right * .04, end + .14);
    default:
      return beside(.02, 0);
  }
}

void add_outline(picture::Picture& picture, const picture::Room& room, const picture::Area& area,
                 const SideChain& chain) {
  const Figure figure{area, chain};
  picture.marks.emplace_back(Shape{figure.around(0, 0), Ink::past, Fill::dotted, Line::none});
  add_stroke(picture, figure.around(0, 0), Ink::past, room.unit);
  if (chain.prosthesis) {
    add_stroke(picture, figure.around(figure.form().brim, .04), Ink::text, 2 * room.unit);
    add_carried(picture, room, figure);
  }
  for (const auto& row : chain.rows) {
    if (!row.further) add_part(picture, room, figure, row.place, row.missing());
  }
}

}  // namespace sparewell::desk
