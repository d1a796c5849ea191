#include "exchange/documents/pictograms.hpp"

#include <initializer_list>
#include <numbers>

#include <cairo.h>

namespace sparewell::exchange {
namespace {

struct Point {
  double x;
  double y;
};

/// Draws in a square of 100 by 100.
class Pen {
 public:
  explicit Pen(cairo_t* context) : context_{context} {}

  void line(std::initializer_list<Point> points, bool closed = false) const {
    path(points);
    if (closed) cairo_close_path(context_);
    cairo_stroke(context_);
  }
  void filled(std::initializer_list<Point> points) const {
    path(points);
    cairo_close_path(context_);
    cairo_fill(context_);
  }
  void box(double left, double top, double right, double bottom) const {
    line({{left, top}, {right, top}, {right, bottom}, {left, bottom}}, true);
  }
  void circle(Point middle, double radius) const {
    cairo_new_sub_path(context_);
    cairo_arc(context_, middle.x, middle.y, radius, 0, 2 * std::numbers::pi);
    cairo_stroke(context_);
  }
  void dot(Point middle, double radius) const {
    cairo_arc(context_, middle.x, middle.y, radius, 0, 2 * std::numbers::pi);
    cairo_fill(context_);
  }
  /// A flattened ring: the rim of something round.
  void rim(Point middle, double wide, double high) const {
    cairo_save(context_);
    cairo_translate(context_, middle.x, middle.y);
    cairo_scale(context_, wide / 2, high / 2);
    cairo_new_sub_path(context_);
    cairo_arc(context_, 0, 0, 1, 0, 2 * std::numbers::pi);
    cairo_restore(context_);
    cairo_stroke(context_);
  }
  void curve(Point from, Point by, Point towards, Point to) const {
    cairo_move_to(context_, from.x, from.y);
    cairo_curve_to(context_, by.x, by.y, towards.x, towards.y, to.x, to.y);
    cairo_stroke(context_);
  }
  void thick(double width) const { cairo_set_line_width(context_, width); }

 private:
  void path(std::initializer_list<Point> points) const {
    cairo_new_path(context_);
    for (const auto point : points) cairo_line_to(context_, point.x, point.y);
  }
  cairo_t* context_;
};

constexpr double usual = 5;

/// A cup that is open above, as a liner stands; `bottom` is where it ends.
void cup(const Pen& pen, double bottom) {
  pen.rim({50, 18}, 50, 14);
  pen.line({{25, 18}, {30, bottom - 22}});
  pen.line({{75, 18}, {70, bottom - 22}});
  pen.curve({30, bottom - 22}, {32, bottom + 5}, {68, bottom + 5}, {70, bottom - 22});
}

void liner(const Pen& pen) {
  cup(pen, 92);
}

void liner_with_pin(const Pen& pen) {
  cup(pen, 66);
  pen.line({{40, 66}, {60, 66}});
  pen.thick(8);
  pen.line({{50, 66}, {50, 92}});
  pen.thick(3);
  for (const double y : {74.0, 81.0, 88.0}) pen.line({{43, y}, {57, y}});
}

void liner_with_seal(const Pen& pen) {
  cup(pen, 92);
  pen.thick(7);
  pen.curve({24, 48}, {38, 57}, {62, 57}, {76, 48});
  pen.curve({26, 62}, {40, 71}, {60, 71}, {74, 62});
}

void sleeve(const Pen& pen) {
  pen.rim({50, 14}, 56, 14);
  pen.line({{22, 14}, {32, 84}});
  pen.line({{78, 14}, {68, 84}});
  pen.rim({50, 84}, 36, 12);
  pen.thick(3);
  pen.curve({27, 46}, {40, 54}, {60, 54}, {73, 46});
  pen.curve({29, 60}, {42, 67}, {58, 67}, {71, 60});
}

void lock(const Pen& pen) {
  pen.box(18, 52, 70, 92);
  pen.line({{70, 72}, {82, 72}});
  pen.thick(9);
  pen.line({{86, 62}, {86, 82}});  // its release button
  pen.thick(7);
  pen.line({{44, 8}, {44, 72}});
  pen.thick(3);
  for (const double y : {14.0, 23.0, 32.0, 41.0}) pen.line({{36, y}, {52, y}});
}

void pin(const Pen& pen) {
  pen.filled({{26, 10}, {74, 10}, {66, 24}, {34, 24}});
  pen.line({{42, 24}, {42, 82}, {50, 92}, {58, 82}, {58, 24}});
  pen.thick(4);
  for (const double y : {36.0, 47.0, 58.0, 69.0, 80.0}) pen.line({{36, y}, {64, y}});
}

void valve(const Pen& pen) {
  // A flap that lets air out of the wall of a socket.
  pen.line({{8, 90}, {36, 90}});
  pen.line({{64, 90}, {92, 90}});
  pen.box(36, 70, 64, 96);
  pen.line({{28, 66}, {72, 58}});
  for (const double x : {30.0, 50.0, 70.0}) {
    pen.line({{x, 46}, {x, 12}});
    pen.line({{x - 8, 22}, {x, 12}, {x + 8, 22}});
  }
}

void pump(const Pen& pen) {
  pen.box(22, 40, 66, 90);
  pen.line({{44, 40}, {44, 14}});
  pen.line({{28, 12}, {60, 12}});
  pen.line({{22, 62}, {66, 62}});
  pen.line({{66, 80}, {90, 80}});
  pen.line({{82, 71}, {92, 80}, {82, 89}});
}

void sock(const Pen& pen) {
  pen.line({{26, 10}, {74, 10}, {72, 28}, {28, 28}}, true);
  pen.line({{28, 28}, {33, 72}});
  pen.line({{72, 28}, {67, 72}});
  pen.curve({33, 72}, {36, 96}, {64, 96}, {67, 72});
  pen.thick(2.5);
  for (const double y : {40.0, 52.0, 64.0, 76.0}) {
    pen.line({{34, y}, {42, y + 5}, {50, y}, {58, y + 5}, {66, y}});
  }
}

void drop(const Pen& pen, Point top, double high) {
  const double wide = high * 0.55;
  const double low = top.y + high;
  pen.curve(top, {top.x - wide, top.y + high * 0.65}, {top.x - wide * 0.7, low}, {top.x, low});
  pen.curve(top, {top.x + wide, top.y + high * 0.65}, {top.x + wide * 0.7, low}, {top.x, low});
}

void wash(const Pen& pen) {
  pen.line({{8, 16}, {8, 34}});
  pen.line({{8, 25}, {40, 25}});
  pen.line({{24, 25}, {24, 10}});
  pen.line({{14, 10}, {34, 10}});
  pen.curve({40, 25}, {52, 25}, {54, 28}, {54, 38});
  pen.thick(4);
  drop(pen, {54, 42}, 12);
  drop(pen, {40, 52}, 12);
  drop(pen, {68, 52}, 12);
  pen.thick(usual);
  // A hand that is held open below.
  pen.curve({12, 74}, {26, 70}, {34, 84}, {54, 84});
  pen.curve({54, 84}, {70, 84}, {80, 74}, {92, 68});
  pen.curve({12, 90}, {30, 90}, {36, 96}, {54, 96});
  pen.curve({54, 96}, {76, 96}, {88, 84}, {92, 68});
}

void air(const Pen& pen, double y) {
  pen.curve({68, y}, {76, y - 9}, {82, y + 9}, {94, y - 3});
}

void dry(const Pen& pen) {
  // A liner that stands with its opening down.
  pen.line({{14, 76}, {20, 40}});
  pen.line({{58, 76}, {52, 40}});
  pen.curve({20, 40}, {22, 14}, {50, 14}, {52, 40});
  pen.rim({36, 76}, 44, 10);
  pen.line({{36, 81}, {36, 92}});
  pen.line({{18, 94}, {54, 94}});
  pen.thick(4);
  air(pen, 28);
  air(pen, 48);
  air(pen, 68);
}

void crossed_out(const Pen& pen) {
  pen.thick(7);
  pen.circle({50, 50}, 44);
  pen.line({{19, 19}, {81, 81}});
}

void no_heat(const Pen& pen) {
  pen.curve({52, 18}, {60, 36}, {76, 46}, {70, 64});
  pen.curve({70, 64}, {66, 82}, {36, 84}, {30, 64});
  pen.curve({30, 64}, {28, 52}, {38, 46}, {38, 36});
  pen.curve({38, 36}, {46, 42}, {44, 48}, {46, 50});
  pen.curve({46, 50}, {54, 42}, {54, 30}, {52, 18});
  crossed_out(pen);
}

void no_chemicals(const Pen& pen) {
  pen.box(42, 14, 58, 30);
  pen.line({{42, 30}, {34, 44}, {34, 80}, {66, 80}, {66, 44}, {58, 30}});
  pen.line({{34, 58}, {66, 58}});
  crossed_out(pen);
}

void look(const Pen& pen) {
  // A residual limb, and a lens over its end.
  pen.line({{12, 6}, {18, 52}});
  pen.line({{60, 6}, {54, 34}});
  pen.curve({18, 52}, {20, 66}, {26, 72}, {34, 72});
  pen.circle({58, 58}, 23);
  pen.thick(9);
  pen.line({{75, 75}, {92, 92}});
  pen.thick(usual);
  pen.dot({52, 54}, 4);
  pen.dot({64, 62}, 4);
}

void take_off(const Pen& pen) {
  pen.line({{18, 44}, {24, 74}});
  pen.line({{82, 44}, {76, 74}});
  pen.curve({24, 74}, {28, 98}, {72, 98}, {76, 74});
  pen.thick(8);
  pen.line({{50, 76}, {50, 18}});
  pen.line({{32, 34}, {50, 14}, {68, 34}});
}

void crutch(const Pen& pen, double x, double lean) {
  pen.line({{x - 10, 12}, {x + 10, 12}});
  pen.line({{x, 12}, {x + lean, 92}});
  pen.line({{x + lean * 0.45 - 8, 48}, {x + lean * 0.45 + 10, 48}});
}

void crutches(const Pen& pen) {
  crutch(pen, 24, 8);
  crutch(pen, 68, 8);
  pen.thick(8);
  pen.line({{28, 92}, {36, 92}});
  pen.line({{72, 92}, {80, 92}});
}

void warning(const Pen& pen) {
  pen.thick(7);
  pen.line({{50, 10}, {94, 88}, {6, 88}}, true);
  pen.filled({{45, 36}, {55, 36}, {52, 66}, {48, 66}});
  pen.dot({50, 76}, 5);
}

void reacts(const Pen& pen) {
  drop(pen, {50, 18}, 58);
  crossed_out(pen);
}

void suitcase(const Pen& pen) {
  pen.box(10, 34, 90, 88);
  pen.line({{36, 34}, {36, 18}, {64, 18}, {64, 34}});
  pen.line({{26, 34}, {26, 88}});
  pen.line({{74, 34}, {74, 88}});
}

void telephone(const Pen& pen) {
  pen.line({{32, 6}, {68, 6}, {68, 94}, {32, 94}}, true);
  pen.thick(3);
  pen.line({{44, 15}, {56, 15}});
  pen.box(39, 24, 61, 74);
  pen.dot({50, 84}, 4);
}

void clinic(const Pen& pen) {
  pen.line({{8, 50}, {50, 12}, {92, 50}});
  pen.line({{20, 42}, {20, 90}, {80, 90}, {80, 42}});
  pen.box(42, 62, 58, 90);
}

void calendar(const Pen& pen) {
  pen.box(12, 20, 88, 88);
  pen.line({{12, 40}, {88, 40}});
  pen.line({{32, 10}, {32, 28}});
  pen.line({{68, 10}, {68, 28}});
  for (const double y : {54.0, 72.0}) {
    for (const double x : {30.0, 50.0, 70.0}) pen.dot({x, y}, 5);
  }
}

void tool(const Pen& pen) {
  pen.line({{12, 20}, {20, 12}, {46, 38}, {38, 46}}, true);
  pen.line({{42, 42}, {78, 78}});
  pen.filled({{74, 82}, {82, 74}, {92, 92}});
}

void question(const Pen& pen) {
  pen.box(10, 10, 90, 72);
  pen.line({{30, 72}, {26, 92}, {48, 72}});
  pen.curve({38, 32}, {38, 16}, {64, 18}, {62, 34});
  pen.curve({62, 34}, {60, 42}, {50, 42}, {50, 52});
  pen.dot({50, 62}, 4);
}

void draw(const Pen& pen, Pictogram which) {
  using Draw = void (*)(const Pen&);
  static constexpr Draw drawings[] = {nullptr,
                                      liner,
                                      liner_with_pin,
                                      liner_with_seal,
                                      sleeve,
                                      lock,
                                      pin,
                                      valve,
                                      pump,
                                      sock,
                                      wash,
                                      dry,
                                      no_heat,
                                      no_chemicals,
                                      look,
                                      take_off,
                                      crutches,
                                      warning,
                                      reacts,
                                      suitcase,
                                      telephone,
                                      clinic,
                                      calendar,
                                      tool,
                                      question};
  static_assert(std::size(drawings) == static_cast<std::size_t>(Pictogram::question) + 1);
  drawings[static_cast<std::size_t>(which)](pen);
}

}  // namespace

void draw_pictogram(_cairo* context, Pictogram which, double x, double y, double side) {
  if (which == Pictogram::none) return;
  cairo_save(context);
  cairo_translate(context, x, y);
  cairo_scale(context, side / 100, side / 100);
  cairo_set_line_cap(context, CAIRO_LINE_CAP_ROUND);
  cairo_set_line_join(context, CAIRO_LINE_JOIN_ROUND);
  cairo_set_line_width(context, usual);
  draw(Pen{context}, which);
  cairo_restore(context);
}

}  // namespace sparewell::exchange
